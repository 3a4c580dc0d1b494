// What the rest of the page knows of lessons. All else of them is loaded when one is first opened.

import { late } from '../base/late.js';
import { byId } from '../base/dom.js';
import { reason } from '../engine/room.js';
import { texts } from '../words/texts.js';
import { interrupted } from './interrupted.js';

/** `#lesson=…` carries a lesson whole, `#open=…` names one of the course, `#attempt=…` carries an attempt to be replayed. */
const LINKS = /^#(lesson|open|attempt)=/;
const ATTEMPT = /^#attempt=/;

/**
 * @import { App } from '../state/page-state.js'
 * @import { FlowActs, LessonFlow, Needle } from './flow.js'
 *
 * The lesson that an attempt is of: its file, and the learner's code.
 * @typedef {{ lesson: string, learner: string }} AttemptOf
 */

/**
 * Whether an address leads to a lesson.
 * @param {string} fragment
 */
export const leadsToLesson = (fragment) => LINKS.test(fragment);

/**
 * `needle` is from `injectionOnDemand`; `act`: `notice(sentences)`, `said(sentence)`, `leaveAddress()` when the address no longer belongs to a
 * lesson, `replays(of)` when an attempt comes by it, with the lesson that it is of or null.
 * @param {App} app
 * @param {Needle & { bring: () => Promise<void> }} needle
 * @param {FlowActs & { replays: (of: AttemptOf | null) => void }} act
 */
export function lessonsOnDemand(app, needle, act) {
  /** @type {LessonFlow | null} */
  let flow = null;
  /** @type {Promise<typeof import('./flow.js')> | null} */
  let loading = null;

  /** @param {(flow: LessonFlow) => unknown} use */
  async function open(use) {
    // At once, so that nothing writes over an address that leads here.
    app.change({ lessons: true, injection: false });
    byId('lesson').hidden = false;
    try {
      loading ??= late(() => import('./flow.js'), new URL('./flow.js', import.meta.url));
      const [module] = await Promise.all([loading, needle.bring()]);
      flow ??= module.lessonFlow(app, needle, act);
      await use(flow);
    } catch (error) {
      loading = null;
      byId('lesson').hidden = true;
      app.change({ lessons: false });
      act.notice([flow ? `${reason(error)}.` : texts.notice.noPart(texts.activity.lessons, reason(error))]);
      app.touch();
    }
  }

  /**
   * Replays the attempt that an address carries, once there is an engine for it.
   * @param {string} fragment
   */
  async function replay(fragment) {
    flow?.leave();
    try {
      const { attemptOf } = await late(() => import('../base/attempt-link.js'), new URL('../base/attempt-link.js', import.meta.url));
      const { of = null, ...attempt } = Object(await attemptOf(fragment));
      while (!app.room) await new Promise((resolve) => setTimeout(resolve, 50));
      await needle.bring();
      needle.attempt.open(attempt);
      act.replays(of);
      app.touch();
    } catch (error) {
      act.notice([texts.notice.noPart(texts.activity.lessons, reason(error))]);
    }
  }

  return {
    /** Shows the course. */
    list: () => open((f) => f.list()),
    /**
     * Opens the lesson that an address carries or names.
     * @param {string} fragment
     */
    arrive: (fragment) => (ATTEMPT.test(fragment) ? replay(fragment) : open((f) => f.arrive(fragment))),
    /** Goes where the place outside that brought this page wants it. */
    delivered: () => open((f) => f.delivered()),
    /** Offers at once what a reload has interrupted. */
    resume: () => interrupted() !== null && open((f) => f.resume()),
    /** Ends the lesson that runs, if one does: the page goes elsewhere. */
    leave: () => flow?.leave(),
    /** After each frame. */
    after: () => flow?.after(),
  };
}
