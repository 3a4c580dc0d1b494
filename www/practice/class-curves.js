// The curves of a class: a row for each receipt of practice, or file that a learner saved, and a column for each skill. Of a receipt every film is asked again, a
// few at a time. Files are read and not kept.

import { byId, make, say } from '../base/dom.js';
import { fillFolding } from '../base/folding-table.js';
import { rest } from '../base/frame.js';
import { practice as t } from '../words/practice.js';
import { complaint, today } from './module.js';
import { whatTheyShow } from './curve.js';

/** How long the page may be busy at a stretch, ms. */
const SLICE_MS = 24;

/**
 * @import { Curve, Overview } from '../pkg/values.js'
 * @import { PracticeModule } from './module.js'
 *
 * A row of the table: what the check found, and the learner's curves.
 * @typedef {{ status: string, note: string, overview: Overview }} Row
 */

/**
 * Shows curves in the page's places for them; returns `add(files)`.
 * @param {PracticeModule} module
 */
export function classCurves(module) {
  /**
   * Rows by learner or by file, and the receipts by row.
   * @type {Map<string, Row>}
   */
  const rows = new Map();
  /** @type {Map<string, string>} */
  const receipts = new Map();
  /** @type {string[]} */
  const bad = [];

  return async function add(/** @type {{ name: string, text: string }[]} */ files) {
    for (const { name, text } of files) {
      try {
        if (module.PracticeCheck.isMeant(text)) await addReceipt(text);
        else addFile(name, text);
      } catch (error) {
        bad.push(t.group.bad(name, complaint(error)));
      }
    }
    say(byId('curves-checking'), '');
    byId('curves-bad').replaceChildren(...bad.map((sentence) => make('li', {}, sentence)));
    show();
  };

  /**
   * @param {string} name
   * @param {string} text
   */
  function addFile(name, text) {
    const room = new module.PracticeRoom();
    room.load(text);
    rows.set(name, { status: 'plain', note: '', overview: room.overview(today()) });
    room.free();
  }

  /** @param {string} text */
  async function addReceipt(text) {
    const check = new module.PracticeCheck(text);
    const all = JSON.parse(text.replace(/^\uFEFF/, '')).answers.length;
    let done = 0;
    let until = performance.now() + SLICE_MS;
    while (!check.step()) {
      done += 1;
      if (performance.now() < until) continue;
      say(byId('curves-checking'), t.group.checking(done, all));
      await rest();
      until = performance.now() + SLICE_MS;
    }
    const { learner, status, note } = check.finding();
    const room = check.room();
    // The newest receipt of a learner holds the ones before.
    rows.set(learner, { status, note, overview: room.overview(today()) });
    receipts.set(learner, text);
    room.free();
    check.free();
  }

  function show() {
    byId('curves').hidden = rows.size === 0 && bad.length === 0;
    const [first] = rows.values();
    if (!first) return;
    const shares = shared();
    const columns = [t.group.file, t.group.check, ...first.overview.skills.map(({ skill }) => t.skill(skill))];
    const sorted = [...rows].sort(([a], [b]) => a.localeCompare(b));
    const body = sorted.map(([name, row]) => [name, [t.group.status(row.status, row.note), ...(shares.get(name) ?? [])].join('; '), ...row.overview.skills.map(({ curve }) => cell(curve))]);
    fillFolding(byId('curves-table'), columns, body).forEach((line, i) => line.setAttribute('data-status', sorted[i][1].status));
    byId('curves-what').replaceChildren(...whatTheyShow(first.overview));
    byId('curves-shown').hidden = false;
  }

  /** Of each learner, with whom films are shared. */
  function shared() {
    const names = [...receipts.keys()];
    const found = module.PracticeCheck.shared([...receipts.values()]);
    return new Map(names.flatMap((name, i) => (found[2 * i] < 0 ? [] : [/** @type {const} */ ([name, [t.group.shares(found[2 * i + 1], names[found[2 * i]])]])])));
  }

  /** @param {Curve} curve */
  function cell(curve) {
    const verdict = curve.verdicts.at(-1)?.[1];
    return [t.group.cell(curve), ...(curve.reached === null ? [] : [t.group.reached(curve.reached)]), ...(verdict ? [t.verdict(verdict)] : [])].join('; ');
  }
}
