// The page. Sentences in texts/…/page.ftl; those that it shares with the course element in view.ftl.

import { tenth } from '../base/tenth.js';
import { pageSayer } from './language.js';
import { page as english } from '../pkg/texts/en/page.js';
import { view } from './view-page.js';

const say = pageSayer('page', english);

/** Three figures or so of a dose. */
const amount = (value) => say.number(value, value >= 100 ? 0 : value >= 10 ? 1 : value >= 1 ? 2 : 3);
const angles = (p) => ({ oblique: view.oblique.words(p.oblique_deg), tilt: view.tilt.words(p.tilt_deg) });
const spokenAngles = (p) => ({ oblique: view.oblique.spoken(p.oblique_deg), tilt: view.tilt.spoken(p.tilt_deg) });
const kind = (p) => say(`exposure-kind-${p.kind}`);
const turned = (deg) => ({ deg: Math.abs(tenth(deg)), way: deg > 0 ? 'clockwise' : 'counter' });
const upright = (deg) => Math.abs(deg) < 0.05;
/** A step of the views: what it is called, what to do, what to look for. */
const step = (name) => ({
  title: (s) => say(`steps-${name}-title`, { side: s.side }),
  act: (s) => say(`steps-${name}-act`, { level: s.level, side: s.side }),
  look: (s, below) => say(`steps-${name}-look`, { level: s.level, below }),
});

const own = say.tree({
  picture: {
    label: (s) => say('picture-label', { place: view.place(s) }),
    zoomed: (times) => say(times > 1 ? 'picture-zoomed' : 'picture-whole', { times: say.number(times, 1) }),
  },
  loading: {
    failedFetch: (why) => say('loading-failedFetch', { why }),
    failedStart: (why) => say('loading-failedStart', { why }),
    failedRun: (why) => say('loading-failedRun', { why }),
  },
  rotation: {
    words: (deg) => (upright(deg) ? say('rotation-zero') : say('rotation-turned', turned(deg))),
    spoken: (deg) => (upright(deg) ? say('rotation-zeroSpoken') : say('rotation-turnedSpoken', turned(deg))),
  },
  window: { percent: (n) => say(n < 0 ? 'window-percentLess' : 'window-percent', { n: Math.abs(n) }) },
  table: {
    words: (x, z) =>
      x === 0 && z === 0
        ? say('table-isocentre')
        : [
            x !== 0 && say('table-across', { mm: Math.abs(x), way: x > 0 ? 'left' : 'right' }),
            z !== 0 && say('table-along', { mm: Math.abs(z), way: z > 0 ? 'head' : 'feet' }),
          ].filter(Boolean).join(', '),
  },
  exposure: {
    rate: (n) => say('exposure-rate', { n }),
    magnified: (times) => say('exposure-magnified', { times }),
    open: (n) => say('exposure-open', { n }),
    last: (p, { on, moved, otherLevel }) =>
      say(`exposure-${on ? 'on' : 'last'}${moved ? 'Moved' : ''}`, {
        kind: kind(p),
        where: otherLevel ? say('exposure-whereOf', { level: p.level, ...angles(p) }) : say('exposure-where', angles(p)),
      }),
    alternative: (p, moved) => say(`exposure-alternative${moved ? 'Moved' : ''}`, { kind: kind(p), level: p.level, ...spokenAngles(p) }),
    said: (p, dose) =>
      say('exposure-said', { kind: p.kind, ...spokenAngles(p), exposures: say('exposure-count', { n: dose.exposures }), product: amount(dose.kap_mgy_cm2) }),
    figure: {
      exposures: (d) => String(d.exposures),
      beam: (d) => say('exposure-figure-beam', { n: say.number(d.beam_s, 1) }),
      kerma: (d) => say('exposure-figure-kerma', { n: amount(d.kerma_mgy) }),
      product: (d) => say('exposure-figure-product', { n: amount(d.kap_mgy_cm2) }),
      technique: (d) => say('exposure-figure-technique', { kvp: Math.round(d.last.kvp), mas: amount(d.last.mas) }),
    },
    saving: ({ habit, percent }) => say('exposure-saving', { habit, percent: Math.round(percent) }),
  },
  checks: {
    count: (n) => say('checks-count', { n }),
    standsAtBest: (name) => say('checks-standsAtBest', { view: name }),
    showingBest: (name) => say('checks-showingBest', { view: name }),
  },
  steps: {
    progress: (done, all) => say('steps-progress', { done, all }),
    ticked: (title) => say('steps-ticked', { title }),
    list: Object.fromEntries(['true_ap', 'square', 'oblique', 'square_again'].map((name) => [name, step(name)])),
  },
  gantry: {
    feet: (s) => say('gantry-feet', angles(s)),
    side: (s) => say('gantry-side', angles(s)),
    describeFeet: (s) => say('gantry-describeFeet', spokenAngles(s)),
    describeSide: (s) => say('gantry-describeSide', spokenAngles(s)),
  },
  notice: {
    badFragment: (key, value, allowed) => say('notice-badFragment', { key, value, allowed }),
    unknownFragment: (key) => say('notice-unknownFragment', { key }),
    noPart: (name, why) => say('notice-noPart', { name, why }),
    /** Of what comes with the page, not with a press. */
    noPartYet: (name, why) => say('notice-noPartYet', { name, why }),
    noLanguage: (tag) => say('notice-noLanguage', { tag }),
  },
  bench: {
    done: (n) => say('bench-done', { n }),
    running: (n) => say('bench-running', { n }),
    failed: (why) => say('bench-failed', { why }),
    columns: ['', say('bench-median'), say('bench-slow')],
  },
});

/** Tables of the page over those of the view, one level deep. */
const over = (below, above) => Object.fromEntries([...Object.keys(below), ...Object.keys(above)].map((key) => {
  const [low, high] = [below[key], above[key]];
  return [key, low && high && typeof high === 'object' ? { ...low, ...high } : (high ?? low)];
}));

/** The page's table; the injection's part comes with it (injection.js). */
export const texts = over(view, own);
