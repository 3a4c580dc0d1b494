// The engine's numbers in their places: `data-model` names a number by its path, and rows of tables name what they show.

/** The value at a path such as `beam.tube.2.kvp`, or `bends[gauge=g22][medium=gel].at_80_mm`: a bracket picks the entry of a list. */
export function at(told, path) {
  let value = told;
  for (const [step] of path.matchAll(/[^.[\]]+=[^\]]+|[^.[\]]+/g)) {
    const [key, wanted] = step.split('=');
    value = wanted === undefined ? value?.[key] : [value].flat().filter((entry) => String(entry?.[key]) === wanted);
    if (Array.isArray(value) && wanted !== undefined && value.length === 1) value = value[0];
  }
  return value;
}

/** A number as it is read: a true minus, and as many digits as are asked for. */
export function shown(value, digits) {
  if (value === null || value === undefined || (typeof value === 'number' && !Number.isFinite(value))) return '–';
  if (typeof value !== 'number') return String(value);
  const text = digits === undefined ? String(value) : value.toFixed(Number(digits));
  return text.replace(/^-/, '−').replace(/^−(0\.?0*)$/, '$1');
}

const cell = (text, name = 'td') => Object.assign(document.createElement(name), { textContent: text });

/** Fills a row behind its heading with a list of numbers. */
function fillRow(row, values, digits) {
  row.querySelectorAll('td.filled').forEach((old) => old.remove());
  for (const value of values) {
    const td = cell(shown(value, digits));
    td.className = 'filled';
    row.append(td);
  }
}

/** Every placeholder and every row of the page. */
export function fillNumbers(told) {
  for (const place of document.querySelectorAll('[data-model]')) place.textContent = shown(at(told, place.dataset.model), place.dataset.digits);
  for (const row of document.querySelectorAll('tr[data-bone]')) {
    const bone = told.bones.rows.find((r) => r.name === row.dataset.bone);
    const values = bone[row.dataset.of] ?? told.bones.levels.map(() => null);
    fillRow(row, values, 1);
  }
  for (const row of document.querySelectorAll('tr[data-each]')) {
    const list = at(told, row.dataset.each);
    fillRow(row, list.map((entry) => at(entry, row.dataset.take)), row.dataset.digits);
  }
  for (const body of document.querySelectorAll('tbody[data-rows]')) fillBody(body, [at(told, body.dataset.rows)].flat());
}

/** A cell with more letters than this gets room, so that a narrow screen does not break it into single words. */
const SENTENCE = 24;

/** A row an entry; `data-columns` names what each column takes, `name:digits`. Words stand to the left, numbers to the right. */
function fillBody(body, entries) {
  const columns = body.dataset.columns.split(' ').map((column) => column.split(':'));
  const looks = columns.map(([path]) => {
    const lengths = entries.map((entry) => at(entry, path)).filter((value) => typeof value === 'string').map((words) => words.length);
    return lengths.length ? (Math.max(...lengths) > SENTENCE ? 'words sentence' : 'words') : '';
  });
  body.closest('table').querySelectorAll('thead th').forEach((heading, i) => (heading.className = looks[i]));
  body.replaceChildren(
    ...entries.map((entry) => {
      const row = document.createElement('tr');
      columns.forEach(([path, digits], i) => {
        const made = cell(shown(at(entry, path), digits).replaceAll('_', ' '), i === 0 ? 'th' : 'td');
        if (i === 0) made.scope = 'row';
        made.className = looks[i];
        row.append(made);
      });
      return row;
    }),
  );
}
