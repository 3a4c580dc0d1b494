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

const notice = beginPage(t.title);
const showPicture = preview();
const json = byId('json');
const review = onceQuiet(reviewed, QUIET_MS);
let desk = null;
let form = null;
/** The last lesson that the form could show. */
let lesson = null;
let before = null;
let samples = 1;
let told = false;

byId('code').value = t.sample(samples);
byId('whole').disabled = true;
begin();

async function begin() {
  try {
    desk = await lessonDesk(teach.noEngine);
  } catch (error) {
    // A form without the engine would say of everything that it is right.
    for (const part of document.querySelectorAll('.bench, .file')) part.hidden = true;
    for (const id of ['shipped', 'open-file', 'fresh', 'link-in', 'open-link']) byId(id).disabled = true;
    return notice(error.message, { again: true });
  }
  const offered = desk.choices();
  form = lessonForm(byId('whole'), offered, formChanged);
  byId('whole').disabled = false;
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

function offerShelf({ lessons }) {
  const title = ({ id, text }) => {
    try {
      return desk.read(text, teach.language).title;
    } catch {
      return id;
    }
  };
  const show = choices(byId('shipped'), [['', t.pick], ...lessons.map((l) => [l.id, title(l)])], (id) => {
    const found = lessons.find((l) => l.id === id);
    if (found) replace(found.text);
  });
  show('');
  document.documentElement.dataset.shelf = 'yes';
}

chooser(byId('open-file'), byId('lesson-file'), ([file]) => opened(() => lessonText(file)));
byId('open-link').addEventListener('click', openLink);
byId('link-in').addEventListener('keydown', (event) => event.key === 'Enter' && openLink());

async function openLink() {
  const link = byId('link-in').value.trim();
  if (link === '') return byId('link-in').focus();
  if (await opened(async () => desk.fromLink(link))) byId('link-in').value = '';
}

/** Takes up what `source` gives; a file with mistakes in it is taken up too, to be mended. */
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

/** Puts another lesson in the place of the present one, which can be brought back. */
function replace(text) {
  before = json.value;
  byId('before').hidden = false;
  load(text);
  say(byId('status'), t.replaced);
}

byId('before').addEventListener('click', () => {
  const text = before;
  before = null;
  byId('before').hidden = true;
  byId('shipped').value = '';
  load(text);
  say(byId('status'), t.broughtBack);
  byId('shipped').focus();
});

// Form and file.

/** Shows a text in the file and, if it can be, in the form. */
function load(text) {
  json.value = text;
  takeIn();
}

/** The file has changed: the form follows, or waits while there is nothing that it could show. */
function takeIn() {
  const found = parsed(json.value);
  if (found) {
    lesson = found;
    form.fill(found);
  }
  byId('waits').hidden = Boolean(found);
  byId('again').hidden = lesson === null;
  byId('whole').disabled = !found;
  pending();
}

function formChanged() {
  lesson = form.read(lesson);
  json.value = written(lesson);
  pending();
}

json.addEventListener('input', () => form && takeIn());
byId('sheet').addEventListener('submit', (event) => event.preventDefault());
byId('again').addEventListener('click', () => {
  load(written(lesson));
  json.focus();
});

function pending() {
  document.documentElement.dataset.settled = 'no';
  review();
}

// What the engine says.

function reviewed() {
  if (!desk) return;
  const text = json.value;
  const problems = problemsOf(text);
  const placed = form.show(problems);
  showVerdict(placed);
  showLink(text, problems.length === 0);
  showDrawn();
  if (!store(DRAFT, text) && !told) {
    told = true;
    notice(t.noDraft);
  }
  document.documentElement.dataset.settled = 'yes';
}

function problemsOf(text) {
  try {
    return desk.problems(text);
  } catch (error) {
    return [{ path: '', problem: complaint(error) }];
  }
}

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

function showLink(text, good) {
  let link = '';
  let note = good ? t.linkNote : t.noLink;
  if (good) {
    try {
      link = `${new URL('index.html', location.href)}#${desk.toLink(text)}`;
    } catch (error) {
      note = sentence(complaint(error));
    }
  }
  byId('link-out').value = link;
  say(byId('link-note'), note);
  byId('copy').disabled = link === '';
  for (const [id, page] of [['try', 'index.html'], ['check-link', 'check.html']]) {
    // A link without an address is none: it is out of reach of keys and pointer.
    if (link) byId(id).href = link.replace('index.html', page);
    else byId(id).removeAttribute('href');
    if (link) byId(id).removeAttribute('aria-disabled');
    else byId(id).setAttribute('aria-disabled', 'true');
  }
  const info = good ? desk.read(text, teach.language) : null;
  byId('handout').value = link ? t.handoutText(info.title, link, info.asks_code, info.pass_mark) : '';
  byId('copy-handout').disabled = link === '';
  say(byId('hash'), info?.sha256 ?? t.noHash);
}

/** What the lesson draws for the code. */
function showDrawn() {
  let drawn = null;
  let words = t.nothingDrawn;
  try {
    const it = new desk(json.value, byId('code').value);
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

byId('code').addEventListener('input', pending);
byId('another').addEventListener('click', () => {
  samples += 1;
  byId('code').value = t.sample(samples);
  pending();
});

// Handing out.

for (const [button, field] of [['copy', 'link-out'], ['copy-handout', 'handout']]) {
  byId(button).addEventListener('click', async () => {
    const copied = await copyText(byId(field).value);
    if (!copied) byId(field).select();
    const said = copied ? (field === 'handout' ? t.handoutCopied : t.copied) : t.notCopied;
    say(byId('link-note'), said);
    say(byId('status'), said);
  });
}
byId('save').addEventListener('click', () => {
  const name = /^[a-z][a-z0-9-]{0,63}$/.test(lesson?.id) ? lesson.id : 'lesson';
  saveText(`${name}.json`, json.value, 'application/json');
});
