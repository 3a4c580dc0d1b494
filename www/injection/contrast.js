// Suction, contrast and its name.

import { button, make, say } from '../base/dom.js';
import { texts } from '../words/injection.js';

/**
 * @import { Action, InjectionReport, Pattern, ProcedureReport } from '../pkg/values.js'
 *
 * `do` gives the report, or null where the action was not done.
 * @typedef {{ do: (action: Action) => ProcedureReport | null, said: (sentence: string) => void }} SyringeActs
 */

const VOLUMES_ML = [0.1, 0.5];
/** @type {readonly Pattern[]} */
const PATTERNS = ['perineural', 'arterial', 'venous', 'mixed', 'intrathecal', 'subdural', 'intraneural', 'intradiscal', 'facet_joint', 'peritoneal', 'muscular'];
const HOLD_MS = 250;

/**
 * Builds it in `holder`.
 * @param {HTMLElement} holder
 * @param {SyringeActs} act
 */
export function contrastControl(holder, act) {
  const t = texts.needle.contrast;
  const words = texts.needle.stage.list.contrast;
  const inject = (/** @type {number} */ ml) => act.do({ do: 'inject', volume: Math.round(100 * ml) });
  const aspirate = button(t.aspirate, () => act.do({ do: 'aspirate' }), { id: 'aspirate' });
  const answer = make('p', { id: 'aspirated' });
  const buttons = VOLUMES_ML.map((ml) => button(t.inject(ml), () => inject(ml), { id: `inject-${Math.round(100 * ml)}` }));
  const hold = make('button', { type: 'button', class: 'button hold', id: 'inject-hold', 'aria-describedby': 'inject-hint' }, t.hold, make('span', { class: 'unseen' }, t.holdMore));
  const live = make('p', { class: 'quiet' }, words.exposures);
  const state = make('p', { id: 'injected' });
  const list = make('select', { id: 'pattern' }, make('option', { value: '' }, ''), ...PATTERNS.map((p) => make('option', { value: p }, t.pattern[p])));
  const name = button(t.naming, () => (list.value ? act.do({ do: 'name', pattern: /** @type {Pattern} */ (list.value) }) : act.said(t.pick)), { id: 'name' });
  const naming = make('div', { class: 'naming' }, make('label', { for: 'pattern' }, t.name), make('div', { class: 'row tight' }, list, name));
  const verdict = make('p', { id: 'verdict', class: 'verdict' });
  holder.append(
    make('ul', { class: 'caution-line cautions' }, ...words.cautions.map((one) => make('li', {}, one))), live,
    make('div', { class: 'row middle' }, aspirate, answer),
    make('div', { class: 'row' }, ...buttons, hold), make('span', { class: 'unseen', id: 'inject-hint' }, t.holdHint),
    state, naming, verdict);

  let timer = 0;
  const stop = () => clearInterval(timer);
  const start = () => {
    stop();
    if (!inject(VOLUMES_ML[0])) return;
    timer = setInterval(() => inject(VOLUMES_ML[0]) || stop(), HOLD_MS);
  };
  hold.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    hold.setPointerCapture(event.pointerId);
    start();
  });
  for (const type of ['pointerup', 'pointercancel', 'lostpointercapture', 'blur']) hold.addEventListener(type, stop);
  hold.addEventListener('keydown', (event) => {
    if (event.key !== ' ' && event.key !== 'Enter') return;
    event.preventDefault();
    if (!event.repeat) start();
  });
  hold.addEventListener('keyup', (event) => (event.key === ' ' || event.key === 'Enter') && stop());
  // A press without a pointer or key, such as a screen reader's, has no length.
  hold.addEventListener('click', (event) => event.detail === 0 && inject(VOLUMES_ML[0]));
  hold.addEventListener('contextmenu', (event) => event.preventDefault());

  return {
    /** @param {ProcedureReport} report */
    update(report) {
      const injection = report.injected.at(-1);
      live.hidden = !report.exposures;
      say(answer, aspirateWords(report.aspirated));
      answer.hidden = !report.aspirated;
      const said = injection ? [t.in(injection.volume_ml), ...(injection.aspirated ? [] : [t.notAspirated]), ...(injection.live ? [] : [t.notLive])] : [];
      say(state, said.join(' '));
      state.hidden = naming.hidden = !injection;
      name.classList.toggle('strong', injection !== undefined && !injection.pattern);
      verdict.hidden = !injection?.pattern;
      if (injection?.pattern) say(verdict, verdictOf(injection));
    },
  };
}

/**
 * What suction gave, with what nothing is worth.
 * @param {ProcedureReport['aspirated']} aspirated
 */
export function aspirateWords(aspirated) {
  if (!aspirated) return '';
  return aspirated === 'nothing' ? texts.remarks.worth() : texts.needle.contrast.answer[aspirated];
}

/**
 * What the engine answers to the name that was given.
 * @param {InjectionReport} injection
 */
export function verdictOf({ named, pattern }) {
  if (!named || !pattern) return '';
  const t = texts.needle.contrast;
  const sign = texts.remarks.pattern(pattern);
  const lower = (/** @type {Pattern} */ p) => t.pattern[p].charAt(0).toLowerCase() + t.pattern[p].slice(1);
  const answer = named === pattern ? t.right(lower(pattern), sign) : t.wrong(lower(named), lower(pattern), sign);
  return `${answer} ${texts.needle.stage.list.contrast[pattern === 'perineural' ? 'right' : 'wrong']}`;
}
