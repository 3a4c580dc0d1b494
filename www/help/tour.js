// The tour: a small panel beside one part of the page after the other. It is no dialog: everything can be used meanwhile, and where a
// stop asks for a turn the panel notices it. It stands in the window beside what it speaks of, and never over it.

import { criteriaOf, viewOf } from '../views/criterion-rows.js';
import { button, byId, make, say, within } from '../base/dom.js';
import { help } from '../words/help.js';

const t = help.tour;
const GAP_PX = 12;

/**
 * @import { Angles } from '../base/tenth.js'
 * @import { Report } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 *
 * @typedef {object} Stop
 * @property {keyof typeof t.stops} id
 * @property {string | string[]} at selectors of what is outlined: the first that is seen
 * @property {string} after selector of what the panel follows in the order of Tab
 * @property {(app: App, from: Angles) => string | false} [did] what is said once the learner has done what the stop asks for
 */

/**
 * The stops: what is outlined, where the panel stands in the order of Tab, and what the learner may do there.
 * @type {readonly Stop[]}
 */
const STOPS = [
  { id: 'picture', at: '#picture', after: '#side', did: (app, from) => (app.state.oblique_deg !== from.oblique_deg || app.state.tilt_deg !== from.tilt_deg) && t.noticed.turned },
  { id: 'oblique', at: '#turn-oblique-control', after: '#side', did: (app, from) => app.state.oblique_deg !== from.oblique_deg && t.noticed.turned },
  { id: 'tilt', at: '#turn-tilt-control', after: '#side', did: (app, from) => app.state.tilt_deg !== from.tilt_deg && t.noticed.turned },
  { id: 'checks', at: '#checks-button', after: '#tools', did: (app) => full(app.report) && t.noticed.full },
  { id: 'gantry', at: '#gantry-open', after: '#tools' },
  { id: 'activities', at: ['#activities', '#menu-button'], after: '.top' },
];

const full = (/** @type {Report | null} */ report) => {
  const view = viewOf(report, 'true_ap');
  return report !== null && view !== undefined && criteriaOf(report, view).every((c) => c.score >= 1);
};

/**
 * Builds it. Returns `{ begin(), update() }`.
 * @param {App} app
 */
export function tour(app) {
  /** @type {Stop[]} */
  let stops = [];
  let now = -1;
  /** @type {Angles} */
  let from = { oblique_deg: 0, tilt_deg: 0 };
  /** @type {Element | null} */
  let opener = null;

  const heading = make('h2', { id: 'tour-heading', tabindex: -1 });
  const text = make('p', {});
  const noticed = make('p', { class: 'tour-noticed', role: 'status' });
  const count = make('span', { class: 'quiet' });
  const back = button(t.back, () => go(now - 1), { class: 'button plain', id: 'tour-back' });
  const next = button(t.next, () => (now === stops.length - 1 ? end() : go(now + 1)), { class: 'button strong', id: 'tour-next' });
  const close = button('×', end, { class: 'button plain', id: 'tour-close', 'aria-label': help.close });
  const panel = make('section', { class: 'tour', id: 'tour', 'aria-labelledby': 'tour-name tour-heading', hidden: true },
    make('div', { class: 'tour-head' }, make('p', { class: 'quiet', id: 'tour-name' }, t.name, ' ', count), close),
    heading, text, noticed, make('div', { class: 'row' }, back, next));
  const places = new ResizeObserver(() => now >= 0 && place());

  const partOf = (/** @type {Stop} */ stop) => {
    return [stop.at].flat().map((at) => document.querySelector(at)).find((part) => part?.checkVisibility()) ?? null;
  };

  function begin() {
    if (document.activeElement !== document.body) opener ??= document.activeElement;
    stops = STOPS.filter(partOf);
    places.observe(document.body);
    go(0);
  }

  /** @param {number} to */
  function go(to) {
    document.querySelector('[data-tour]')?.removeAttribute('data-tour');
    // A part that has gone meanwhile (another activity was chosen) is passed over.
    const way = to < now ? -1 : 1;
    let at = to;
    while (stops[at] && !partOf(stops[at])) at += way;
    if (!stops[at]) return end();
    now = at;
    const stop = stops[now];
    from = { oblique_deg: app.state.oblique_deg, tilt_deg: app.state.tilt_deg };
    const words = t.stops[stop.id];
    say(heading, words.title);
    say(text, words.text);
    say(noticed, '');
    noticed.hidden = !stop.did;
    say(count, t.count(now + 1, stops.length));
    back.disabled = now === 0;
    say(next, now === stops.length - 1 ? t.done : t.next);
    within(document, stop.after).append(panel);
    panel.hidden = false;
    partOf(stop)?.setAttribute('data-tour', '');
    place();
    show();
    heading.focus({ preventScroll: true });
  }

  /** Puts the panel beside its part, where there is room in the window for it; below or above it on a narrow one. */
  function place() {
    const part = partOf(stops[now]);
    if (!part) return end();
    const at = part.getBoundingClientRect();
    const [width, height] = [panel.offsetWidth, panel.offsetHeight];
    const room = { width: document.documentElement.clientWidth, height: innerHeight - within(document, '.caution').offsetHeight };
    const held = (/** @type {number} */ x, /** @type {number} */ most) => Math.max(GAP_PX, Math.min(x, most - GAP_PX));
    const across = held((at.left + at.right - width) / 2, room.width - width);
    const beside = held(at.top, room.height - height);
    const ways = [
      [at.right + GAP_PX, beside], [at.left - GAP_PX - width, beside], [across, at.bottom + GAP_PX], [across, at.top - GAP_PX - height],
    ];
    const [left, top] = ways.find(([x, y]) => x >= 0 && x + width <= room.width && y >= 0 && y + height <= room.height) ?? [across, held(at.bottom + GAP_PX, room.height - height + GAP_PX)];
    panel.style.left = `${left}px`;
    panel.style.top = `${top}px`;
  }

  /** The part on the screen, without a glide. */
  function show() {
    const part = partOf(stops[now]);
    if (!part?.closest('#view')) part?.scrollIntoView({ block: 'nearest', behavior: 'instant' });
    place();
  }

  function end() {
    if (now < 0) return;
    now = -1;
    places.disconnect();
    document.querySelector('[data-tour]')?.removeAttribute('data-tour');
    const inside = panel.contains(document.activeElement);
    panel.hidden = true;
    if (inside) (opener instanceof HTMLElement && opener.checkVisibility() ? opener : byId('picture')).focus();
    opener = null;
  }

  for (const type of ['scroll', 'resize']) addEventListener(type, () => now >= 0 && place(), { passive: true });
  document.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || event.defaultPrevented || now < 0) return;
    // Escape belongs first to what lies above, and to what has the focus.
    if (document.querySelector('dialog[open], [popover]:popover-open') || (app.state.injection && event.target instanceof Node && byId('picture').contains(event.target))) return;
    end();
  });

  return {
    begin,
    /** The page has changed: what the learner has done here is noticed. */
    update() {
      if (now < 0) return;
      const said = stops[now].did?.(app, from);
      if (said) say(noticed, said);
    },
  };
}
