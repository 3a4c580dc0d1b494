// The class by learner: the class list, which stays in this page, each one's tries and best, who has handed in nothing, and the gradebook.

import { chooser } from '../base/chooser.js';
import { byId, make, say } from '../base/dom.js';
import { saveText } from '../base/save.js';
import { complaint } from './frame.js';
import { teach } from '../words/teach.js';

const t = teach.check.learners;
/** Longest list, bytes (`lesson::class_list::MOST_BYTES`). */
const MOST_BYTES = 1024 * 1024;

/**
 * Keeps the panel of the list and the table. `room()` is the engine's class, `afterwards(act)` waits for its turn, `titleOf(lesson)`. Returns
 * `show()`, to be called when the class has changed.
 */
export function learners({ room, afterwards, titleOf }) {
  const complain = (words) => {
    say(byId('list-complaint'), words);
    byId('list-complaint').hidden = words === '';
  };

  async function take(file, act) {
    if (!file || !room()) return;
    complain('');
    try {
      if (file.size > MOST_BYTES) throw new Error(t.tooLarge);
      act(new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer()));
      show();
    } catch (error) {
      complain(teach.shelf.bad(file.name, error instanceof TypeError ? teach.check.notText : complaint(error)));
    }
  }
  chooser(byId('choose-list'), byId('list-file'), ([file]) => afterwards(() => take(file, (text) => taken(room().setList(text)))));
  chooser(byId('choose-names'), byId('names-file'), ([file]) => afterwards(() => take(file, deal)));
  byId('save-gradebook').addEventListener('click', () => saveText(t.file, room().gradebook(separator(), true), 'text/csv'));

  const separator = () => byId('separator').value;
  const taken = (n) => say(byId('list-state'), t.state(n));

  function deal(names) {
    const [seed] = crypto.getRandomValues(new BigUint64Array(1));
    saveText(t.codesFile, room().dealCodes(names, seed, separator()), 'text/csv');
    say(byId('list-state'), t.dealt);
  }

  function show() {
    const { lessons, learners: all, missing } = room().learners();
    byId('learners').hidden = all.length === 0 || byId('result').hidden;
    const names = all.filter(({ code }) => missing.includes(code)).map(({ code, name }) => t.named(name, code));
    byId('missing').hidden = names.length === 0;
    say(byId('missing'), names.length === 0 ? '' : t.missing(names));
    const head = [t.columns.learner, ...lessons.map(titleOf), t.columns.lookAt].map((name) => make('th', { scope: 'col', role: 'columnheader' }, name));
    byId('learners-table').replaceChildren(
      make('thead', { role: 'rowgroup' }, make('tr', { role: 'row' }, ...head)),
      make('tbody', { role: 'rowgroup' }, ...all.map((one) => row(one, lessons))));
  }

  function row({ code, name, lessons: tries, look_at: rows }, lessons) {
    return make('tr', { role: 'row' },
      make('th', { scope: 'row', role: 'rowheader', 'data-name': t.columns.learner }, name === null ? t.notListed(code) : t.named(name, code)),
      ...tries.map((one, i) => make('td', { role: 'cell', 'data-name': titleOf(lessons[i]) }, ...result(one))),
      make('td', { role: 'cell', 'data-name': t.columns.lookAt }, rows.length > 0 ? t.rows(rows) : ''));
  }

  /** The best try, and how the tries went one after the other. */
  function result({ rows, totals, total, passed }) {
    if (rows.length === 0) return [make('span', { class: 'quiet' }, t.nothing)];
    if (total === null) return [t.noneVerified(rows.length)];
    const over = totals.length > 1 ? [make('span', { class: 'quiet tries' }, t.tries(totals))] : [];
    return [make('strong', {}, teach.percentFine(total)), make('span', { class: 'passed' }, passed ? teach.check.rows.passed : teach.check.rows.notPassed), ...over];
  }

  return show;
}
