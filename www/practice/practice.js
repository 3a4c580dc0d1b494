// The learner's page: a day's round, its result and curves; or, from a teacher's link, a round of a class.

import { chooser } from '../base/chooser.js';
import { byId, make, say } from '../base/dom.js';
import { saveText } from '../base/save.js';
import { storageWorks } from '../base/storage.js';
import { practice as t } from '../words/practice.js';
import { asking, toQuestion } from './asking.js';
import { classLearner } from './class-learner.js';
import { curveSection, whatTheyShow } from './curve.js';
import { keptPractice } from './kept.js';
import { complaint, today } from './module.js';
import { namedRound, offerMoment, practicePage } from './page.js';

/** Buttons of the film, by key. */
const FILM_KEYS = new Map([['c', 'moment'], ['b', 'back']]);

practicePage(t.title, ({ module, room, film, notice }) => {
  filmKeys();
  const round = namedRound();
  // Another link in the same tab is another round.
  addEventListener('hashchange', () => location.reload());
  if (round) classLearner(module, room, film, round, notice);
  else daily(room, film, notice);
});

/**
 * @import { AskedCard, Orientation, ShownQuestion } from '../pkg/values.js'
 * @import { PracticeFilm } from './film.js'
 * @import { PracticeRoom } from './module.js'
 *
 * The round under way: its cards, which is asked, what was answered (null: left out), and of the open question the question and the true view.
 * @typedef {object} Round
 * @property {number} seed
 * @property {AskedCard[]} cards
 * @property {number} at
 * @property {(AskedCard & { right: boolean | null })[]} results
 * @property {ShownQuestion | null} question
 * @property {Orientation | null} truth
 */

/** C for the later film, B for the film that was asked. */
function filmKeys() {
  addEventListener('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || (event.target instanceof Element && event.target.closest('input, textarea, select'))) return;
    const name = FILM_KEYS.get(event.key.toLowerCase());
    if (name && !byId(name).hidden && !byId('asking').hidden) byId(name).click();
  });
}

/**
 * @param {PracticeRoom} room
 * @param {PracticeFilm} film
 * @param {(sentence: string) => void} notice
 */
function daily(room, film, notice) {
  const kept = keptPractice(room);
  if (kept.problem) notice(t.badKeep(kept.problem));
  else if (!storageWorks()) notice(t.noKeep);
  const page = asking(answered, leftOut);
  /** @type {Round | null} */
  let round = null;

  /** Sets everything that is not a question. */
  function rest() {
    const overview = room.overview(today());
    say(byId('due'), t.due(overview.due));
    say(byId('begun'), t.begun(overview));
    say(byId('begin'), round ? t.more : t.begin);
    byId('curve-list').replaceChildren(...overview.skills.map((skill) => curveSection(skill, overview)));
    byId('what').replaceChildren(...whatTheyShow(overview));
    for (const id of ['start', 'curves', 'keep']) byId(id).hidden = false;
    byId('lead').dataset.asking = 'no';
    byId('asking').hidden = true;
  }

  function beginRound() {
    const [seed] = crypto.getRandomValues(new Uint32Array(1));
    round = { seed, cards: room.dailyRound(today(), seed), at: 0, results: [], question: null, truth: null };
    for (const id of ['start', 'curves', 'keep', 'result']) byId(id).hidden = true;
    byId('lead').dataset.asking = 'yes';
    byId('asking').hidden = false;
    ask(round);
  }

  /** @param {Round} round */
  async function ask(round) {
    const { kind, level, side, stage } = round.cards[round.at];
    const question = room.begin(round.seed, round.at, kind, level, side, stage);
    round.question = question;
    page.show(question, round.at + 1, round.cards.length);
    byId('next').hidden = true;
    byId('back').hidden = true;
    byId('back').setAttribute('aria-pressed', 'false');
    offerMoment(question);
    toQuestion();
    await film.open(question);
  }

  /** @param {number} choice */
  function answered(choice) {
    if (!round) return;
    const verdict = room.answerReport(choice);
    room.record(choice, Date.now(), today());
    if (!kept.write() && !kept.problem) notice(t.noKeep);
    round.results.push({ ...round.cards[round.at], right: verdict.right });
    round.truth = verdict.truth;
    page.tell(choice, verdict);
    byId('moment').setAttribute('aria-pressed', 'false');
    byId('back').hidden = false;
    toNext(round);
    film.turn(verdict.truth);
  }

  function leftOut() {
    if (!round) return;
    round.results.push({ ...round.cards[round.at], right: null });
    page.close();
    toNext(round);
  }

  /** @param {Round} round */
  function toNext(round) {
    say(byId('next'), round.at + 1 < round.cards.length ? t.next : t.finish);
    byId('next').hidden = false;
    byId('next').focus({ preventScroll: true });
    // The verdict and the way on stand under the answers.
    byId('next').scrollIntoView({ block: 'nearest' });
  }

  byId('begin').addEventListener('click', beginRound);
  byId('next').addEventListener('click', () => {
    if (!round) return;
    round.at += 1;
    if (round.at < round.cards.length) return ask(round);
    finish(round);
  });
  byId('back').addEventListener('click', () => {
    if (!round?.question || !round.truth) return;
    const back = byId('back').getAttribute('aria-pressed') !== 'true';
    byId('back').setAttribute('aria-pressed', String(back));
    film.put(back ? round.question.view : round.truth, !back);
  });

  /** @param {Round} round */
  function finish(round) {
    const counted = round.results.filter((result) => result.right !== null);
    rest();
    say(byId('result-heading'), t.done(counted.filter((result) => result.right).length, counted.length));
    byId('round-list').replaceChildren(
      ...round.results.map((r) => make('li', { 'data-right': String(r.right) }, `${t.kind(r.kind)} · ${t.placeStage(r)}: ${r.right === null ? t.leaveOut : r.right ? t.isRight : t.isWrong}`)),
    );
    byId('result').hidden = false;
    byId('result-heading').focus();
  }

  byId('keep-save').addEventListener('click', () => saveText('downbeam-practice.json', `${room.toJson()}\n`, 'application/json'));
  byId('keep-receipt').addEventListener('click', handIn);
  byId('keep-code').addEventListener('keydown', (event) => event.key === 'Enter' && handIn());

  /** Saves a receipt under the learner's code, which is what a teacher's list knows. */
  function handIn() {
    const code = byId('keep-code', HTMLInputElement).value.trim();
    if (code === '') {
      say(byId('keep-said'), t.keep.noCode);
      return byId('keep-code').focus();
    }
    try {
      const text = room.receipt(code);
      if (JSON.parse(text).answers.length === 0) return say(byId('keep-said'), t.keep.noAnswers);
      const name = code.normalize('NFC').replace(/[^\p{L}\p{N}_-]+/gu, '-');
      saveText(`downbeam-practice-${name}.json`, text, 'application/json');
      say(byId('keep-said'), '');
    } catch (error) {
      say(byId('keep-said'), complaint(error));
    }
  }

  chooser(byId('keep-load'), byId('keep-file'), async ([file]) => {
    try {
      const added = room.merge(await file.text());
      if (!kept.write() && !kept.problem) notice(t.noKeep);
      rest();
      say(byId('keep-said'), t.keep.added(added));
    } catch (error) {
      say(byId('keep-said'), complaint(error));
    }
  });
  rest();
}
