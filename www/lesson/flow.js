// A lesson from the list to the receipt: choose, begin, run, done. The attempt itself is the injection's; what it scores is the desk's.

import { connect } from '../delivery/choose.js';
import { gateList } from '../injection/gate-list.js';
import { markTable } from '../injection/marks-table.js';
import { button, byId, make, say } from '../base/dom.js';
import { reason } from '../engine/room.js';
import { saveText } from '../base/save.js';
import { wantsMark } from '../injection/stages.js';
import { startPosition } from '../state/start.js';
import { store, stored } from '../base/storage.js';
import { texts } from '../words/injection.js';
import { lesson as t } from '../words/lesson.js';
import { completion } from './completion.js';
import { lessonDesk, shipped } from './desk.js';
import { interrupted, noteRunning } from './interrupted.js';
import { lessons, showList } from './list.js';
import { naming } from './naming.js';

/** Where the learner's last code is kept. */
const CODE = 'downbeam.code';
const KEEP_MS = 1000;
const NO_LESSON = { lesson: '', seed: null, changed: '' };

/** See `on-demand.js`. */
export function lessonFlow(app, needle, act) {
  const { attempt } = needle;
  const panel = byId('lesson');
  const title = byId('lesson-heading');
  const body = byId('lesson-body');
  const leaveButton = byId('lesson-leave');
  leaveButton.addEventListener('click', leaveForList);
  let delivery = null;
  // The lesson that is open, before and while it runs: `{json, info, desk, drawn, standing(), …}`.
  let open = null;
  let runs = 0;
  let kept = { revision: -1, at_ms: 0, timer: 0 };
  let handedIn = false;
  const exercise = naming(byId('stage-parts').querySelector('.stage-body'), {
    on: () => Boolean(app.lesson?.naming()?.asks) && attempt.on() && !attempt.report()?.finished,
    room: () => app.room,
    held: () => app.state.byExposure,
    field_mm: () => needle.field_mm(),
    mayShow: () => !open?.assessment,
    answer: ({ level, part, side }) => needle.perform({ do: 'point', level, part, side }),
    said: act.said,
    touch: app.touch,
  });

  addEventListener('pagehide', () => {
    keepNow();
    delivery?.leave();
  });

  async function place() {
    delivery ??= await connect({ notice: act.notice });
    return delivery;
  }

  function show(phase, heading, ...content) {
    panel.hidden = false;
    panel.dataset.phase = phase;
    document.body.dataset.lesson = phase;
    say(title, heading);
    // A package holds one lesson: there is no list to go back to.
    leaveButton.hidden = phase === 'list' || (phase !== 'running' && delivery?.lesson != null);
    say(leaveButton, phase === 'running' ? t.leave : t.toList);
    body.replaceChildren(...content);
  }

  /** The course. */
  async function list() {
    open = null;
    show('list', t.heading, make('p', { class: 'quiet', role: 'status' }, t.loading));
    try {
      await showList(body, { open: (json) => begin(json), notice: act.notice, said: act.said });
    } catch (error) {
      body.replaceChildren(make('p', { role: 'alert' }, t.noList(reason(error))), make('div', { class: 'row' }, button(t.retry, list, { id: 'lesson-retry' })));
    }
  }

  /** Before a lesson: what it is, whose it is, and whether something is to be gone on with. */
  async function begin(json) {
    let info;
    const where = await place();
    try {
      info = (await lessonDesk()).read(json, texts.language);
    } catch (error) {
      act.notice([t.unreadable(reason(error))]);
      if (body.childElementCount === 0) await list();
      return;
    }
    const code = make('input', { type: 'text', id: 'lesson-code', maxlength: 64, autocomplete: 'off', spellcheck: 'false', 'aria-describedby': 'lesson-code-note', required: info.asks_code });
    code.value = where.learner ?? stored(CODE) ?? '';
    code.readOnly = where.learner !== null;
    const note = make('p', { class: 'quiet', id: 'lesson-code-note' }, info.asks_code ? t.codeHint : t.codeOptional);
    const buttons = make('div', { class: 'row' });
    const steps = make('ul', { class: 'lesson-steps' }, ...info.steps.map((s) => make('li', {}, texts.step(s))));
    const form = make('form', { class: 'lesson-begin' }, make('p', {}, info.intro), make('p', { class: 'quiet' }, t.modeNote[info.mode]),
      make('h3', { class: 'keys-heading' }, t.steps), steps,
      make('details', { class: 'more' }, make('summary', {}, t.gates), make('ul', { class: 'lesson-gates' }, ...info.gates.map((id) => make('li', {}, texts.remarks.gate(id))))),
      make('p', { class: 'quiet' }, [info.exposures && info.mode !== 'assessment' ? t.exposures : '', t.passMark(info.pass_mark), where.keepsProgress ? '' : t.notHeldHere].filter(Boolean).join(' ')),
      make('div', { class: 'choice' }, make('label', { for: 'lesson-code' }, t.code), code), note, buttons);
    // The enter key; a sandboxed frame may have no forms, so the button works without.
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      start(json, info, code.value, null);
    });
    // One button stays while a code is typed: whoever has tabbed to it keeps the focus.
    const beginButton = button(t.begin, () => start(json, info, code.value, null), { class: 'button strong', id: 'lesson-begin' });
    buttons.append(beginButton);
    let goOn = null;
    let asked = 0;
    const offer = async () => {
      const mine = ++asked;
      where.opened?.({ sha256: info.sha256, learner: code.value.trim() });
      const lines = await where.resume().catch(() => null);
      if (mine !== asked) return;
      goOn?.remove();
      goOn = lines && button(t.goOn(lines.length), () => start(json, info, code.value, lines), { class: 'button strong', id: 'lesson-go-on' });
      if (goOn) beginButton.before(goOn);
      say(beginButton, lines ? t.beginAnew : t.begin);
      beginButton.classList.toggle('strong', !lines);
    };
    code.addEventListener('input', offer);
    await offer();
    show('begin', info.title, form);
    toPanel();
  }

  /** The eye and the keys to the panel, without a jump where it is in sight. */
  function toPanel() {
    title.focus({ preventScroll: true });
    panel.scrollIntoView({ block: 'nearest' });
  }

  async function start(json, info, code, lines) {
    const where = await place();
    if (info.asks_code && code.trim() === '') {
      act.notice([t.codeWanted]);
      return byId('lesson-code').focus();
    }
    let desk;
    try {
      desk = new (await lessonDesk())(json, code);
    } catch (error) {
      return act.notice([t.unreadable(reason(error))]);
    }
    const drawn = desk.drawn();
    // A browser that keeps nothing has it typed again.
    store(CODE, drawn.learner);
    where.opened?.({ sha256: info.sha256, learner: drawn.learner });
    runs += 1;
    open = working({ json, info, desk, drawn, lines });
    handedIn = false;
    kept = { revision: -1, at_ms: 0, timer: 0 };
    exercise.forget();
    app.lesson = open;
    noteRunning(json);
    showRunning();
    const at = 1 + (drawn.seed % 9998);
    const from = startPosition(at);
    // The parts are named from the needle's side.
    if (open.asks.has('name_parts')) from.oblique = Math.abs(from.oblique) * (drawn.side === 'left' ? 1 : -1);
    needle.restart();
    app.change({
      lessons: false, injection: true, lesson: `${info.sha256} ${drawn.learner} ${runs}`, patient: drawn.patient, seed: drawn.seed, changed: Object.keys(drawn.changed).length > 0 ? JSON.stringify(drawn.changed) : '', level: drawn.level, side: drawn.side,
      byExposure: info.exposures, selfTest: open.assessment, guided: info.mode === 'guided', ownView: null, labels: false,
      outlines: open.asks.has('name_parts') || (!open.assessment && app.state.outlines), start: at, ...from, rotation: 0, tableX: 0, tableZ: 0,
    });
    app.touch();
    toPanel();
  }

  /** What the attempt and its panel know of the lesson. */
  function working({ json, info, desk, drawn, lines }) {
    const asks = new Set(info.steps.map((s) => s.id));
    return {
      json, info, desk, drawn,
      resume: lines,
      asks,
      assessment: info.mode === 'assessment',
      wantsMark: wantsMark(asks),
      openApproach: info.open_approach,
      /** The marks for a log, from the desk. */
      standing: (log) => desk.standing(log),
      /** Where the naming of parts stands, or null. */
      naming: () => attempt.score()?.exercise ?? null,
      lit: () => exercise.lit(attempt.score()?.exercise),
      verdict: (answer) => exercise.verdict(answer),
      /** Where to look for the part that is asked for. */
      hintPart() {
        const asks = attempt.score()?.exercise?.asks;
        return asks ? t.naming.hint(asks) : t.hintDone;
      },
      hintDone: t.hintDone,
      hintOpen: t.hintOpen,
      noUndo: (finished) => open?.assessment && finished,
    };
  }

  function showRunning() {
    const { info, drawn } = open;
    show('running', info.title, make('p', { class: 'quiet' }, `${t.drawn(drawn, texts.case.patientName(drawn.patient))} ${t.modeNote[info.mode]}`), ...(open.asks.has('name_parts') ? [exercise.ask] : []));
  }

  /** The attempt has been finished: the marks, and what is handed in. */
  async function finished() {
    handedIn = true;
    noteRunning(null);
    const { info, desk } = open;
    const log = attempt.lines();
    const score = attempt.score();
    let receipt = '';
    const content = [make('p', { class: 'lesson-total', role: 'status' }, t.done(score.total, score.passed))];
    if (!score.complete) content.push(make('p', {}, t.incomplete));
    const holder = make('div', {});
    gateList(holder).update(score.gates);
    markTable(holder).update(score, true, info.exposures);
    content.push(holder);
    try {
      receipt = desk.receipt(log);
    } catch (error) {
      content.push(make('p', { role: 'alert' }, t.bad(reason(error))));
    }
    const name = `receipt-${info.id}${open.drawn.learner ? `-${open.drawn.learner.replace(/[^\p{L}\p{N}._-]+/gu, '_')}` : ''}.json`;
    const row = make('div', { class: 'row' });
    if (receipt) row.append(button(t.receipt, () => saveText(name, receipt, 'application/json'), { class: 'button strong', id: 'lesson-receipt' }));
    row.append(button(t.again, () => begin(open.json), { id: 'lesson-again' }));
    content.push(row);
    if (receipt) content.push(make('p', { class: 'quiet' }, t.receiptNote));
    content.push(completion({ info, drawn: open.drawn, score, exposures: info.exposures, engine: receipt ? JSON.parse(receipt).engine : null }));
    show('done', info.title, ...content);
    clearTimeout(kept.timer);
    const answer = await delivery.finish({
      lesson: info.id, title: info.title, score: score.total, passed: score.passed, complete: score.complete,
      seconds: attempt.seconds(), steps: score.steps.map(({ id, name: said, score: share }) => ({ id, name: said, score: share })), receipt, lines: log,
    });
    if (answer.said) act.notice([answer.said]);
    const next = delivery.lesson === null ? await following(info.sha256).catch(() => null) : null;
    if (next) row.append(button(t.next(next.info.title), () => begin(next.json), { id: 'lesson-next' }));
  }

  async function following(sha256) {
    const all = await lessons();
    const at = all.findIndex((l) => l.info.sha256 === sha256);
    return at < 0 ? null : (all[at + 1] ?? null);
  }

  function keepNow() {
    clearTimeout(kept.timer);
    kept.timer = 0;
    if (!app.lesson || handedIn || !attempt.on() || !attempt.inLesson() || kept.revision === attempt.revision()) return;
    kept.revision = attempt.revision();
    kept.at_ms = performance.now();
    const lines = attempt.lines();
    if (lines.length > 0) delivery.keep(lines);
  }

  /** Ends the lesson, and the picture stays. */
  function leave() {
    // What was not gone on with after a reload is not offered again.
    noteRunning(null);
    if (!app.lesson) return;
    keepNow();
    app.lesson = null;
    open = null;
    panel.hidden = true;
    document.body.dataset.lesson = '';
    app.change({ ...NO_LESSON });
  }

  function leaveForList() {
    const ran = Boolean(app.lesson) && !handedIn;
    leave();
    act.leaveAddress();
    app.change({ lessons: true, injection: false, selfTest: false });
    if (ran) act.said(t.left);
    if (delivery.lesson === null) list();
    else begin(delivery.lesson);
  }

  /** The page was brought by a place outside: the lesson that it carries, or else the page as it is. */
  async function delivered() {
    const { lesson } = await place();
    if (lesson !== null) return begin(lesson);
    panel.hidden = true;
    app.change({ lessons: false });
    app.touch();
  }

  /** After a reload: the lesson that was under way, with the offer to go on. */
  const resume = () => begin(interrupted());

  async function arrive(fragment) {
    leave();
    app.change({ lessons: true, injection: false });
    const { lesson } = await place();
    if (lesson !== null) return begin(lesson);
    const [, kind, value] = /^#(lesson|open)=(.*)$/.exec(fragment) ?? [];
    try {
      if (kind === 'lesson') return await begin((await lessonDesk()).fromLink(fragment));
      const known = (await lessons()).find((l) => l.id === decodeURIComponent(value));
      if (known) return await begin(await shipped(known.id));
      act.notice([t.unknown(value.slice(0, 40))]);
    } catch (error) {
      act.notice([t.unreadable(reason(error))]);
    }
    await list();
  }

  return {
    list,
    arrive,
    delivered,
    resume,
    leave,
    /** After each frame: keeps the log, a second at most behind, and sees whether the attempt has been finished. */
    after() {
      if (!app.lesson || !attempt.inLesson()) return;
      const now = attempt.score()?.exercise;
      if (now) exercise.update(now);
      const report = attempt.report();
      if (report?.finished && !handedIn) return void finished();
      if (handedIn && !report?.finished) {
        handedIn = false;
        noteRunning(open.json);
        showRunning();
      }
      if (attempt.revision() === kept.revision || kept.timer) return;
      kept.timer = setTimeout(keepNow, Math.max(0, kept.at_ms + KEEP_MS - performance.now()));
    },
  };
}
