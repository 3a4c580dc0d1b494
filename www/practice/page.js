// What the learner's and the teacher's page of practice have in common: how they begin, the buttons beside the film, a round's name.

import { byId, say } from '../base/dom.js';
import { beginPage } from '../controls/page-frame.js';
import { practice as t } from '../words/practice.js';
import { filmOf } from './film.js';
import { complaint, fillPractice, practiceModule } from './module.js';

/** An answer that nobody gave, as the engine takes it. */
export const NO_CHOICE = 255;

/** The round of a class that the address names, or null. */
export function namedRound() {
  const named = location.hash.match(/^#round=(.+)$/);
  return named && decodeURIComponent(named[1]);
}

/**
 * @import { ShownQuestion } from '../pkg/values.js'
 * @import { PracticeFilm } from './film.js'
 * @import { PracticeModule, PracticeRoom } from './module.js'
 *
 * What a page of practice works with.
 * @typedef {{ module: PracticeModule, room: PracticeRoom, film: PracticeFilm, notice: (sentence: string) => void }} Bench
 */

/**
 * Dresses the page, brings the engine's module and uses it; what goes wrong on the way is said.
 * @param {string} title
 * @param {(bench: Bench) => void} use
 */
export async function practicePage(title, use) {
  const notice = beginPage(title);
  fillPractice();
  say(byId('status'), t.loading);
  const broken = (/** @type {unknown} */ error) => notice(complaint(error), { again: true });
  try {
    const module = await practiceModule();
    const room = new module.PracticeRoom();
    const film = filmOf(room, broken);
    filmButtons(film);
    use({ module, room, film, notice });
    say(byId('status'), '');
  } catch (error) {
    broken(error);
  }
  document.documentElement.dataset.settled = 'yes';
}

/**
 * Inverted or not, and for contrast the later film.
 * @param {PracticeFilm} film
 */
function filmButtons(film) {
  byId('invert').addEventListener('click', () => {
    film.shown.boneDark = !film.shown.boneDark;
    byId('invert').setAttribute('aria-pressed', String(!film.shown.boneDark));
    film.again();
  });
  byId('moment').addEventListener('click', () => {
    const later = film.shown.moment === 'later';
    film.show(later ? (film.shown.answered ? 'answered' : 'asked') : 'later');
    byId('moment').setAttribute('aria-pressed', String(!later));
  });
}

/**
 * The later film is there for contrast alone, and is not shown at first.
 * @param {ShownQuestion} question
 */
export function offerMoment(question) {
  byId('moment').hidden = !question.contrast;
  byId('moment').setAttribute('aria-pressed', 'false');
}
