// The injection stage by stage: the one in hand open, those done closed with their result. A stage ends by itself when the engine says that
// its aim is met. Where readings may not be told it ends by what the learner has done, since the end itself would tell; and from a stage
// whose aim is not met a button leads on, so that no stage is a dead end.

import { contrastControl } from './contrast.js';
import { gateList } from './gate-list.js';
import { button, make, say, segments } from '../base/dom.js';
import { tableButtons } from '../controls/table.js';
import { markTable } from './marks-table.js';
import { gantryLink } from '../words/gantry.js';
import { texts } from '../words/injection.js';

/**
 * @import { Action, Approach, ExerciseEntry, Gauge, Label, Level, ProcedureReport, Score, Side, StepId, ViewKind } from '../pkg/values.js'
 * @import { PageState, RunningLesson } from '../state/page-state.js'
 * @import { SyringeActs } from './contrast.js'
 *
 * The marks as the stages need them; a lesson's come with its exercise of naming parts.
 * @typedef {Pick<Score, 'steps' | 'total' | 'gates'> & { exercise?: ExerciseEntry | null }} Marks
 *
 * @typedef {'parts' | 'centre' | 'true_ap' | 'oblique' | 'lateral' | 'mark' | 'place' | 'align' | 'steer' | 'depth' | 'contrast' | 'finish'} StageId
 *
 * A stage. `done`: whether its aim is met, `result` what that came to in words; `tell`: whether readings may be told. `asked`: whether a lesson's
 * steps want it; an injection without a lesson has every stage but those for lessons only. `step`: the engine's, whose marks it has. `leads`:
 * whether a button leads on.
 * @typedef {object} Stage
 * @property {StageId} id
 * @property {StepId} [step]
 * @property {boolean} [lessonsOnly]
 * @property {boolean} [leads]
 * @property {(asks: Set<string>) => boolean} asked
 * @property {(report: ProcedureReport, known: { exercise: ExerciseEntry | null | undefined, tell: boolean }) => boolean} done
 * @property {(report: ProcedureReport, tell: boolean, marks: (step: StepId | null) => string) => string} result
 *
 * What a stage's words depend on.
 * @typedef {{ level: Level, side: Side, approach?: Approach }} StageWords
 *
 * What is on screen of a stage.
 * @typedef {object} StagePart
 * @property {HTMLLIElement} item
 * @property {HTMLDivElement} body
 * @property {HTMLElement} result
 * @property {(on: boolean) => void} open
 * @property {(state: StageWords, now: 'done' | 'current' | 'left' | 'later', outcome: string) => void} show
 *
 * @typedef {SyringeActs & { table: (way: string) => void, view: (view: ViewKind) => void, keep: (view: ViewKind) => void, mark: () => void, showArea: (on: boolean) => void, finish: () => void, touch: () => void }} StageActs
 */

/** @type {readonly Gauge[]} */
const GAUGES = ['22', '25'];
const LENGTHS_MM = [90, 127];
const APPROACHES = /** @type {const} */ (['subpedicular', 'infraneural']);
/** Where readings may not be told, a needle this deep has been steered, mm. */
const DEEP_MM = 30;

/** Steps of a lesson that want a needle. */
const NEEDLE_STEPS = ['down_the_beam', 'steering', 'depth', 'contacts', 'contrast'];
const wantsNeedle = (/** @type {Set<string>} */ asks) => NEEDLE_STEPS.some((step) => asks.has(step));
/** Whether steps of a lesson want a mark on the picture. */
export const wantsMark = (/** @type {Set<string>} */ asks) => asks.has('target') || wantsNeedle(asks);

/** What the engine says of a step's end. */
const progressOf = (/** @type {ProcedureReport} */ r, /** @type {StepId} */ id) => r.progress.find((p) => p.id === id);
const isMet = (/** @type {ProcedureReport} */ r, /** @type {StepId} */ id) => progressOf(r, id)?.done === true;
const ended = (/** @type {StepId} */ id) => (/** @type {ProcedureReport} */ r) => isMet(r, id);
/** In the lateral view the tip is as deep as it should be, or deeper: nothing is left to steer. */
const atDepth = (/** @type {ProcedureReport} */ r) => r.tip !== null && !['side_shallow', 'sacral_outside'].includes(r.tip.lateral.id);
const bothSeen = (/** @type {ProcedureReport} */ r) => Boolean(r.tip?.ap_seen && r.tip.lateral_seen);
const spreadIsGood = (/** @type {ProcedureReport} */ r) => isMet(r, 'contrast') && r.injected.at(-1)?.pattern === 'perineural';

/** @type {Stage} */
const FINISH = { id: 'finish', asked: () => true, done: (r) => r.finished, result: (r, tell, marks) => marks(null) };
/** @type {readonly Stage[]} */
const STAGES = [
  { id: 'parts', lessonsOnly: true, asked: (asks) => asks.has('name_parts'), done: (r, { exercise }) => exercise?.asks === null, result: (r, tell, marks) => marks('name_parts') },
  { id: 'centre', step: 'target_centred', lessonsOnly: true, leads: true, asked: (asks) => asks.has('target_centred'), done: (r, { tell }) => tell && isMet(r, 'target_centred'), result: (r, tell, marks) => (tell ? marks('target_centred') : texts.needle.stage.done) },
  { id: 'true_ap', step: 'true_ap', asked: (asks) => asks.has('true_ap'), done: ended('true_ap'), result: (r, tell, marks) => (tell ? marks('true_ap') : texts.needle.stage.list.true_ap.kept) },
  { id: 'oblique', step: 'oblique', asked: (asks) => asks.has('oblique') || wantsMark(asks), done: ended('oblique'), result: (r, tell, marks) => (tell ? marks('oblique') : texts.needle.stage.list.oblique.kept) },
  { id: 'lateral', step: 'lateral', lessonsOnly: true, asked: (asks) => asks.has('lateral') && !asks.has('depth'), done: ended('lateral'), result: (r, tell, marks) => (tell ? marks('lateral') : texts.needle.stage.list.lateral.kept) },
  { id: 'mark', step: 'target', asked: wantsMark, done: (r) => isMet(r, 'target') || Boolean(r.needle), result: (r, tell, marks) => (tell ? marks('target') : texts.needle.stage.list.mark.done) },
  { id: 'place', asked: wantsNeedle, done: (r) => Boolean(r.needle), result: (r) => (r.needle ? texts.needle.stage.placed(r.needle) : '') },
  { id: 'align', step: 'down_the_beam', asked: wantsNeedle, done: ended('down_the_beam'), result: (r, tell, marks) => (tell ? marks('down_the_beam') : texts.needle.stage.done) },
  { id: 'steer', step: 'steering', leads: true, asked: (asks) => ['steering', 'depth', 'contrast'].some((step) => asks.has(step)), done: (r, { tell }) => (tell ? isMet(r, 'steering') || atDepth(r) : r.needle !== null && r.needle.depth_mm >= DEEP_MM), result: (r) => (r.needle ? texts.needle.stage.list.steer.done(r.needle.depth_mm) : '') },
  { id: 'depth', step: 'depth', leads: true, asked: (asks) => asks.has('depth') || asks.has('contrast'), done: (r, { tell }) => (tell ? isMet(r, 'depth') : bothSeen(r) || r.aspirated !== null || r.injected.length > 0), result: (r, tell) => (tell && r.tip?.in_place ? texts.needle.stage.list.depth.done : texts.needle.stage.done) },
  { id: 'contrast', step: 'contrast', leads: true, asked: (asks) => asks.has('contrast'), done: spreadIsGood, result: (r, tell, marks) => marks('contrast') },
  FINISH,
];

/**
 * Builds the list in `holder`.
 * @param {HTMLElement} holder
 * @param {StageActs} act
 */
export function stageList(holder, act) {
  const t = texts.needle.stage;
  const parts = /** @type {Record<StageId, StagePart>} */ (Object.fromEntries(STAGES.map((s) => [s.id, stage(s)])));
  holder.replaceChildren(...STAGES.map((s) => parts[s.id].item));

  // The table: the two views, and under each other what is across, along and up and down.
  parts.centre.body.append(make('div', { class: 'table-pad', role: 'group', 'aria-label': gantryLink.table.name, id: 'stage-table' },
    .../** @type {const} */ (['true_ap', 'lateral']).map((view) => button(texts.needle.hand.view[view], () => act.view(view), { id: `look-${view}`, 'aria-label': texts.needle.next.look(view) })),
    ...tableButtons(act.table, ['left', 'head', 'right', 'feet', 'up', 'down'])));

  // Views to keep.
  const keeps = /** @type {const} */ (['true_ap', 'oblique', 'lateral']).map((view) => {
    const element = button(t.keep(view), () => act.keep(view), { class: 'button strong', id: view === 'lateral' ? 'keep-lateral-alone' : `keep-${view}` });
    const now = make('p', { class: 'view-now' });
    parts[view].body.append(now, element);
    return { view, element, now };
  });
  const keepLateral = button(t.keep('lateral'), () => act.keep('lateral'), { id: 'keep-lateral' });
  parts.depth.body.append(keepLateral);

  // The mark.
  const mark = button(t.mark, () => act.mark(), { class: 'button strong', id: 'mark' });
  const area = make('input', { type: 'checkbox', id: 'show-area' });
  area.addEventListener('change', () => act.showArea(area.checked));
  const areaTick = make('label', { class: 'tick' }, area, make('span', {}, t.showArea));
  parts.mark.body.append(make('div', { class: 'row' }, mark, areaTick));

  // The needle.
  /** @type {{ gauge: Gauge, length_mm: number }} */
  const choice = { gauge: '22', length_mm: 127 };
  /**
   * @template {string} V
   * @param {string} name
   * @param {string} legend
   * @param {readonly (readonly [V, string])[]} options
   * @param {(value: V) => void} onPick
   */
  const field = (name, legend, options, onPick) => {
    const box = make('div', { class: 'segments' });
    const show = segments(box, name, options, onPick);
    return { element: make('fieldset', { class: 'choice' }, make('legend', {}, legend), box), show };
  };
  const gauge = field('gauge', t.gauge, GAUGES.map((g) => /** @type {const} */ ([g, t.gaugeName(g)])), (g) => {
    choice.gauge = g;
    showChoice();
  });
  const length = field('length', t.length, LENGTHS_MM.map((mm) => /** @type {const} */ ([String(mm), t.lengthName(mm)])), (mm) => {
    choice.length_mm = Number(mm);
    showChoice();
  });
  const approach = field('approach', t.approach, APPROACHES.map((a) => /** @type {const} */ ([a, t.approachName[a]])), (way) => act.do({ do: 'choose', approach: way }));
  approach.element.classList.add('wide');
  const colour = make('p', { class: 'quiet' });
  const showChoice = () => {
    gauge.show(choice.gauge);
    length.show(String(choice.length_mm));
    say(colour, t.hubColour(choice.gauge));
  };
  showChoice();
  const place = button(t.place, () => act.do({ do: 'place', ...choice }), { class: 'button strong' });
  place.id = 'place';
  const remove = button(t.remove, () => act.do({ do: 'remove' }), { class: 'button plain' });
  remove.id = 'remove';
  parts.mark.body.prepend(approach.element);
  parts.place.body.append(make('div', { class: 'row' }, gauge.element, length.element), colour, make('div', { class: 'row' }, place, remove));

  const contactList = make('ol', { class: 'met', id: 'met' });
  parts.steer.body.append(make('h3', { class: 'met-heading' }, texts.needle.hand.met), contactList);
  for (const id of /** @type {const} */ (['place', 'steer'])) parts[id].body.append(make('p', { class: 'caution-line' }, t.list[id].caution));
  const contrast = contrastControl(parts.contrast.body, act);

  // On to the next stage by the learner's own decision: the stages that were left so, until another needle is taken.
  /** @type {Set<StageId>} */
  const left = new Set();
  const leads = STAGES.filter((s) => s.leads).map((s) => {
    const element = button(t.goOn, () => {
      left.add(s.id);
      act.touch();
    }, { id: `go-on-${s.id}` });
    parts[s.id].body.append(element);
    return { s, element };
  });
  const finish = button(t.finish, act.finish, { class: 'button strong', id: 'finish' });
  parts.finish.body.append(finish);
  const table = markTable(parts.finish.body);
  const gates = gateList(parts.finish.body);

  let openFor = '';
  // Whether a stage was left with its aim not met, or is still to come.
  let open = false;
  return {
    /**
     * Shows the report. `tell`: whether readings and marks may be told before the end. `viewNow(view)`: how near a view is, where that may be said;
     * `asking`: the view that is worth nothing and was not kept at once. Returns the stage in hand.
     * @param {PageState} state
     * @param {ProcedureReport} report
     * @param {Marks | null | undefined} score
     * @param {{ tell: boolean, marking: boolean, showArea: boolean, viewNow: (view: ViewKind) => string, asking: string, lesson: RunningLesson | null }} now
     */
    update(state, report, score, { tell, marking, showArea, viewNow, asking, lesson }) {
      const exercise = score?.exercise;
      // What was left open stays so until it can be done anew: the table with a new attempt, the needle's steps with another needle.
      if (report.actions === 0) left.clear();
      else if (!report.needle) for (const id of left) if (id !== 'centre') left.delete(id);
      const wanted = STAGES.filter((s) => (lesson ? s.asked(lesson.asks) : !s.lessonsOnly));
      const isDone = (/** @type {Stage} */ s) => s.done(report, { exercise, tell });
      const isOver = (/** @type {Stage} */ s) => left.has(s.id) || isDone(s);
      const current = (!report.finished && wanted.find((s) => !isOver(s))) || FINISH;
      open = wanted.some((s) => s !== FINISH && !isDone(s));
      const worth = (/** @type {StepId | null} */ id) => {
        const share = id === null ? score?.total : score?.steps.find((s) => s.id === id)?.score;
        return share === null || share === undefined ? t.done : t.marks(share);
      };
      for (const s of STAGES) {
        parts[s.id].item.hidden = !wanted.includes(s);
        const done = isDone(s);
        const mayTell = tell || report.finished;
        const phase = done ? 'done' : s === current ? 'current' : report.finished || left.has(s.id) ? 'left' : 'later';
        parts[s.id].item.dataset.worth = done && mayTell && s.step && progressOf(report, s.step)?.at_nothing ? 'nothing' : '';
        parts[s.id].show({ ...state, approach: report.approach }, phase, done ? s.result(report, mayTell, mayTell ? worth : () => t.done) : phase === 'left' ? t.left : '');
      }
      for (const { s, element } of leads) element.hidden = isOver(s) || s !== current;
      // Another stage has come up: it opens and the others close. Otherwise the learner's own opening stands.
      const now = `${current.id} ${report.finished}`;
      if (openFor !== now) {
        openFor = now;
        for (const s of STAGES) parts[s.id].open(s === current);
      }
      for (const { view, element, now } of keeps) {
        say(element, asking === view ? t.keepAsked : report.kept.includes(view) ? t.keepAgain(view) : t.keep(view));
        say(now, asking === view ? t.keepNothing : viewNow(view));
        now.hidden = now.textContent === '';
      }
      say(keepLateral, report.kept.includes('lateral') ? t.keepAgain('lateral') : t.keep('lateral'));
      say(mark, marking ? t.marking : t.mark);
      mark.setAttribute('aria-pressed', String(marking));
      areaTick.hidden = state.selfTest;
      area.checked = showArea;
      approach.element.hidden = state.level === 'S1' || Boolean(lesson && !lesson.openApproach);
      approach.show(report.approach);
      say(place, report.needle ? t.placeAgain : t.place);
      remove.hidden = !report.needle;
      const lines = report.met.length ? report.met.map(texts.remarks.contact) : [texts.needle.hand.nothingMet];
      if (contactList.dataset.now !== lines.join('|')) {
        contactList.dataset.now = lines.join('|');
        contactList.replaceChildren(...lines.map((line, i) => make('li', { class: report.met[i]?.harm ? 'harm' : '' }, line)));
      }
      contrast.update(report);
      finish.hidden = report.finished;
      // A lesson shows them with its result.
      table.update(lesson ? null : score, tell || report.finished, report.exposures);
      gates.update(lesson || !report.finished ? null : score?.gates);
      return current.id;
    },
    /** The stages' names in their order. */
    order: STAGES.map((s) => s.id),
    contrast,
    /** Whether some stage is not done. */
    anyOpen: () => open,
    /** What a stage asks for. */
    words: (/** @type {StageId} */ id, /** @type {StageWords} */ state) => actOf(t.list[id], state),
    /** A stage's name and what stands behind it once it is done. */
    heading: (/** @type {StageId} */ id) => ({ title: t.list[id].title, result: parts[id].result.textContent }),
  };

  /**
   * @param {{ act: string | ((s: StageWords & { approach: Approach }) => string) }} words
   * @param {StageWords} state
   */
  function actOf(words, state) {
    return typeof words.act === 'function' ? words.act({ approach: 'subpedicular', ...state }) : words.act;
  }

  /**
   * A dot in the row, and under the row what the stage says and holds, which its dot opens and closes.
   * @param {Stage} of
   * @returns {StagePart}
   */
  function stage({ id }) {
    const words = t.list[id];
    const title = make('h3', { class: 'stage-title' }, words.title);
    const result = make('p', { class: 'stage-result' });
    const text = make('p', { class: 'stage-act' });
    const body = make('div', { class: 'stage-body', id: `stage-body-${id}`, hidden: true }, make('div', { class: 'stage-head' }, title, result), text);
    const dot = button('', () => open(Boolean(body.hidden)), { class: 'stage-dot', title: words.title, 'aria-controls': body.id });
    dot.append(make('span', { class: 'stage-mark', 'aria-hidden': 'true' }));
    const item = make('li', { class: 'stage', id: `stage-${id}` }, dot, body);
    /** @param {boolean} on */
    function open(on) {
      body.hidden = !on;
      item.toggleAttribute('data-open', on);
      dot.setAttribute('aria-expanded', String(on));
      // One at a time.
      if (on) for (const other of Object.values(parts)) if (other.item !== item) other.open(false);
    }
    return {
      item,
      body,
      result,
      open,
      show(state, now, outcome) {
        item.dataset.phase = now;
        if (now === 'current') item.setAttribute('aria-current', 'step');
        else item.removeAttribute('aria-current');
        say(text, actOf(words, state));
        say(result, outcome);
        dot.setAttribute('aria-label', [words.title, t[now], outcome].filter(Boolean).join(', '));
      },
    };
  }
}
