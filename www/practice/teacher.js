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

practicePage(t.classTitle, ({ module, room, film }) => {
  const page = asking(() => page.close());
  const open = { desk: null, at: 0, question: null };
  choices(byId('stage'), STAGES.map((n) => [String(n), t.teacher.stageName(n)]), (n) => (chosen.stage = Number(n)))(String(chosen.stage));
  choices(byId('count'), COUNTS.map((n) => [String(n), String(n)]), (n) => (chosen.count = Number(n)))(String(chosen.count));
  const newSeed = () => (byId('seed').value = String(10_000 + (crypto.getRandomValues(new Uint32Array(1))[0] % 90_000)));
  newSeed();
  byId('new-seed').addEventListener('click', newSeed);

  /** Tells what is wrong where it was entered. */
  function complain(error) {
    say(byId('setting-complaint'), error ? complaint(error) : '');
    byId('setting-complaint').hidden = !error;
  }

  function openRound(name) {
    try {
      open.desk = new module.ClassDesk(name);
    } catch (error) {
      return complain(error);
    }
    complain(null);
    const link = new URL('practice.html', location.href);
    link.hash = `round=${name}`;
    byId('link').value = link.href;
    const picture = module.ClassDesk.pictureCode(link.href);
    byId('picture-code').setAttribute('viewBox', `0 0 ${picture.size} ${picture.size}`);
    byId('picture-path').setAttribute('d', picture.path);
    // The same round again after the page was loaded again: the codes have to be given again.
    history.replaceState(null, '', `#round=${name}`);
    for (const id of ['opened', 'asking', 'figures']) byId(id).hidden = false;
    open.at = 0;
    taken(open.desk.take(''));
    ask();
  }

  byId('open-round').addEventListener('click', () => {
    const seed = Number(byId('seed').value.trim());
    try {
      openRound(module.ClassDesk.named(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 32 ? seed : NaN, chosen.stage, chosen.count));
    } catch (error) {
      complain(error);
    }
  });

  async function ask() {
    open.question = open.desk.begin(room, open.at);
    page.show(open.question, open.at + 1, open.desk.count());
    page.close();
    offerMoment(open.question);
    byId('turn').disabled = false;
    byId('previous').disabled = open.at === 0;
    byId('next').disabled = open.at + 1 >= open.desk.count();
    showCounts(null);
    await film.open(open.question);
    showCounts(null);
  }

  function showCounts(answer) {
    const { counts, none } = open.desk.counts(open.at);
    const given = counts.reduce((sum, n) => sum + n, 0);
    say(byId('answered'), t.teacher.answered(given, none));
    countsOver(open.question, counts, answer);
  }

  byId('turn').addEventListener('click', async () => {
    // Nobody's own answer: the truth is all that is wanted.
    const told = room.told(NO_CHOICE);
    byId('turn').disabled = true;
    page.tell(null, told);
    showCounts(told.answer);
    await film.turn(told.truth);
    showCounts(told.answer);
  });
  byId('previous').addEventListener('click', () => ((open.at -= 1), ask()));
  byId('next').addEventListener('click', () => ((open.at += 1), ask()));

  function taken({ learners, refused }) {
    say(byId('taken'), t.teacher.taken(learners));
    byId('refused').hidden = refused.length === 0;
    byId('refused-list').replaceChildren(...refused.map((sentence) => make('li', {}, sentence)));
    figures();
    if (open.question) showCounts(null);
  }

  byId('take').addEventListener('click', () => taken(open.desk.take(byId('codes').value)));
  chooser(byId('choose-codes'), byId('codes-file'), async (files) => {
    const texts = await Promise.all(files.map((file) => file.text()));
    byId('codes').value = [byId('codes').value.trim(), ...texts.map((text) => text.trim())].filter(Boolean).join('\n');
    taken(open.desk.take(byId('codes').value));
  });

  function figures() {
    const c = t.teacher.col;
    const share = (value) => (value === null ? t.teacher.nothing : t.number(value, 2));
    const rows = open.desk.figures().map((r) => [r.question === null ? t.teacher.all : String(r.question), t.kind(r.kind), r.place || t.teacher.nothing, String(r.answered), String(r.right), share(r.difficulty), share(r.discrimination)]);
    fillFolding(byId('figures-table'), [c.question, c.kind, c.place, c.answered, c.right, c.difficulty, c.discrimination], rows);
  }

  byId('save-figures').addEventListener('click', () => saveText('downbeam-round-figures.csv', open.desk.csv(), 'text/csv'));
  byId('copy-link').addEventListener('click', async () => {
    const copied = await copyText(byId('link').value);
    say(byId('link-said'), copied ? t.class.copied : '');
    if (!copied) byId('link').select();
  });

  const add = classCurves(module);
  byId('curves').hidden = false;
  chooser(byId('choose-curves'), byId('curve-files'), async (files) => add(await Promise.all(files.map(async (file) => ({ name: file.name, text: await file.text() })))));
  const round = namedRound();
  if (round) openRound(round);
});
