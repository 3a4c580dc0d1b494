// Views, injection or lessons: the choice, and what the page shows of each.

import { byId, segments } from '../base/dom.js';
import { texts } from '../words/texts.js';

/**
 * @import { App } from '../state/page-state.js'
 *
 * @typedef {'views' | 'injection' | 'lessons'} Activity
 */

/** @type {readonly Activity[]} */
const ACTIVITIES = ['views', 'injection', 'lessons'];

/**
 * `here()`: whether the injection has come; `choose(name)` when another activity is chosen. Returns a function that shows the state.
 * @param {App} app
 * @param {() => boolean} here
 * @param {(name: Activity) => void} choose
 */
export function activityControl(app, here, choose) {
  const show = segments(byId('activities'), 'activity', ACTIVITIES.map((name) => [name, texts.activity[name]]), choose);
  return () => {
    const { state } = app;
    const activity = state.lessons || app.lesson ? 'lessons' : state.injection ? 'injection' : 'views';
    show(activity);
    document.body.dataset.activity = state.injection ? 'injection' : activity;
    byId('needle').hidden = byId('needle-said').hidden = !(state.injection && here());
    byId('steps').hidden = state.injection || state.lessons;
  };
}
