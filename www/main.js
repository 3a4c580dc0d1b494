// Wires the page: one state, one frame, one settling point. Everything shown is drawn from the state and the engine's report.

import { readAddress, writeAddress } from './address.js';
import { caseControls, themeControl } from './case.js';
import { FIRST_CATALOGUE } from './catalogue.js';
import { checksPanel, viewOf } from './checks.js';
import { dragToTurn, tableControl, turnControl, windowControl } from './controls.js';
import { onceAFrame, onceQuiet } from './frame.js';
import { exposurePanel, FIRST_BEAM } from './exposure.js';
import { gantryDrawing } from './gantry.js';
import { byId, fillPage, say } from './page.js';
import { picture, pictureWords, shownIn } from './picture.js';
import { filmState } from './film-state.js';
import { loadEngine, reason } from './room.js';
import { newStart, startPosition } from './start.js';
import { stepsPanel } from './steps.js';
import { keep, setting, storageWorks } from './storage.js';
import { texts } from './texts.js';

const SETTLE_MS = 350;
const CASE = ['patient', 'level', 'side'];
const ANGLES = ['oblique', 'tilt', 'rotation', 'tableX', 'tableZ'];
const PLACE = [...CASE, ...ANGLES];

const app = {
  catalogue: FIRST_CATALOGUE,
  state: {
    patient: 'average', level: 'L4', side: 'left', start: 1, ...startPosition(1),
    rotation: 0, tableX: 0, tableZ: 0, contrast: 100, brightness: 0, view: 'true_ap', selfTest: false, ownView: null,
    boneDark: setting('bone', ['dark', 'white']) === 'dark', outlines: setting('outlines', ['on', 'off']) === 'on', labels: false,
    byExposure: false, beam: FIRST_BEAM,
  },
  change,
  hold,
  check,
  toggleBest,
};
// What the self-test has seen: checks used, and whether the present view has been asked for.
const test = { used: 0, revealed: false };
let room = null;
let report = null;
// The last exposure (where it was taken, with what, its number) and what all of them have cost, as the engine says.
let taken = null;
let dose = null;
let number = 0;
let held = false;
let shaped = '';
let shaping = false;
let addressTaken = false;

fillPage();
const film = filmState(() => start());
const frame = onceAFrame(draw);
const settle = onceQuiet(settled, SETTLE_MS);
const images = picture(() => frame());
const steps = stepsPanel();
const showChecks = checksPanel(app);
const exposing = exposurePanel(app, { take, release, reset: resetDose, record: () => ({ caution: texts.caution, ...room.doseDicom() }) });
let showCase = caseControls(app);
const range = app.catalogue.range;
const updates = [
  turnControl(byId('turns'), 'oblique', range.oblique, app, { leftIsHigh: true }),
  turnControl(byId('turns'), 'tilt', range.tilt, app),
  turnControl(byId('more-turns'), 'rotation', range.rotation, app),
  tableControl(byId('more-turns'), app),
  windowControl(byId('more-turns'), app),
  gantryDrawing(byId('gantry-feet'), 'feet'),
  gantryDrawing(byId('gantry-side'), 'side'),
];
dragToTurn(byId('overlay'), app);
themeControl((kept) => kept || notice([texts.notice.noStorage]));
toggle('bone-dark', 'boneDark', (on) => keep('bone', on ? 'dark' : 'white'));
toggle('outlines', 'outlines', (on) => keep('outlines', on ? 'on' : 'off'));
toggle('labels', 'labels', () => true);
byId('start-random').addEventListener('click', () => startAt(newStart(app.state.start)));
byId('start-again').addEventListener('click', () => startAt(app.state.start));
byId('notice-close').addEventListener('click', () => (byId('notice').hidden = true));
byId('case').addEventListener('submit', (event) => event.preventDefault());
addEventListener('hashchange', () => {
  if (addressTaken && location.hash !== writeAddress(app.state, app.catalogue)) takeAddress();
});
if (!storageWorks()) notice([texts.notice.noStorage]);
const firstState = takeAddressAtOnce();
draw();
start();

/** Loads the engine, takes the address over and draws. Never throws: a failure is shown in the film. */
async function start() {
  let loading = true;
  const progress = (percent) => loading && film.loading(percent === null ? texts.loading.engine : texts.loading.percent(percent), percent);
  progress(null);
  try {
    const engine = await loadEngine(progress);
    loading = false;
    const { TeachingRoom } = engine;
    app.catalogue = { levels: TeachingRoom.levels(), patients: TeachingRoom.patients(), range: TeachingRoom.ranges(), beam: TeachingRoom.beamChoices() };
    showCase = caseControls(app);
    if (!addressTaken) takeAddressInFull();
    addressTaken = true;
    await makeRoom(TeachingRoom);
  } catch (error) {
    loading = false;
    fail(error.message);
  }
}

/** Shapes the first patient. */
async function makeRoom(TeachingRoom) {
  const { patient, level, side } = app.state;
  film.loading(texts.loading.patient(patient));
  await painted();
  room = new TeachingRoom(patient, level, side);
  dose = room.dose();
  shaped = patient;
  shaping = false;
  film.clear();
  touch();
  requestAnimationFrame(() => performance.mark('downbeam:first-picture'));
}

/** Changes the state and asks for a frame. A new case or start begins the steps again. */
function change(patch) {
  const { state } = app;
  const changed = Object.keys(patch).filter((key) => state[key] !== patch[key]);
  if (changed.length === 0) return;
  Object.assign(state, patch);
  const has = (keys) => changed.some((key) => keys.includes(key));
  if (has(CASE) || has(['start', 'selfTest'])) restart();
  if (has(['patient', 'start'])) newRecord();
  if (has(['byExposure'])) exposing.stop();
  if (has(CASE) || has(ANGLES)) {
    test.revealed = false;
    if (state.selfTest) say(byId('status'), '');
    if (!('ownView' in patch)) state.ownView = null;
  }
  touch();
}

/** Something changed: draw it, and settle once it has been quiet. */
function touch() {
  document.documentElement.dataset.settled = 'no';
  frame();
  settle();
}

function restart() {
  steps.reset();
  Object.assign(test, { used: 0, revealed: false });
  app.state.view = steps.view();
  say(byId('status'), '');
}

function startAt(number) {
  const position = { ...startPosition(number), rotation: 0, tableX: 0, tableZ: 0, ownView: null };
  restart();
  newRecord();
  change({ start: number, ...position });
  touch();
}

/** While the learner drags nothing is ticked and nothing is said. */
function hold(on) {
  held = on;
  if (!on) settle();
}

/** Puts the state on screen. */
function draw() {
  const { state } = app;
  for (const update of updates) update(state);
  showCase(state);
  for (const [id, key] of [['bone-dark', 'boneDark'], ['outlines', 'outlines'], ['labels', 'labels']]) byId(id).checked = state[key];
  try {
    if (room && shaped !== state.patient) return void reshape();
    if (room && !shaping) {
      aim(room, state);
      images.draw(room, state, taken);
      report = room.report();
      images.mark(room, state, shownIn(state, report, taken));
    }
  } catch (error) {
    return fail(texts.loading.failedRun(reason(error)));
  }
  showWords();
}

function aim(to, state) {
  to.setTarget(state.level, state.side);
  to.setOrientation(state.oblique, state.tilt);
  to.setImageRotation(state.rotation);
  to.setTableShift(state.tableX, 0, state.tableZ);
  to.setWindow(state.contrast / 100, state.brightness / 100);
}

function showWords() {
  const { state } = app;
  steps.update(state);
  showChecks(state, report, test);
  const seen = open() ? advice().join(' ') : report ? texts.checks.hidden : texts.checks.none;
  pictureWords(state, shownIn(state, report, taken), seen, exposing.on());
  exposing.update(state, dose, ready());
}

/** Whether an exposure can be taken: the engine is there, and so is the patient. */
function ready() {
  return Boolean(room) && shaped === app.state.patient && byId('film-state').hidden;
}

/** One spot picture or a few pulses more. Returns whether there was a picture. */
function take(kind, pulses) {
  const { state } = app;
  if (!ready()) return false;
  const next = { ...Object.fromEntries(PLACE.map((key) => [key, state[key]])), ...state.beam, kind, number: number + 1 };
  try {
    aim(room, state);
    report = room.report();
    images.expose(room, { ...state.beam, kind }, pulses, state, next);
    taken = { ...next, dog: report.dog };
    number += 1;
    dose = room.dose();
    images.mark(room, state, shownIn(state, report, taken));
  } catch (error) {
    fail(texts.loading.failedRun(reason(error)));
    return false;
  }
  showWords();
  if (kind === 'spot') say(byId('status'), texts.exposure.said(taken, dose));
  return true;
}

/** The pedal is up: the last picture stays. */
function release() {
  if (!room || !taken) return;
  room.release();
  showWords();
  say(byId('status'), texts.exposure.said(taken, dose));
}

function resetDose() {
  if (!room) return;
  room.resetDose();
  dose = room.dose();
  showWords();
  say(byId('status'), texts.exposure.wasReset);
}

/** Another patient or start: no picture yet, and nothing spent. */
function newRecord() {
  exposing.stop();
  taken = null;
  room?.resetDose();
  dose = room?.dose() ?? null;
}

/** Shapes another patient a bone at a time, so that the page goes on answering. A later choice overtakes an earlier one. */
async function reshape() {
  const { patient } = app.state;
  shaped = patient;
  shaping = true;
  report = null;
  film.loading(texts.loading.patient(patient));
  await painted();
  try {
    room.beginPatient(patient);
    while (room.shapeBone() < 1) {
      await rest();
      if (shaped !== patient) return;
    }
    shaping = false;
    film.clear();
    touch();
  } catch (error) {
    fail(texts.loading.failedRun(reason(error)));
  }
}

/** The learner has stopped turning: tick steps, speak, write the address. */
function settled() {
  if (held) return;
  const { state } = app;
  if (report && open() && !state.ownView) tick();
  else if (report && open()) announce([]);
  // Until the engine has read the address nothing may overwrite it.
  if (addressTaken) history.replaceState(null, '', writeAddress(state, app.catalogue));
  document.documentElement.dataset.settled = 'yes';
}

/** Whether values and advice may be seen. */
function open() {
  return Boolean(report) && (!app.state.selfTest || test.revealed);
}

/** The engine's sentences for the view being checked. */
function advice() {
  const view = viewOf(report, app.state.view);
  return view ? view.criteria.map((id) => report.criteria.find((c) => c.id === id)?.sentence).filter(Boolean) : [texts.checks.notHere];
}

function tick() {
  const before = steps.view();
  const ticked = steps.settle(app.state, report);
  const after = steps.view();
  if (ticked.length > 0) {
    if (after !== before) app.state.view = after;
    showWords();
  }
  announce(ticked.map(texts.steps.ticked));
}

/** Says in the live region what a screen reader user needs to hear once the view stands still. */
function announce(first) {
  const view = viewOf(report, app.state.view);
  const words = view ? [texts.checks.said(texts.checks.views[view.view], view.score, advice().join(' '))] : [];
  say(byId('status'), [...first, ...words].join(' '));
}

/** Self-test: show the checks for the view as it stands, and count it. */
function check() {
  if (!report) return;
  test.used += 1;
  test.revealed = true;
  if (app.state.ownView) announce([]);
  else tick();
  showWords();
}

/** Goes to the best view this machine reaches, or back to the learner's own. */
function toggleBest() {
  const { state } = app;
  const revealed = test.revealed;
  if (state.ownView) {
    change({ ...state.ownView, ownView: null });
  } else {
    const best = viewOf(report, state.view)?.best;
    if (!best) return;
    const tenths = (degrees) => Math.round(degrees * 10) / 10;
    change({ oblique: tenths(best.oblique), tilt: tenths(best.tilt), ownView: { oblique: state.oblique, tilt: state.tilt } });
  }
  test.revealed = revealed;
}

/** What the address asks for as far as it can be read without the engine, so that a page without one is the right page too. */
function takeAddressAtOnce() {
  const { asked } = readAddress(location.hash, app.catalogue);
  const given = asked.start ?? app.state.start;
  Object.assign(app.state, startPosition(given), { start: given }, asked);
  return JSON.stringify(app.state);
}

/** The address read against the engine's own lists; a learner who has moved on meanwhile keeps the place. */
function takeAddressInFull() {
  if (JSON.stringify(app.state) === firstState) return takeAddress();
  const { asked } = readAddress(location.hash, app.catalogue);
  if (asked.patient) change({ patient: asked.patient });
}

function takeAddress() {
  const { asked, complaints } = readAddress(location.hash, app.catalogue);
  const given = asked.start ?? app.state.start;
  restart();
  change({ ownView: null, ...startPosition(given), start: given, ...asked });
  if (complaints.length > 0) notice(complaints);
}

function fail(sentence) {
  room = report = taken = dose = null;
  exposing.stop();
  images.forget();
  film.failed(sentence);
  showWords();
}

function notice(sentences) {
  say(byId('notice-text'), sentences.join(' '));
  byId('notice').hidden = false;
}

function toggle(id, key, onKeep) {
  byId(id).addEventListener('change', (event) => {
    change({ [key]: event.target.checked });
    onKeep(event.target.checked);
  });
}

/** Resolves once what is on the page has been painted. */
function painted() {
  return new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
}

/** Resolves after whatever else is waiting, input first. */
function rest() {
  return new Promise((resolve) => setTimeout(resolve));
}
