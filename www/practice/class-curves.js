// The curves of a class: a row for each file that a learner saved, a column for each skill. Files are read and not kept.

import { chooser } from '../base/chooser.js';
import { byId, make } from '../base/dom.js';
import { practice as t } from '../words/practice.js';
import { complaint, today } from './module.js';
import { whatTheyShow } from './curve.js';

export function classCurves(module) {
  const rows = new Map();
  chooser(byId('choose-curves'), byId('curve-files'), async (files) => {
    const bad = [];
    for (const file of files) {
      try {
        const room = new module.PracticeRoom();
        room.load(await file.text());
        rows.set(file.name, room.overview(today()));
        room.free();
      } catch (error) {
        bad.push(t.group.bad(file.name, complaint(error)));
      }
    }
    byId('curves-bad').replaceChildren(...bad.map((sentence) => make('li', {}, sentence)));
    show();
  });

  function show() {
    const [first] = rows.values();
    if (!first) return;
    const head = make('tr', {}, make('th', { scope: 'col' }, t.group.file), ...first.skills.map(({ skill }) => make('th', { scope: 'col' }, t.skill(skill))));
    const body = [...rows].sort(([a], [b]) => a.localeCompare(b)).map(([name, overview]) => make('tr', {}, make('th', { scope: 'row' }, name), ...overview.skills.map(({ curve }) => cell(curve, overview))));
    byId('curves-table').replaceChildren(make('thead', {}, head), make('tbody', {}, ...body));
    byId('curves-what').replaceChildren(...whatTheyShow(first));
    byId('curves-shown').hidden = false;
  }

  function cell(curve, overview) {
    const verdict = curve.verdicts.at(-1)?.[1];
    const lines = [t.group.cell(curve), ...(curve.reached === null ? [] : [t.group.reached(curve.reached)]), ...(verdict ? [t.verdict(verdict)] : [])];
    return make('td', { title: t.standing(verdict, overview) }, lines.join('; '));
  }
}
