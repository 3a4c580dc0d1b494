// Wires the page: one state, one frame, one settling point. Everything shown is drawn from the state and the engine's report.
// The engine is in shaping.js, exposures in record.js, steps and advice in review.js, the address in arrival.js.

import { activityControl } from '../controls/activity.js';
import { addressKeeper } from '../state/arrival.js';
import { caseControls, languageControl, themeControl } from '../controls/case.js';
import { FIRST_CATALOGUE } from '../engine/catalogue.js';
import { checksPanel } from '../views/checks.js';
import { dragToTurn, turnControl } from '../controls/controls.js';
import { isDelivered } from '../delivery/delivered.js';
import { early } from './early.js';
import { FIRST_BEAM } from '../exposure/exposure.js';
import { filmState } from '../film/film-state.js';
import { onceAFrame, onceQuiet } from '../base/frame.js';
import { injectionOnDemand } from '../injection/on-demand.js';
import { acting, arrowsTurn, listen, NEEDLE_KEYS, PAGE_KEYS, VIEW_KEYS } from '../controls/keys.js';
import { missedLanguage } from '../words/language.js';
import { leadsToLesson, lessonsOnDemand } from '../lesson/on-demand.js';
import { byId, say } from '../base/dom.js';
import { fillPage, measureCaution, measureScrollbar } from './skeleton.js';
import { picture, pictureWords, shownIn } from '../film/picture.js';
import { exposureRecord } from '../exposure/record.js';
import { viewReview } from '../views/review.js';
import { reason } from '../engine/room.js';
import { shaping } from '../engine/shaping.js';
import { CASE, pageStore } from '../state/page-state.js';
import { PLACE } from '../state/positioning.js';
import { sheets } from '../controls/sheets.js';
import { newStart, startPosition } from '../state/start.js';
import { stepsPanel } from '../views/steps.js';
import { keep, setting, storageWorks } from '../base/storage.js';
import { texts } from '../words/texts.js';

const SETTLE_MS = 350;
/**
 * @import { App, PageState } from '../state/page-state.js'
 * @import { Activity } from '../controls/activity.js'
 * @import { AttemptOf } from '../lesson/on-demand.js'
 * @import { Dimension } from '../film/dimensions.js'
 * @import { Place } from '../state/positioning.js'
 * @import { Point } from '../gantry/drawing.js'
 * @import { ViewKind } from '../pkg/values.js'
 */

const TOGGLES = /** @type {const} */ ([['bone-dark', 'boneDark'], ['outlines', 'outlines'], ['labels', 'labels']]);

const store = pageStore({ boneDark: setting('bone', ['dark', 'white']) === 'dark', outlines: setting('outlines', ['on', 'off']) === 'on', beam: FIRST_BEAM });
/** @type {App} */
const app = {
  catalogue: FIRST_CATALOGUE,
  state: store.state,
  subscribe: store.subscribe,
  /** The engine's handle, and its last report on the view; null while there is none. */
  room: null,
  report: null,
  /** The lesson that runs, or null. */
  lesson: null,
  change: (patch) => store.set(stops ? stops.held(patch) : patch),
  /** Whether C-arm and table may go somewhere; says what would be hit. */
  free: (to) => !stops || stops.free(to),
  touch,
  hold,
  check: () => (app.state.selfTest ? review.check() : void (review.keep() || ask?.want())),
  toggleBest: () => review.toggleBest(),
};
let held = false;
let asked = false;
// Tour, keys and description; comparing, going back, taking away; the drawings joined with the picture: see `later`.
/** @type {ReturnType<typeof import('../help/on-demand.js').helpOnDemand> | null} */
let help = null;
/** @type {ReturnType<typeof import('../history/tools.js').viewTools> | null} */
let tools = null;
/** @type {ReturnType<typeof import('../gantry/link.js').gantryLink> | null} */
let link = null;
/** @type {ReturnType<typeof import('../film/zoom.js').filmZoom> | null} */
let zoom = null;
/** @type {ReturnType<typeof import('../through/page-button.js').throughButton> | null} */
let through = null;
/** @type {ReturnType<typeof import('../replay/offer.js').replayOffer> | null} */
let replay = null;
/** @type {ReturnType<typeof import('../controls/stops.js').stops> | null} */
let stops = null;
// An address has brought an attempt to be played back.
/** @type {{ of: AttemptOf | null } | null} */
let replays = null;
// What is asked before a turn, and the lines on the film that say what is off.
/** @type {ReturnType<typeof import('../views/ask.js').askWay> | null} */
let ask = null;
/** @type {typeof import('../film/dimensions.js') & { words: import('../film/dimensions.js').Words } | null} */
let dimensions = null;
// Their buttons and keys can be pressed before them.
const wishes = {
  help: early(['tour-open', 'keys-open', 'read-open', 'needle-keys', 'welcome-tour', 'welcome-close']),
  file: early(['attempt-save', 'attempt-open']),
};
/** @type {((way: string) => void) | null} */
let moveTable = null;
const ofHelp = (/** @type {(own: NonNullable<typeof help>) => void} */ wish) => () => (help ? wish(help) : wishes.help.ask(() => help && wish(help)));
const pageKeys = { table: (/** @type {string} */ way) => moveTable?.(way), keys: ofHelp((own) => own.keys()), read: ofHelp((own) => own.read()), zoom: (/** @type {number} */ way) => zoom?.by(way), through: () => through?.key() };

document.documentElement.dataset.later = 'coming';
fillPage();
measureScrollbar();
measureCaution();
// On a first visit to the page itself one line says what to do; whoever brought the learner to a lesson has said so.
byId('welcome').hidden = setting('welcome', ['new', 'seen']) === 'seen' || isDelivered() || leadsToLesson(location.hash);
const film = filmState(() => patient.start());
const frame = onceAFrame(draw);
const settle = onceQuiet(settled, SETTLE_MS);
// On a machine that is slow to draw, words follow the hand no more often than this.
const WORDS_ms = 200;
const wordsSoon = onceQuiet(frame, WORDS_ms);
let wordsAt = 0;
const images = picture(() => frame());
const steps = stepsPanel();
const review = viewReview(app, steps, showWords, () => needle.mayTell());
const showChecks = checksPanel(app);
const patient = shaping(app, film, { offered, made: () => (record.connect(), requestAnimationFrame(() => setTimeout(later))), shaped: () => needle.attempt.patientReady(), fail });
const record = exposureRecord(app, images, patient, {
  words: showWords, fail, tick: () => (needle.attempt.on() ? needle.attempt.tick() : undefined), exposed: () => needle.attempt.exposed(), marks,
});
const needle = injectionOnDemand((m) => m.injection(app, patient, () => record, { notice }), patient.bringRest, touch);
const showActivity = activityControl(app, () => needle.here(), activity);
const lessons = lessonsOnDemand(app, needle, { notice, said: (text) => needle.said(text), leaveAddress: () => history.replaceState(null, '', location.pathname + location.search), replays: (of) => (replay ? replay.open(of) : void (replays = { of })) });
const viewKeys = { pick: (/** @type {ViewKind} */ view) => app.change({ view }), check: () => app.state.selfTest && review.check() };
listen(keyTables, () => (needle.attempt.on() ? needle.does : null));
arrowsTurn(byId('picture'), app, () => !app.state.injection || !(needle.attempt.report()?.needle || app.lesson?.asks.has('name_parts')));
let showCase = caseControls(app);
const range = app.catalogue.range;
/** @type {((state: App['state'], needle: Point[] | null) => void)[]} */
const updates = [
  turnControl(byId('turns'), 'oblique', range.oblique_deg, app, { leftIsHigh: true, named: byId('film-angles') }),
  turnControl(byId('turns'), 'tilt', range.tilt_deg, app, { named: byId('film-angles') }),
  turnControl(byId('more-turns'), 'rotation', range.rotation_deg, app),
];
dragToTurn(byId('overlay'), app);
sheets();
languageControl();
themeControl((kept) => kept || notice([texts.notice.noStorage]));
toggle('bone-dark', 'boneDark', (on) => keep('bone', on ? 'dark' : 'white'));
toggle('outlines', 'outlines', (on) => keep('outlines', on ? 'on' : 'off'));
toggle('labels', 'labels', () => {});
for (const id of ['start-random', 'next-start']) byId(id).addEventListener('click', () => startAt(newStart(app.state.start)));
byId('start-again').addEventListener('click', () => startAt(app.state.start));
byId('notice-close').addEventListener('click', () => (byId('notice').hidden = true));
byId('case').addEventListener('submit', (event) => event.preventDefault());
if (!storageWorks()) notice([texts.notice.noStorage]);
const missed = missedLanguage();
if (missed) notice([texts.notice.noLanguage(missed)]);
// To come again would end what a platform has begun.
byId('language-choice').hidden = isDelivered();
const address = addressKeeper(app, { restart: review.restart, notice, leadsToLesson, lesson: lessons.arrive, leaveLesson: lessons.leave });
// A new case or start begins the steps again. Who is to be told before another subscribes before it (the record does by itself).
app.subscribe([...CASE, 'start', 'selfTest'], review.restart);
app.subscribe([...CASE, 'start', 'injection', 'byExposure'], () => needle.restart());
app.subscribe([...CASE, ...PLACE], review.turned);
app.subscribe(null, touch);
draw();
patient.start();
// What carries a lesson or waits for messages is met at once; an address that leads to a lesson does it by itself.
if (isDelivered() && !leadsToLesson(location.hash)) lessons.delivered();
else if (!leadsToLesson(location.hash)) lessons.resume();

/**
 * Says that a part has not come.
 * @param {string} name
 */
function without(name) {
  return (/** @type {unknown} */ error) => notice([texts.notice.noPartYet(name, reason(error))]);
}

/** What is not needed for the first picture comes after it, or after the engine has failed. */
function later() {
  if (asked) return;
  asked = true;
  const engine = patient.bringRest();
  /** @template M @param {Promise<M>} module */
  const withEngine = (module) => Promise.all([module, engine]).then(([m]) => m);
  const looks = [.../** @type {NodeListOf<HTMLLinkElement>} */ (document.querySelectorAll('link[data-href]'))].map((sheet) => new Promise((done) => {
    sheet.onload = sheet.onerror = done;
    sheet.href = sheet.dataset.href ?? '';
  }));
  const parts = [
    withEngine(import('../film/live.js')).then((m) => images.liveWith(m.liveFilm({
      screen: () => images.screen() * (zoom?.scale() ?? 1), redraw: () => (images.forget(), frame()), rested: () => frame(), always: new URLSearchParams(location.search).get('film') === 'gpu',
    }))).catch(without(texts.picture.heading)),
    import('../film/zoom.js').then((m) => (zoom = m.filmZoom(byId('picture'), byId('film-image'), {
      said: (times) => say(byId('status'), texts.picture.zoomed(times)), changed: () => images.rest(),
    }))).catch(without(texts.picture.heading)),
    Promise.all([import('../views/ask.js'), import('../film/dimensions.js'), import('../words/help.js')]).then(([a, d, w]) => {
      ask = a.askWay(app, steps);
      dimensions = { ...d, words: w.help.film };
      frame();
    }).catch(without(texts.steps.whichWay)),
    import('../controls/picture-sheet.js').then((m) => {
      moveTable = m.tableKey(app);
      updates.push(m.tableControl(byId('more-turns'), app), m.windowControl(byId('more-turns'), app));
      frame();
    }).catch(without(texts.turn.more)),
    import('../controls/stops.js').then((m) => (stops = m.stops(app, { aim: patient.aim, whole: patient.whole, notice }))).catch(without(texts.turn.more)),
    import('./offline.js').then((m) => m.offline({ notice }), () => {}),
    needle.bring().then(() => import('../injection/attempt-file.js').then((m) => {
      m.attemptFile(needle.attempt, notice);
      wishes.file.come();
    }).catch(async (error) => {
      const { file } = (await import('../words/injection.js')).texts.needle;
      without(`${file.save}, ${file.open}`)(error);
    })).catch(without(texts.activity.injection)),
    import('../help/on-demand.js').then((m) => {
      help = m.helpOnDemand(app, { notice, needle, review, record: () => record, held: () => held });
      help.words();
      wishes.help.come();
    }).catch(without(texts.menu.name)),
    import('../help/terms.js').then((m) => m.explainTerms(() => !app.lesson?.asks.has('name_parts'))).catch(without(texts.menu.name)),
    import('../history/tools.js').then((m) => {
      tools = m.viewTools(app, patient, needle, record, { notice, said: (text) => say(byId('status'), text) });
      tools.after();
      if (document.documentElement.dataset.settled === 'yes') tools.settled();
    }).catch(without(texts.notice.tools)),
    import('../gantry/drawing.js').then((m) => {
      updates.push(m.gantryDrawing(byId('gantry-feet'), 'feet'), m.gantryDrawing(byId('gantry-side'), 'side'));
      frame();
      return withEngine(import('../gantry/link.js'));
    }).then((m) => {
      link = m.gantryLink(app, {
        whole: patient.whole, shown, needle: () => needle.inGantry(), marked: () => needle.marked(), revision: () => needle.attempt.revision(), busy: () => needle.aiming(), field_mm: () => needle.field_mm(),
        tells,
        relight: () => void (patient.whole() && app.room && app.report && images.mark(app.room, app.state, shown(), marks())),
      });
      link.update();
    }).catch(without(texts.gantry.heading)),
    needle.bring().then(() => import('../replay/offer.js')).then((m) => {
      replay = m.replayOffer(app, needle.attempt, notice);
      if (replays) replay.open(replays.of);
      replay.update();
    }).catch(without(texts.activity.injection)),
    withEngine(import('../through/page-button.js')).then((m) => {
      through = m.throughButton(app, {
        whole: patient.whole, shown, tells, needle: () => needle.inGantry(), revision: () => needle.attempt.revision(), aim: patient.aim, notice,
        report: () => (app.state.byExposure ? record.exposure()?.report : app.report) ?? null, said: (text) => say(byId('status'), text),
      });
      through.update();
    }).catch(without(texts.picture.heading)),
  ];
  Promise.allSettled([...looks, ...parts]).then(() => (document.documentElement.dataset.later = 'done'));
}

/** The engine has said which cases there are. */
function offered() {
  showCase = caseControls(app);
  address.takeInFull();
}

/**
 * Another activity was chosen: a lesson that runs is left as it stands.
 * @param {Activity} name
 */
function activity(name) {
  lessons.leave();
  app.change({ injection: name === 'injection', lessons: name === 'lessons', selfTest: false });
  byId('lesson').hidden = name !== 'lessons';
  if (name === 'injection') needle.bring().catch(without(texts.activity.injection));
  if (name === 'lessons') lessons.list();
}

/** The single keys that hold now, with what does them. */
function keyTables() {
  const { injection, lessons: among } = app.state;
  return [acting(PAGE_KEYS, pageKeys), injection ? acting(NEEDLE_KEYS, needle.attempt.on() ? needle.does : null) : acting(VIEW_KEYS, among ? null : viewKeys)];
}

/** Something changed: draw it, and settle once it has been quiet. */
function touch() {
  document.documentElement.dataset.settled = 'no';
  frame();
  settle();
}

/** @param {number} number */
function startAt(number) {
  const position = { ...startPosition(number), rotation_deg: 0, table_x_mm: 0, table_y_mm: 0, table_z_mm: 0, ownView: null };
  review.restart();
  record.begin();
  app.change({ start: number, ...position });
  touch();
}

/**
 * While the learner drags nothing is ticked and nothing is said.
 * @param {boolean} on
 */
function hold(on) {
  held = on;
  if (!on) settle();
}

/** Puts the state on screen. */
function draw() {
  const { state } = app;
  // The film first: a canvas asks the page for its font, and after words have changed that would lay the page out twice.
  try {
    if (patient.stale()) return void patient.reshape();
    if (app.room && patient.whole()) {
      patient.aim();
      needle.refresh();
      images.draw(app.room, state, record.exposure(), needle.inPicture());
      app.report = app.room.report();
      images.mark(app.room, state, shown(), marks());
      // Contrast runs on by itself.
      if (needle.attempt.flowing() && !state.byExposure) frame();
    }
  } catch (error) {
    return fail(texts.loading.failedRun(reason(error)));
  } finally {
    showControls(state);
  }
  // Words may wait while a slow machine follows the hand.
  if (held && images.hurried() && performance.now() < wordsAt + WORDS_ms) return wordsSoon();
  wordsAt = performance.now();
  showWords();
  lessons.after();
}

/** @param {PageState} state */
function showControls(state) {
  for (const update of updates) update(state, needle.inGantry());
  showCase(state);
  for (const [id, key] of TOGGLES) byId(id, HTMLInputElement).checked = state[key];
}

function showWords() {
  const { state, report } = app;
  steps.update(state);
  showActivity();
  needle.words();
  byId('checks').hidden = byId('checks-button').hidden = state.lessons || Boolean(app.lesson?.assessment);
  byId('needle-more').hidden = byId('needle').hidden;
  byId('film-aids').hidden = Boolean(app.lesson?.assessment) && !needle.attempt.report()?.finished;
  byId('sources-choice', HTMLFieldSetElement).disabled = Boolean(app.lesson);
  showChecks(state, report, review.test, needle.mayTell());
  pictureWords(state, shown(), [review.seen(), needle.inWords()].filter(Boolean).join(' '), record.on());
  record.update();
  ask?.update();
  say(byId('film-said'), (app.room && dimension()?.label) || '');
  help?.words();
  tools?.after();
  link?.update();
  through?.update();
  replay?.update();
}

/** Whether parts may be told. */
function tells() {
  return Boolean(needle.attempt.report()?.finished) || !(app.state.selfTest || app.lesson?.assessment || app.lesson?.asks.has('name_parts'));
}

function shown() {
  return shownIn(app.state, app.report, record.exposure());
}

function marks() {
  const own = { ...needle.marks(), dimension: dimension() };
  return link ? link.marks(own) : own;
}

/** What is off, where it may be said: in the views after the first answer or turn, in an injection as its help goes. */
function dimension() {
  const { state } = app;
  const lines = dimensions;
  const report = state.byExposure ? record.exposure()?.report : app.report;
  if (!lines || !report || state.ownView || state.lessons) return undefined;
  /** @param {Dimension | null} d */
  const draw = (d) => d && Object.assign(
    (/** @type {CanvasRenderingContext2D} */ pen, /** @type {(mm: readonly number[]) => number[]} */ at, /** @type {number} */ scale) => lines.drawDimension(pen, at, scale, d),
    { label: d.label },
  );
  const shows = state.injection || (state.selfTest ? review.test.revealed : ask?.shows());
  if (!shows) return undefined;
  return draw(state.injection ? needle.dimension(report, lines) : lines.dimensionOf(report, steps.unmet(report), lines.words, null)) ?? undefined;
}

/** The learner has stopped turning: tick steps, speak, write the address. */
function settled() {
  if (held) return;
  if (!app.state.injection || needle.settled()) review.settled();
  // That the C-arm rests here may be what a step waited for.
  if (app.state.injection) {
    showWords();
    lessons.after();
  }
  address.write();
  tools?.settled();
  document.documentElement.dataset.settled = 'yes';
}

/** @param {string} sentence */
function fail(sentence) {
  later();
  app.room = app.report = null;
  needle.attempt.forget();
  record.forget();
  images.forget();
  film.failed(sentence);
  showWords();
}

/** @param {string[]} sentences */
function notice(sentences) {
  say(byId('notice-text'), sentences.join(' '));
  byId('notice').hidden = false;
}

/**
 * @param {string} id
 * @param {'boneDark' | 'outlines' | 'labels'} key
 * @param {(on: boolean) => void} onKeep
 */
function toggle(id, key, onKeep) {
  const box = byId(id, HTMLInputElement);
  box.addEventListener('change', () => {
    app.change({ [key]: box.checked });
    onKeep(box.checked);
  });
}
