// The whole injection on the page: joins the attempt to its panel, the hand, the picture and the keys.

import { aiming } from './aim.js';
import { attemptKeeper } from './attempt.js';
import { criteriaOf, unmetOf, viewOf } from '../views/criterion-rows.js';
import { aspirateWords, verdictOf } from './contrast.js';
import { needleHand, notchHour } from './hand.js';
import { nextAct } from './next.js';
import { moveTable } from '../controls/table.js';
import { byId, make, say, segments } from '../base/dom.js';
import { stageList } from './stages.js';
import { keyOf, PLACE, POSITIONING, sameBeam } from '../state/positioning.js';
import { gantryLink } from '../words/gantry.js';
import { texts } from '../words/injection.js';

const DETECTOR_MM = 512 * 0.4;
/** Which view a stage works towards. */
/** @type {Partial<Record<StageId, ViewKind>>} */
const VIEW_OF = { centre: 'true_ap', true_ap: 'true_ap', depth: 'lateral', lateral: 'lateral' };
/** The clock is read from this depth on, mm, and within this of a plain AP, degrees. Choices, no source. */
const [CLOCK_MM, CLOCK_DEG] = [20, 15];
const MARK_FIELDS = /** @type {const} */ (['mark', 'area', 'hub', 'tip']);

/**
 * @import { Action, NeedleReport, ProcedureReport, Report, ViewKind } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 * @import { Shaping } from '../engine/shaping.js'
 * @import { Record as ExposureRecord } from '../exposure/record.js'
 * @import { HubPress, Mm } from './aim.js'
 * @import { StageId } from './stages.js'
 *
 * @typedef {ReturnType<typeof injection>} Injection
 */

/**
 * `record` may be set later.
 * @param {App} app
 * @param {Shaping} patient
 * @param {() => ExposureRecord} record
 * @param {{ notice: (sentences: string[]) => void }} act
 */
export function injection(app, patient, record, act) {
  const t = texts.needle;
  const line = byId('needle-said');
  const said = (/** @type {string} */ text) => say(line, text);
  const attempt = attemptKeeper(app, patient, { notice: act.notice, said, fresh: () => record().begin() });
  let showArea = false;
  // The revision that a hint was asked for at.
  let hintOf = -1;
  /** @type {StageId | ''} */
  let stage = '';
  // What the strong button does next, where the step in hand has none of its own.
  /** @type {ReturnType<typeof nextAct>} */
  let next = null;
  let arm = '';
  // The view that is worth nothing and that was asked about, with where the C-arm stood.
  /** @type {{ view: ViewKind | '', at: string }} */
  let asked = { view: '', at: '' };
  const signs = make('p', { class: 'signs', id: 'needle-signs', role: 'status', hidden: true });
  byId('stage-list').before(signs);

  /** Whether readings and marks may be told. */
  const mayRead = () => !app.state.selfTest || Boolean(attempt.report()?.finished);
  /** Whether what to do may be said unasked: practice says it when asked. */
  const mayTell = () => !app.state.injection || app.state.selfTest || app.state.guided || hintOf === attempt.revision() || Boolean(attempt.report()?.finished);
  const armAt = () => keyOf(app.state, POSITIONING);
  const asking = () => (asked.at === armAt() ? asked.view : '');
  /** Whether keeping this view now would earn nothing, where that may be said. */
  const worthNothing = (/** @type {ViewKind} */ view) => mayRead() && (viewOf(app.report, view)?.score ?? 1) <= 0;
  const exposure = () => record().exposure();
  const field_mm = () => (app.state.byExposure ? DETECTOR_MM / (exposure()?.magnification ?? 1) : DETECTOR_MM);
  const moved = () => {
    const shown = exposure();
    return !shown || !sameBeam(shown, app.state);
  };

  /**
   * Does an action and says what came of it.
   * @param {Action} action
   */
  function perform(action) {
    hand.send();
    return apply(action);
  }

  /** @param {Action} action */
  function apply(action) {
    const before = attempt.report();
    const report = attempt.act(action);
    if (report) said(outcome(action, before, report));
    return report;
  }

  /**
   * @param {Action} action
   * @param {ProcedureReport | null} before
   * @param {ProcedureReport} report
   */
  function outcome(action, before, report) {
    const fresh = report.met.slice(before?.met.length ?? 0).map(texts.remarks.contact);
    const { needle } = report;
    const injected = report.injected.at(-1);
    switch (action.do) {
      // Who asked says it: there need be no needle yet.
      case 'orient':
        return '';
      case 'keep':
      case 'recall':
        return t.did[action.do](action.view);
      case 'mark':
      case 'remove':
        return t.did[action.do];
      case 'choose':
        return t.did.choose(action.approach);
      case 'place':
        return needle ? t.did.place(needle) : '';
      case 'aspirate':
        return aspirateWords(report.aspirated);
      case 'inject':
        return injected ? t.contrast.in(injected.volume_ml) : '';
      case 'name':
        return injected ? verdictOf(injected) : '';
      case 'point':
        return pointed();
      case 'finish':
        return app.lesson ? '' : t.score.said(attempt.score()?.total ?? 0);
      case 'roll':
        return needle ? `${t.hand.notch(notchHour(needle))}.` : '';
      case 'angle':
        return needle && mayRead() && !app.state.byExposure ? `${t.hand.beam(needle.coaxial)}, ${t.hand.hubOff(needle.coaxial)}.` : '';
      default:
        return !needle ? '' : [...fresh, `${t.hand.depth(needle)}${mayRead() && !app.state.byExposure && needle.off_mark_mm ? `, ${t.hand.offMark(needle.off_mark_mm)}` : ''}.`].join(' ');
    }
  }

  /** What is said of the part that was pointed at. */
  function pointed() {
    /** @type {import('./stages.js').Marks | null} */
    const score = attempt.score();
    return app.lesson && score?.exercise ? app.lesson.verdict(score.exercise) : '';
  }

  /**
   * How near the C-arm stands to a view and what to move, where it may be told and the picture shows it.
   * @param {ViewKind} name
   */
  function viewNow(name) {
    const { report } = app;
    const view = viewOf(report, name);
    if (!report || !view || app.state.selfTest || !mayTell() || (app.state.byExposure && moved())) return '';
    const advice = criteriaOf(report, view).filter((c) => c.score < 1).map(texts.checks.sentence);
    return [`${t.stage.now(view.score)}`, ...advice].join(' ');
  }

  /**
   * What to do next: the engine's hint, or, where a lesson asks for less than a whole injection, what its own stage wants.
   * @param {ProcedureReport} report
   */
  function hintText(report) {
    if (!app.lesson) return texts.remarks.one(report.hint);
    if (stage === '' || stage === 'finish') return stages.anyOpen() ? app.lesson.hintOpen : app.lesson.hintDone;
    if (stage === 'parts') return app.lesson.hintPart();
    const view = stage === 'true_ap' || stage === 'oblique' || stage === 'lateral' ? stage : null;
    // In a guided lesson the stage says it already.
    if (view) return app.state.guided ? '' : viewNow(view) || stages.words(stage, { ...app.state, approach: report.approach });
    // The engine goes by a whole injection; a lesson may ask for less.
    return report.hint.id === 'keep_view' ? stages.words(stage, app.state) : texts.remarks.one(report.hint);
  }

  /**
   * A stage has ended and another is in hand: says what was reached, behind what came of the last action.
   * @param {StageId | ''} was
   * @param {StageId} now
   * @param {ProcedureReport} report
   */
  function sayEnded(was, now, report) {
    if (was === '' || report.actions === 0 || report.finished) return;
    const order = stages.order;
    if (order.indexOf(now) <= order.indexOf(was)) return;
    const { title, result } = stages.heading(was);
    said([line.textContent, t.stage.ended(title, result), t.stage.next(stages.heading(now).title)].filter(Boolean).join(' '));
  }

  const does = {
    do: perform,
    said,
    /** @param {ViewKind} view */
    keep(view) {
      if (app.state.ownView) return act.notice([t.refuse.bestView]);
      if (worthNothing(view) && asking() !== view) {
        asked = { view, at: armAt() };
        said(t.stage.keepNothing);
        return app.touch();
      }
      asked = { view: '', at: '' };
      perform({ do: 'keep', view });
    },
    roll: (/** @type {number} */ degrees) => apply({ do: 'roll', by: Math.round(degrees * 10) }),
    /** @param {number} mm */
    push(mm) {
      const by = Math.round(Math.abs(mm) * 10);
      perform(mm > 0 ? { do: 'advance', by, spin: hand.spin() } : { do: 'withdraw', by });
    },
    hub: (/** @type {number} */ right, /** @type {number} */ up) => perform({ do: 'angle', right, up }),
    /**
     * The hub follows a hand: each move replaces the one before, so that the log holds one turn.
     * @param {Mm} wanted
     * @param {HubPress} press
     */
    hubDrag(wanted, press) {
      if (press.done) attempt.takeBack();
      press.gain ??= 573 / (1.4 * Math.max(20, attempt.report()?.needle?.outside_mm ?? 0));
      const { gain } = press;
      const [right, up] = wanted.map((mm) => Math.round(mm * gain));
      press.done = (right !== 0 || up !== 0) && Boolean(apply({ do: 'angle', right, up }));
      if (!press.done) return app.touch();
      const now = attempt.report()?.needle?.hub_mm ?? press.start;
      const [asked, got] = [Math.hypot(...wanted), Math.hypot(now[0] - press.start[0], now[1] - press.start[1])];
      if (asked > 3 && got > 1) press.gain = gain * Math.min(1.5, Math.max(0.6, asked / got));
    },
    /** @param {ViewKind} kind */
    view(kind) {
      const report = attempt.report();
      if (!report) return;
      if (report.kept.includes(kind)) return perform({ do: 'recall', view: kind });
      if (kind === 'oblique') return act.notice([t.refuse.noOblique]);
      const oblique_tenths = kind === 'true_ap' ? 0 : app.state.side === 'left' ? 900 : -900;
      if (!app.free({ oblique_deg: oblique_tenths / 10, tilt_deg: 0 })) return;
      if (perform({ do: 'orient', oblique: oblique_tenths, tilt: 0 })) said(t.did.orient(kind));
    },
    /** @type {(way: string, mm?: number) => void} */
    table: (way, mm) => moveTable(app, way, mm),
    mark: () => aim.toggle(),
    /** @param {boolean} on */
    showArea(on) {
      showArea = on;
      app.touch();
    },
    finish: () => perform({ do: 'finish' }),
    touch: app.touch,
    hint() {
      if (app.state.selfTest) return;
      hintOf = attempt.revision();
      const report = attempt.report();
      if (report) said(hintText(report));
      app.touch();
    },
    undo: () => attempt.undo(),
    redo: () => attempt.redo(),
  };

  const aim = aiming(app, {
    said,
    hub: does.hub,
    hubDrag: does.hubDrag,
    hubAt: () => (app.state.byExposure ? null : (attempt.report()?.needle?.hub_mm ?? null)),
    hasNeedle: () => Boolean(attempt.report()?.needle),
    field_mm,
    canMark() {
      if (attempt.report()?.finished !== false) return false;
      if (!app.state.byExposure || !moved()) return true;
      act.notice([t.refuse.noPicture]);
      return false;
    },
    mark(at) {
      const [u, v] = at.map((mm) => Math.round(mm * 100));
      if (!perform({ do: 'mark', u, v })) return false;
      attempt.marked();
      return true;
    },
  });
  const hand = needleHand(does);
  const stages = stageList(byId('stage-list'), does);
  const showHelp = segments(byId('helps'), 'help', /** @type {const} */ (['guided', 'asked', 'test']).map((h) => /** @type {const} */ ([h, t.help[h]])), (help) => app.change({ selfTest: help === 'test', guided: help === 'guided' }));
  byId('needle-undo').addEventListener('click', does.undo);
  byId('needle-redo').addEventListener('click', does.redo);
  byId('needle-again').addEventListener('click', () => {
    attempt.restart();
    said(t.did.again);
    app.touch();
  });
  byId('needle-hint-ask').addEventListener('click', does.hint);
  byId('attempt-back').addEventListener('click', () => attempt.bringBack());

  byId('needle-next').addEventListener('click', () => next?.does());

  return {
    attempt,
    perform,
    /** What keys can do. */
    does,
    /** Width of what the picture shows, mm on the detector. */
    field_mm,
    /** Puts a sentence into the live line. */
    said,
    /** Before the picture is drawn. */
    refresh: () => attempt.refresh(),
    /** What of the attempt the radiograph shows. */
    inPicture: () => (attempt.on() ? { tick: attempt.tick(), key: `${attempt.revision()} ${attempt.flowing() ? attempt.tick() : 'still'}` } : null),
    /** Hub and tip in the patient's frame for the C-arm's drawing, where they may be told. */
    inGantry() {
      const needle = attempt.report()?.needle;
      return needle && mayRead() && !app.state.byExposure ? [needle.hub_patient_mm, needle.tip_patient_mm] : null;
    },
    /** Whether what to do may be said unasked. */
    mayTell,
    /** Whether a target is marked. */
    marked: () => Boolean(attempt.report()?.mark_mm),
    /** Whether a press on the picture marks it. */
    aiming: () => Boolean(aim.cross()),
    /** What stands over the picture, in mm on the detector. */
    marks() {
      const seen = attempt.seen();
      if (!seen) return null;
      const { needle } = seen;
      return {
        mark: seen.mark_mm,
        area: (showArea || (app.state.guided && aim.cross())) && !app.state.selfTest ? seen.area_mm : null,
        hub: mayRead() ? needle?.hub_mm : null,
        tip: mayRead() ? needle?.tip_mm : null,
        cross: aim.cross(),
        lit: app.lesson?.asks.has('name_parts') ? app.lesson.lit() : null,
      };
    },
    /**
     * The line on the film that says what is off: guided always, on request when asked, else never.
     * @param {Report} report
     * @param {typeof import('../film/dimensions.js') & { words: import('../film/dimensions.js').Words }} draw
     */
    dimension(report, draw) {
      const seen = attempt.seen();
      if (!seen || app.state.selfTest || app.lesson?.assessment || !mayTell() || seen.finished || app.lesson?.asks.has('name_parts')) return null;
      if (stage === 'centre') return draw.middleOf(report, app.state.byExposure ? exposure() : app.state, app.catalogue.range.middle_mm, gantryLink.table.to);
      // A stage that sets up a view has its name.
      const view = viewOf(report, stage);
      if (view) return draw.dimensionOf(report, unmetOf(report, view.criteria), draw.words, seen.needle?.tip_mm ?? null);
      const from = app.state.byExposure ? exposure() : app.state;
      return from && seen.needle && seen.needle.depth_mm > CLOCK_MM && Math.abs(from.oblique_deg) < CLOCK_DEG ? draw.clockOf(report, seen.needle, draw.words) : null;
    },
    /** Panel, hand and key of the marks. */
    words() {
      const { state } = app;
      byId('picture').setAttribute('aria-label', state.injection ? t.picture.label : texts.picture.keys);
      const report = attempt.report();
      const seen = attempt.seen();
      if (!state.injection) aim.leave();
      const shown = state.byExposure ? exposure() : state;
      hand.update(report?.needle, mayRead() ? seen?.needle : null, shown, state.byExposure);
      byId('needle-key').hidden = !state.injection;
      const marks = this.marks();
      for (const name of MARK_FIELDS) byId(`needle-key-${name}`).hidden = !marks?.[name]?.length;
      showHelp(state.selfTest ? 'test' : state.guided ? 'guided' : 'asked');
      const help = state.selfTest ? 'test' : state.guided ? 'guided' : 'asked';
      say(byId('help-note'), t.help.note[help]);
      const ready = Boolean(report);
      for (const id of ['needle-undo', 'needle-again', 'attempt-save']) byId(id, HTMLButtonElement).disabled = !report || report.actions === 0;
      byId('needle-redo', HTMLButtonElement).disabled = !report?.can_redo;
      byId('attempt-open', HTMLButtonElement).disabled = !ready;
      byId('attempt-back').hidden = !attempt.hasLast();
      // A lesson keeps its own log, and decides on help.
      byId('attempt-row').hidden = byId('helps-choice').hidden = byId('help-note').hidden = Boolean(app.lesson);
      if (app.lesson?.noUndo(report?.finished)) for (const id of ['needle-undo', 'needle-redo']) byId(id, HTMLButtonElement).disabled = true;
      byId('needle-again').hidden = Boolean(app.lesson?.assessment);
      byId('stage-list').hidden = !ready;
      byId('needle-wait').hidden = ready;
      say(byId('needle-heading'), app.lesson ? t.steps : t.heading);
      byId('needle-caution-line').hidden = !ready || Boolean(app.lesson && !app.lesson.wantsMark);
      if (!report) return;
      say(byId('needle-caution'), texts.remarks.caution(report.caution));
      const now = stages.update(state, report, attempt.score(), { tell: mayRead(), marking: Boolean(aim.cross()), showArea, viewNow: (view) => (state.guided ? viewNow(view) : ''), asking: asking(), lesson: app.lesson });
      if (now !== stage) {
        sayEnded(stage, now, report);
        stage = now;
        document.body.dataset.stage = now;
        state.view = VIEW_OF[now] ?? 'oblique';
      }
      const hinted = !report.finished && !state.selfTest && (state.guided || hintOf === attempt.revision());
      const hint = hinted ? hintText(report) : '';
      byId('needle-hint').hidden = hint === '';
      say(byId('needle-hint-text'), hint);
      // Who asks for a hint is told what to do, and does it by hand.
      next = hinted && state.guided ? nextAct(stage, report, does, state) : null;
      byId('needle-next').hidden = !next;
      say(byId('needle-next'), next?.text ?? '');
      byId('needle-hint-ask').hidden = state.selfTest || state.guided || report.finished;
      // A real hub shows them too, so they are said whatever the help.
      const atHub = report.finished ? '' : /** @type {const} */ (['blood', 'clear_fluid', 'paraesthesia']).filter((sign) => report.signs[sign]).map((sign) => t.signs[sign]).join(' ');
      signs.hidden = atHub === '';
      say(signs, atHub);
    },
    /** What is said of the needle with the picture. */
    inWords() {
      const seen = attempt.seen();
      if (!seen) return '';
      return [seen.mark_mm && t.picture.markWords, seen.needle && t.picture.words(seen.needle, mayRead())].filter(Boolean).join(' ');
    },
    /** The learner has stopped turning. Returns whether the C-arm stands elsewhere than before. */
    settled() {
      const now = keyOf(app.state, PLACE);
      if (now === arm) return false;
      arm = now;
      attempt.settled();
      return true;
    },
    /** Leaves what is half done in the hand. */
    restart() {
      attempt.putAside();
      aim.leave();
      hintOf = -1;
      stage = '';
      asked = { view: '', at: '' };
    },
  };
}
