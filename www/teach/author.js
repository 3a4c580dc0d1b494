// The author's page. The text of the lesson file is the one truth: the form is filled from it and written into it, and the engine
// says of it what is wrong, what it draws and what link carries it.

import { chooser } from '../base/chooser.js';
import { onceQuiet } from '../base/frame.js';
import { lessonDesk } from '../lesson/desk.js';
import { byId, choices, make, say } from '../base/dom.js';
import { copyText, saveText } from '../base/save.js';
import { store, stored } from '../base/storage.js';
import { goTo } from './form-groups.js';
import { beginPage, complaint } from '../controls/page-frame.js';
import { lessonForm } from './lesson-form.js';
import { lessonText, shippedLessons } from './lesson-shelf.js';
import { newLesson, parsed, written } from './lesson-text.js';
import { preview } from './preview.js';
import { sentence } from './problem-slots.js';
import { teach } from '../words/teach.js';

const t = teach.author;
const QUIET_MS = 250;
/** Where the work is kept between visits. */
const DRAFT = 'downbeam.author';

/**
 * @import { ReadError } from '../pkg/values.js'
 * @import { Shelf } from './lesson-shelf.js'
 * @import { Loose } from './lesson-text.js'
 * @import { Placed } from './problem-slots.js'
 */

const notice = beginPage(t.title);
const showPicture = preview();
const json = byId('json', HTMLTextAreaElement);
const [code, linkIn, linkOut] = ['code', 'link-in', 'link-out'].map((id) => byId(id, HTMLInputElement));
const handout = byId('handout', HTMLTextAreaElement);
const whole = byId('whole', HTMLFieldSetElement);
const ships = byId('shipped', HTMLSelectElement);
const review = onceQuiet(reviewed, QUIET_MS);
/** @type {Awaited<ReturnType<typeof lessonDesk>> | null} */
let desk = null;
/** @type {ReturnType<typeof lessonForm> | null} */
let form = null;
/**
 * The last lesson that the form could show.
 * @type {Loose | null}
 */
let lesson = null;
/** @type {string | null} */
let before = null;
let samples = 1;
let saidNoDraft = false;

code.value = t.sample(samples);
whole.disabled = true;
begin();

async function begin() {
  try {
    desk = await lessonDesk(teach.noEngine);
  } catch (error) {
    // A form without the engine would say of everything that it is right.
    for (const part of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('.bench, .file'))) part.hidden = true;
    ships.disabled = linkIn.disabled = true;
    for (const id of ['open-file', 'fresh', 'open-link']) byId(id, HTMLButtonElement).disabled = true;
    return notice(complaint(error), { again: true });
  }
  const offered = desk.choices();
  form = lessonForm(whole, offered, formChanged);
  whole.disabled = false;
  const fresh = written(newLesson(offered.format));
  const kept = stored(DRAFT);
  load(kept ?? fresh);
  if (kept !== null && kept !== fresh) notice(t.draft);
  byId('fresh').addEventListener('click', () => replace(fresh));
  const shelf = await shippedLessons();
  offerShelf(shelf);
  if (shelf.problems.length > 0) notice(shelf.problems.join(' '));
}

// Where a lesson comes from.

/** @param {Shelf} shelf */
function offerShelf({ lessons }) {
  const title = (/** @type {Shelf['lessons'][number]} */ { id, text }) => {
    try {
      return desk?.read(text, teach.language).title ?? id;
    } catch {
      return id;
    }
  };
  const show = choices(ships, [['', t.pick], ...lessons.map((l) => /** @type {const} */ ([l.id, title(l)]))], (id) => {
    const found = lessons.find((l) => l.id === id);
    if (found) replace(found.text);
  });
  show('');
  document.documentElement.dataset.shelf = 'yes';
}

chooser(byId('open-file'), byId('lesson-file', HTMLInputElement), ([file]) => opened(() => lessonText(file)));
byId('open-link').addEventListener('click', openLink);
linkIn.addEventListener('keydown', (event) => event.key === 'Enter' && openLink());

async function openLink() {
  const link = linkIn.value.trim();
  const from = desk;
  if (link === '' || !from) return linkIn.focus();
  if (await opened(async () => from.fromLink(link))) linkIn.value = '';
}

/**
 * Takes up what `source` gives; a file with mistakes in it is taken up too, to be mended.
 * @param {() => Promise<string>} source
 */
async function opened(source) {
  let wrong = '';
  try {
    if (desk) replace(await source());
  } catch (error) {
    wrong = complaint(error);
  }
  say(byId('start-complaint'), wrong);
  byId('start-complaint').hidden = wrong === '';
  return wrong === '';
}

/**
 * Puts another lesson in the place of the present one, which can be brought back.
 * @param {string} text
 */
function replace(text) {
  before = json.value;
  byId('before').hidden = false;
  load(text);
  say(byId('status'), t.replaced);
}

byId('before').addEventListener('click', () => {
  const text = before ?? '';
  before = null;
  byId('before').hidden = true;
  ships.value = '';
  load(text);
  say(byId('status'), t.broughtBack);
  ships.focus();
});

// Form and file.

/**
 * Shows a text in the file and, if it can be, in the form.
 * @param {string} text
 */
function load(text) {
  json.value = text;
  takeIn();
}

/** The file has changed: the form follows, or waits while there is nothing that it could show. */
function takeIn() {
  const found = parsed(json.value);
  if (found) {
    lesson = found;
    form?.fill(found);
  }
  byId('waits').hidden = Boolean(found);
  byId('again').hidden = lesson === null;
  whole.disabled = !found;
  pending();
}

function formChanged() {
  if (!form || !lesson) return;
  lesson = form.read(lesson);
  json.value = written(lesson);
  pending();
}

json.addEventListener('input', () => form && takeIn());
byId('sheet').addEventListener('submit', (event) => event.preventDefault());
byId('again').addEventListener('click', () => {
  if (lesson) load(written(lesson));
  json.focus();
});

function pending() {
  document.documentElement.dataset.settled = 'no';
  review();
}

// What the engine says.

function reviewed() {
  if (!desk || !form) return;
  const text = json.value;
  const problems = problemsOf(text);
  const placed = form.show(problems);
  showVerdict(placed);
  showLink(text, problems.length === 0);
  showDrawn();
  if (!store(DRAFT, text) && !saidNoDraft) {
    saidNoDraft = true;
    notice(t.noDraft);
  }
  document.documentElement.dataset.settled = 'yes';
}

/**
 * @param {string} text
 * @returns {ReadError[]}
 */
function problemsOf(text) {
  try {
    return desk?.problems(text) ?? [];
  } catch (error) {
    return [{ path: '', problem: complaint(error) }];
  }
}

/** @param {Placed[]} placed */
function showVerdict(placed) {
  say(byId('verdict'), placed.length === 0 ? t.good : t.bad(placed.length));
  byId('verdict').dataset.good = placed.length === 0 ? 'yes' : 'no';
  byId('problems').replaceChildren(...placed.map(({ path, problem, target }) => {
    const words = t.atPlace(path, problem);
    if (!target) return make('li', {}, sentence(words));
    const button = make('button', { type: 'button', class: 'to-field' }, sentence(words));
    button.addEventListener('click', () => goTo(target));
    return make('li', {}, button);
  }));
  const loose = placed.filter((p) => !p.target).map((p) => sentence(t.atPlace(p.path, p.problem)));
  byId('json-problem').hidden = loose.length === 0;
  say(byId('json-problem'), loose.join(' '));
  if (loose.length > 0) json.setAttribute('aria-invalid', 'true');
  else json.removeAttribute('aria-invalid');
}

/**
 * @param {string} text
 * @param {boolean} good
 */
function showLink(text, good) {
  let link = '';
  let note = good ? t.linkNote : t.noLink;
  if (good && desk) {
    try {
      link = `${new URL('index.html', location.href)}#${desk.toLink(text)}`;
    } catch (error) {
      note = sentence(complaint(error));
    }
  }
  linkOut.value = link;
  say(byId('link-note'), note);
  byId('copy', HTMLButtonElement).disabled = link === '';
  for (const [id, page] of [['try', 'index.html'], ['check-link', 'check.html']]) {
    // A link without an address is none: it is out of reach of keys and pointer.
    const anchor = byId(id, HTMLAnchorElement);
    if (link) anchor.href = link.replace('index.html', page);
    else anchor.removeAttribute('href');
    if (link) anchor.removeAttribute('aria-disabled');
    else anchor.setAttribute('aria-disabled', 'true');
  }
  const info = good && desk ? desk.read(text, teach.language) : null;
  handout.value = link && info ? t.handoutText(info.title, link, info.asks_code, info.pass_mark) : '';
  byId('copy-handout', HTMLButtonElement).disabled = link === '';
  say(byId('hash'), info?.sha256 ?? t.noHash);
}

/** What the lesson draws for the code. */
function showDrawn() {
  if (!desk) return;
  let drawn = null;
  let words = t.nothingDrawn;
  try {
    const it = new desk(json.value, code.value);
    drawn = it.drawn();
    it.free();
    words = t.gets(drawn);
    const asks = desk.read(json.value, teach.language).asks_code;
    byId('code-row').hidden = !asks;
    say(byId('code-note'), asks ? t.codeNote : t.noCode);
  } catch (error) {
    // A lesson with mistakes has said so already; a code that cannot be used has not.
    if (byId('verdict').dataset.good === 'yes') words = sentence(complaint(error));
  }
  say(byId('gets'), words);
  showPicture(drawn && { patient: drawn.patient, seed: drawn.seed, changed: drawn.changed, level: drawn.level, side: drawn.side });
}

code.addEventListener('input', pending);
byId('another').addEventListener('click', () => {
  samples += 1;
  code.value = t.sample(samples);
  pending();
});

// Handing out.

for (const [button, field] of /** @type {const} */ ([['copy', linkOut], ['copy-handout', handout]])) {
  byId(button).addEventListener('click', async () => {
    const copied = await copyText(field.value);
    if (!copied) field.select();
    const said = copied ? (field === handout ? t.handoutCopied : t.copied) : t.notCopied;
    say(byId('link-note'), said);
    say(byId('status'), said);
  });
}
byId('save').addEventListener('click', () => {
  const id = String(lesson?.id);
  const name = lesson && /^[a-z][a-z0-9-]{0,63}$/.test(id) ? id : 'lesson';
  saveText(`${name}.json`, json.value, 'application/json');
});
