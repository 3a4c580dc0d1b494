// The page. Sentences in texts/…/page.ftl; those that it shares with the course element in view.ftl.

import { tenth } from '../base/tenth.js';
import { pageSayer } from './language.js';
import { page as english } from '../pkg/texts/en/page.js';
import { view } from './view-page.js';

/**
 * @import { BeamSettings, DoseReadout, Level, Saving, Target } from '../pkg/values.js'
 * @import { Angles } from '../base/tenth.js'
 */

const say = pageSayer('page', english);

/** Three figures or so of a dose. */
const amount = (/** @type {number} */ value) => say.number(value, value >= 100 ? 0 : value >= 10 ? 1 : value >= 1 ? 2 : 3);
const angles = (/** @type {Angles} */ p) => ({ oblique: view.oblique.words(p.oblique_deg), tilt: view.tilt.words(p.tilt_deg) });
const spokenAngles = (/** @type {Angles} */ p) => ({ oblique: view.oblique.spoken(p.oblique_deg), tilt: view.tilt.spoken(p.tilt_deg) });
const kind = (/** @type {Picture} */ p) => say(`exposure-kind-${p.kind}`);
const turned = (/** @type {number} */ deg) => ({ deg: Math.abs(tenth(deg)), way: deg > 0 ? 'clockwise' : 'counter' });
const upright = (/** @type {number} */ deg) => Math.abs(deg) < 0.05;
/** A step of the views: what it is called, what to do, what to look for. */
const step = (/** @type {string} */ name) => ({
  title: (/** @type {Target} */ s) => say(`steps-${name}-title`, { side: s.side }),
  act: (/** @type {Target} */ s) => say(`steps-${name}-act`, { level: s.level, side: s.side }),
  look: (/** @type {Target} */ s, /** @type {Level | null} */ below) => say(`steps-${name}-look`, { level: s.level, below }),
});

/**
 * An exposure as it is told: of what kind, and from where.
 * @typedef {Target & Angles & { kind?: BeamSettings['kind'] }} Picture
 */

const own = say.tree({
  picture: {
    label: (/** @type {Target} */ s) => say('picture-label', { place: view.place(s) }),
    zoomed: (/** @type {number} */ times) => say(times > 1 ? 'picture-zoomed' : 'picture-whole', { times: say.number(times, 1) }),
  },
  loading: {
    failedFetch: (/** @type {string} */ why) => say('loading-failedFetch', { why }),
    failedStart: (/** @type {string} */ why) => say('loading-failedStart', { why }),
    failedRun: (/** @type {string} */ why) => say('loading-failedRun', { why }),
  },
  rotation: {
    words: (/** @type {number} */ deg) => (upright(deg) ? say('rotation-zero') : say('rotation-turned', turned(deg))),
    spoken: (/** @type {number} */ deg) => (upright(deg) ? say('rotation-zeroSpoken') : say('rotation-turnedSpoken', turned(deg))),
  },
  window: { percent: (/** @type {number} */ n) => say(n < 0 ? 'window-percentLess' : 'window-percent', { n: Math.abs(n) }) },
  exposure: {
    rate: (/** @type {number} */ n) => say('exposure-rate', { n }),
    magnified: (/** @type {number} */ times) => say('exposure-magnified', { times }),
    open: (/** @type {number} */ n) => say('exposure-open', { n }),
    last: (/** @type {Picture} */ p, /** @type {{ on?: boolean, moved?: boolean, otherLevel?: boolean }} */ { on, moved, otherLevel }) =>
      say(`exposure-${on ? 'on' : 'last'}${moved ? 'Moved' : ''}`, {
        kind: kind(p),
        where: otherLevel ? say('exposure-whereOf', { level: p.level, ...angles(p) }) : say('exposure-where', angles(p)),
      }),
    alternative: (/** @type {Picture} */ p, /** @type {boolean} */ moved) => say(`exposure-alternative${moved ? 'Moved' : ''}`, { kind: kind(p), level: p.level, ...spokenAngles(p) }),
    said: (/** @type {Picture} */ p, /** @type {DoseReadout} */ dose) =>
      say('exposure-said', { kind: p.kind, ...spokenAngles(p), exposures: say('exposure-count', { n: dose.exposures }), product: amount(dose.kap_mgy_cm2) }),
    figure: {
      exposures: (/** @type {DoseReadout} */ d) => String(d.exposures),
      beam: (/** @type {DoseReadout} */ d) => say('exposure-figure-beam', { n: say.number(d.beam_s, 1) }),
      kerma: (/** @type {DoseReadout} */ d) => say('exposure-figure-kerma', { n: amount(d.kerma_mgy) }),
      product: (/** @type {DoseReadout} */ d) => say('exposure-figure-product', { n: amount(d.kap_mgy_cm2) }),
      technique: (/** @type {DoseReadout} */ d) => (d.last ? say('exposure-figure-technique', { kvp: Math.round(d.last.kvp), mas: amount(d.last.mas) }) : ''),
    },
    saving: (/** @type {Saving} */ { habit, percent }) => say('exposure-saving', { habit, percent: Math.round(percent) }),
  },
  checks: {
    count: (/** @type {number} */ n) => say('checks-count', { n }),
    standsAtBest: (/** @type {string} */ name) => say('checks-standsAtBest', { view: name }),
    showingBest: (/** @type {string} */ name) => say('checks-showingBest', { view: name }),
  },
  steps: {
    progress: (/** @type {number} */ done, /** @type {number} */ all) => say('steps-progress', { done, all }),
    ticked: (/** @type {string} */ title) => say('steps-ticked', { title }),
    list: Object.fromEntries(['true_ap', 'square', 'oblique', 'square_again'].map((name) => [name, step(name)])),
  },
  gantry: {
    feet: (/** @type {Angles} */ s) => say('gantry-feet', angles(s)),
    side: (/** @type {Angles} */ s) => say('gantry-side', angles(s)),
    describeFeet: (/** @type {Angles} */ s) => say('gantry-describeFeet', spokenAngles(s)),
    describeSide: (/** @type {Angles} */ s) => say('gantry-describeSide', spokenAngles(s)),
  },
  notice: {
    badFragment: (/** @type {string} */ key, /** @type {string} */ value, /** @type {string} */ allowed) => say('notice-badFragment', { key, value, allowed }),
    unknownFragment: (/** @type {string} */ key) => say('notice-unknownFragment', { key }),
    noPart: (/** @type {string} */ name, /** @type {string} */ why) => say('notice-noPart', { name, why }),
    /** Of what comes with the page, not with a press. */
    noPartYet: (/** @type {string} */ name, /** @type {string} */ why) => say('notice-noPartYet', { name, why }),
    noLanguage: (/** @type {string} */ tag) => say('notice-noLanguage', { tag }),
  },
  bench: {
    done: (/** @type {number} */ n) => say('bench-done', { n }),
    running: (/** @type {number} */ n) => say('bench-running', { n }),
    failed: (/** @type {string} */ why) => say('bench-failed', { why }),
    columns: ['', say('bench-median'), say('bench-slow')],
  },
});

/**
 * Tables of the page over those of the view, one level deep.
 * @template {object} B
 * @template {object} A
 * @param {B} below
 * @param {A} above
 */
function over(below, above) {
  const all = /** @type {Record<string, unknown>} */ ({ ...below });
  for (const [key, high] of Object.entries(above)) {
    const low = all[key];
    all[key] = low && high && typeof low === 'object' && typeof high === 'object' ? { ...low, ...high } : high;
  }
  return /** @type {B & A} */ (/** @type {unknown} */ (all));
}

/** The page's table; the injection's part comes with it (injection.js). */
export const texts = over(view, own);
