// The teacher's page of a class round: opens it, takes codes in, shows counts over the film and then what is true, and gives figures.

import { chooser } from '../base/chooser.js';
import { byId, choices, make, say } from '../base/dom.js';
import { fillFolding } from '../base/folding-table.js';
import { copyText, saveText } from '../base/save.js';
import { practice as t } from '../words/practice.js';
import { asking } from './asking.js';
import { classCurves } from './class-curves.js';
import { countsOver } from './counts.js';
import { complaint } from './module.js';
import { NO_CHOICE, namedRound, offerMoment, practicePage } from './page.js';

const STAGES = [0, 1, 2, 3, 4, 5];
const COUNTS = [3, 4, 5, 6, 7, 8, 9, 10];
const chosen = { stage: 1, count: 8 };

/**
 * @import { ClassDesk } from '../pkg/practice.js'
 * @import { ShownQuestion, CodesReport } from '../pkg/values.js'
 */

practicePage(t.classTitle, ({ module, room, film }) => {
  const page = asking(() => page.close());
  /**
   * The round that is open.
   * @type {{ desk: ClassDesk, at: number, question: ShownQuestion | null } | null}
   */
  let open = null;
  const seed = byId('seed', HTMLInputElement);
  const link = byId('link', HTMLInputElement);
  const codes = byId('codes', HTMLTextAreaElement);
  const [turn, previous, next] = ['turn', 'previous', 'next'].map((id) => byId(id, HTMLButtonElement));
  choices(byId('stage'), STAGES.map((n) => /** @type {const} */ ([String(n), t.teacher.stageName(n)])), (n) => void (chosen.stage = Number(n)))(String(chosen.stage));
  choices(byId('count'), COUNTS.map((n) => /** @type {const} */ ([String(n), String(n)])), (n) => void (chosen.count = Number(n)))(String(chosen.count));
  const newSeed = () => (seed.value = String(10_000 + (crypto.getRandomValues(new Uint32Array(1))[0] % 90_000)));
  newSeed();
  byId('new-seed').addEventListener('click', newSeed);

  /**
   * Tells what is wrong where it was entered.
   * @param {unknown} error
   */
  function complain(error) {
    say(byId('setting-complaint'), error ? complaint(error) : '');
    byId('setting-complaint').hidden = !error;
  }

  /** @param {string} name */
  function openRound(name) {
    try {
      open = { desk: new module.ClassDesk(name), at: 0, question: null };
    } catch (error) {
      return complain(error);
    }
    complain(null);
    const address = new URL('practice.html', location.href);
    address.hash = `round=${name}`;
    link.value = address.href;
    const picture = module.ClassDesk.pictureCode(address.href);
    byId('picture-code').setAttribute('viewBox', `0 0 ${picture.size} ${picture.size}`);
    byId('picture-path').setAttribute('d', picture.path);
    // The same round again after the page was loaded again: the codes have to be given again.
    history.replaceState(null, '', `#round=${name}`);
    for (const id of ['opened', 'asking', 'figures']) byId(id).hidden = false;
    take('');
    ask();
  }

  byId('open-round').addEventListener('click', () => {
    const number = Number(seed.value.trim());
    try {
      openRound(module.ClassDesk.named(Number.isInteger(number) && number >= 0 && number < 2 ** 32 ? number : NaN, chosen.stage, chosen.count));
    } catch (error) {
      complain(error);
    }
  });

  async function ask() {
    if (!open) return;
    open.question = open.desk.begin(room, open.at);
    page.show(open.question, open.at + 1, open.desk.count());
    page.close();
    offerMoment(open.question);
    turn.disabled = false;
    previous.disabled = open.at === 0;
    next.disabled = open.at + 1 >= open.desk.count();
    showCounts(null);
    await film.open(open.question);
    showCounts(null);
  }

  /** @param {number | null} answer the true one, once it is shown */
  function showCounts(answer) {
    if (!open?.question) return;
    const { counts, none } = open.desk.counts(open.at);
    const given = counts.reduce((sum, n) => sum + n, 0);
    say(byId('answered'), t.teacher.answered(given, none));
    countsOver(open.question, counts, answer);
  }

  turn.addEventListener('click', async () => {
    // Nobody's own answer: the truth is all that is wanted.
    const verdict = room.answerReport(NO_CHOICE);
    turn.disabled = true;
    page.tell(null, verdict);
    showCounts(verdict.answer);
    await film.turn(verdict.truth);
    showCounts(verdict.answer);
  });
  /** @param {number} by */
  function step(by) {
    if (open) open.at += by;
    ask();
  }
  previous.addEventListener('click', () => step(-1));
  next.addEventListener('click', () => step(1));

  /**
   * Takes codes in and says what became of them.
   * @param {string} text
   */
  function take(text) {
    if (!open) return;
    const { learners, refused } = open.desk.take(text);
    say(byId('taken'), t.teacher.taken(learners));
    byId('refused').hidden = refused.length === 0;
    byId('refused-list').replaceChildren(...refused.map((sentence) => make('li', {}, sentence)));
    figures();
    showCounts(null);
  }

  byId('take').addEventListener('click', () => take(codes.value));
  chooser(byId('choose-codes'), byId('codes-file'), async (files) => {
    const texts = await Promise.all(files.map((file) => file.text()));
    codes.value = [codes.value.trim(), ...texts.map((text) => text.trim())].filter(Boolean).join('\n');
    take(codes.value);
  });

  function figures() {
    if (!open) return;
    const c = t.teacher.col;
    const share = (/** @type {number | null} */ value) => (value === null ? t.teacher.nothing : t.number(value, 2));
    const rows = open.desk.figures().map((r) => [r.question === null ? t.teacher.all : String(r.question), t.kind(r.kind), r.place || t.teacher.nothing, String(r.answered), String(r.right), share(r.difficulty), share(r.discrimination)]);
    fillFolding(byId('figures-table'), [c.question, c.kind, c.place, c.answered, c.right, c.difficulty, c.discrimination], rows);
  }

  byId('save-figures').addEventListener('click', () => open && saveText('downbeam-round-figures.csv', open.desk.csv(), 'text/csv'));
  byId('copy-link').addEventListener('click', async () => {
    const copied = await copyText(link.value);
    say(byId('link-said'), copied ? t.class.copied : '');
    if (!copied) link.select();
  });

  const add = classCurves(module);
  byId('curves').hidden = false;
  chooser(byId('choose-curves'), byId('curve-files'), async (files) => add(await Promise.all(files.map(async (file) => ({ name: file.name, text: await file.text() })))));
  const round = namedRound();
  if (round) openRound(round);
});
