// A round of a class on the learner's page: the same films for everybody, no truth, and a code to hand in.

import { byId, say } from '../base/dom.js';
import { copyText, saveText } from '../base/save.js';
import { store, stored } from '../base/storage.js';
import { practice as t } from '../words/practice.js';
import { asking, toQuestion } from './asking.js';
import { complaint } from './module.js';
import { NO_CHOICE, offerMoment } from './page.js';

/**
 * @import { ClassDesk } from '../pkg/practice.js'
 * @import { PracticeFilm } from './film.js'
 * @import { PracticeModule, PracticeRoom } from './module.js'
 *
 * What a learner has answered, by question, with a number that tells learners apart.
 * @typedef {{ tag: number, choices: (number | null)[] }} Answers
 */

/**
 * Begins the round of that name.
 * @param {PracticeModule} module
 * @param {PracticeRoom} room
 * @param {PracticeFilm} film
 * @param {string} name
 * @param {(sentence: string) => void} notice
 */
export function classLearner(module, room, film, name, notice) {
  /** @type {ClassDesk} */
  let desk;
  try {
    desk = new module.ClassDesk(name);
  } catch (error) {
    return notice(t.class.badRound(complaint(error)));
  }
  const all = desk.count();
  const key = `downbeam.round.${name}`;
  const state = answersIn(stored(key), all);
  const page = asking(answered, () => answered(NO_CHOICE));
  say(byId('class-lead'), t.class.lead(all));
  byId('lead-text').hidden = true;
  byId('class-start').hidden = false;
  const next = () => state.choices.findIndex((choice) => choice === null);
  if (state.choices.some((choice) => choice !== null)) showCode();

  byId('class-begin').addEventListener('click', () => {
    byId('class-start').hidden = true;
    if (next() < 0) return finish();
    byId('lead').dataset.asking = 'yes';
    byId('asking').hidden = false;
    ask();
  });

  async function ask() {
    const index = next();
    const question = desk.begin(room, index);
    page.show(question, index + 1, all);
    offerMoment(question);
    toQuestion();
    await film.open(question);
  }

  /** @param {number} choice */
  function answered(choice) {
    state.choices[next()] = choice;
    // Where nothing can be kept, the code on the page still holds it all.
    store(key, JSON.stringify(state));
    page.close();
    showCode();
    if (next() < 0) finish();
    else ask();
  }

  function showCode() {
    const given = state.choices.filter((choice) => choice !== null).length;
    say(byId('class-code'), desk.code(state.tag, Uint8Array.from(state.choices, (choice) => choice ?? NO_CHOICE)));
    say(byId('class-progress'), given < all ? t.class.codeSoFar(given, all) : '');
    byId('class-done').hidden = false;
  }

  function finish() {
    byId('lead').dataset.asking = 'no';
    byId('asking').hidden = true;
    showCode();
    byId('class-code-heading').focus();
  }

  byId('class-copy').addEventListener('click', async () => {
    const copied = await copyText(byId('class-code').textContent ?? '');
    say(byId('class-copied'), copied ? t.class.copied : '');
    if (!copied) getSelection()?.selectAllChildren(byId('class-code'));
  });
  byId('class-save').addEventListener('click', () => saveText(`downbeam-round-${name}.txt`, `${byId('class-code').textContent}\n`, 'text/plain'));
}

/**
 * What was answered before, or nothing.
 * @param {string | null} text
 * @param {number} all
 * @returns {Answers}
 */
function answersIn(text, all) {
  try {
    const found = JSON.parse(text ?? '');
    const fits = Number.isInteger(found.tag) && found.tag >= 0 && found.tag < 32_768 && Array.isArray(found.choices) && found.choices.length === all;
    if (fits && found.choices.every((/** @type {number | null} */ c) => c === null || c === NO_CHOICE || [0, 1, 2, 3].includes(Number(c)))) return found;
  } catch {
    // Nothing, or nothing of ours.
  }
  return { tag: crypto.getRandomValues(new Uint16Array(1))[0] % 32_768, choices: Array(all).fill(null) };
}
