// Kinds of fields of the author's form. Each is `{ element, fill(lesson), put(lesson) }`: `fill` shows what a lesson holds, `put` writes
// what is shown. A value that a field cannot show stays as it is until the field is used.

import { make } from '../base/dom.js';
import { asField, at, numberOrText, put } from './lesson-text.js';
import { teach } from '../words/teach.js';

const t = teach.author;

/**
 * @import { Loose } from './lesson-text.js'
 * @import { Slots } from './problem-slots.js'
 *
 * What all fields are given: where problems are said, and what is called when one was used.
 * @typedef {{ slots: Slots, changed: () => void }} Context
 *
 * A field of the form: `fill` shows what a lesson holds, `put` writes what is shown.
 * @typedef {{ element: HTMLElement, fill: (lesson: Loose) => void, put: (lesson: Loose) => void }} Field
 *
 * One thing, or several that one is drawn from.
 * @typedef {{ one: string, among?: undefined } | { among: string[], one?: undefined }} Drawing
 *
 * Where in a lesson a drawing stands; undefined for what is neither.
 * @typedef {{ get: (lesson: Loose) => Drawing | undefined, set: (lesson: Loose, value: Drawing) => void }} Holds
 *
 * @typedef {readonly (readonly [value: string, text: string])[]} Options
 */

const idOf = (/** @type {string} */ path) => `field-${path.replaceAll('.', '-')}`;

/**
 * A labelled text field. `number`: what looks like a number is written as one. `optional`: an empty field is left out.
 * @param {string} path
 * @param {string} label
 * @param {Context & { number?: boolean, optional?: boolean, hint?: string, placeholder?: string, narrow?: boolean }} how
 * @returns {Field & { input: HTMLInputElement }}
 */
export function textField(path, label, { slots, changed, number = false, optional = false, hint = '', placeholder = '', narrow = false }) {
  const id = idOf(path);
  const input = make('input', { type: 'text', id, placeholder, inputmode: number ? 'decimal' : null, autocomplete: 'off', spellcheck: 'false', 'aria-describedby': hint ? `${id}-hint` : null });
  const element = make('div', { class: narrow ? 'field narrow' : 'field' }, make('label', { for: id }, label), input);
  if (hint) element.append(make('p', { class: 'quiet', id: `${id}-hint` }, hint));
  slots.add(path, element, [input]);
  input.addEventListener('input', changed);
  return {
    element,
    input,
    fill: (lesson) => (input.value = asField(at(lesson, path))),
    put(lesson) {
      const text = input.value;
      if (optional && text.trim() === '') put(lesson, path, undefined);
      else put(lesson, path, number ? numberOrText(text) : text);
    },
  };
}

/**
 * A select. `options`: an undefined value leaves the path out.
 * @param {string} path
 * @param {string} label
 * @param {readonly (readonly [key: string, text: string, value: unknown])[]} options
 * @param {Context & { note?: string }} how
 * @returns {Field}
 */
export function selectField(path, label, options, { slots, changed, note = '' }) {
  const id = idOf(path);
  const select = make('select', { id, 'aria-describedby': note ? `${id}-note` : null });
  const element = make('div', { class: 'choice field' }, make('label', { for: id }, label), select);
  if (note) element.append(make('p', { class: 'quiet', id: `${id}-note` }, note));
  slots.add(path, element, [select]);
  /** @type {unknown} */
  let foreign;
  const offer = () => select.replaceChildren(...options.map(([key, text]) => make('option', { value: key }, text)), ...(foreign === undefined ? [] : [make('option', { value: 'foreign' }, t.unknown(asField(foreign)))]));
  select.addEventListener('change', changed);
  return {
    element,
    fill(lesson) {
      const value = at(lesson, path);
      const known = options.find((option) => option[2] === value);
      foreign = known ? undefined : value;
      offer();
      select.value = known ? known[0] : 'foreign';
    },
    put: (lesson) => put(lesson, path, select.value === 'foreign' ? foreign : options.find(([key]) => key === select.value)?.[2]),
  };
}

/**
 * A row of radio buttons with a note on the one that is chosen.
 * @param {string} path
 * @param {string} label
 * @param {readonly (readonly [value: string, text: string, note: string])[]} options
 * @param {Context} how
 * @returns {Field}
 */
export function radioField(path, label, options, { slots, changed }) {
  const id = idOf(path);
  const row = make('div', { class: 'segments' });
  const note = make('p', { class: 'quiet' });
  const element = make('fieldset', { class: 'choice field' }, make('legend', {}, label), row, note);
  /** @type {unknown} */
  let foreign;
  const inputs = options.map(([value, text]) => {
    const input = make('input', { type: 'radio', name: id, id: `${id}-${value}`, value });
    row.append(make('label', { class: 'segment', for: input.id }, input, make('span', {}, text)));
    input.addEventListener('change', () => {
      words();
      changed();
    });
    return input;
  });
  slots.add(path, element, inputs);
  const words = () => (note.textContent = options.find(([value]) => inputs.some((i) => i.checked && i.value === value))?.[2] ?? '');
  return {
    element,
    fill(lesson) {
      foreign = at(lesson, path);
      for (const input of inputs) input.checked = input.value === foreign;
      words();
    },
    put: (lesson) => put(lesson, path, inputs.find((i) => i.checked)?.value ?? foreign),
  };
}

/**
 * Tick boxes for a list in the order of the options.
 * @param {string} path
 * @param {string} label
 * @param {Options} options
 * @param {Context} how
 * @returns {Field}
 */
export function listField(path, label, options, { slots, changed }) {
  const { box, inputs } = tickBoxes(idOf(path), options, () => {
    foreign = undefined;
    changed();
  });
  const element = make('fieldset', { class: 'field ticks' }, make('legend', { class: 'label' }, label), box);
  slots.add(path, element, inputs);
  /** @type {unknown} */
  let foreign;
  const ticked = () => inputs.filter((i) => i.checked).map((i) => i.value);
  return {
    element,
    fill(lesson) {
      const value = at(lesson, path);
      for (const input of inputs) input.checked = Array.isArray(value) && value.includes(input.value);
      foreign = JSON.stringify(ticked()) === JSON.stringify(value) ? undefined : value;
    },
    put: (lesson) => put(lesson, path, foreign === undefined ? ticked() : foreign),
  };
}

/**
 * @param {string} id
 * @param {Options} options
 * @param {(input: HTMLInputElement) => void} onChange
 */
function tickBoxes(id, options, onChange) {
  const inputs = options.map(([value]) => make('input', { type: 'checkbox', id: `${id}-${value}`, value }));
  for (const input of inputs) input.addEventListener('change', () => onChange(input));
  const box = make('div', { class: 'tick-list' }, ...options.map(([, text], i) => make('label', { class: 'tick' }, inputs[i], make('span', {}, text))));
  return { box, inputs };
}

/**
 * One thing, or several that one is drawn from.
 * @param {string} path
 * @param {string} label
 * @param {Options} options
 * @param {Holds} holds
 * @param {Context} how
 * @returns {Field}
 */
export function drawField(path, label, options, holds, { slots, changed }) {
  const id = idOf(path);
  const one = make('select', { id: `${id}-one`, 'aria-label': t.which(label) });
  one.append(...options.map(([value, text]) => make('option', { value }, text)));
  // What is drawn depends on the order in which the things stand, so it is kept.
  /** @type {string[]} */
  let among = [];
  /** @type {unknown} */
  let foreign;
  const ticks = tickBoxes(`${id}-among`, options, (input) => {
    among = input.checked ? [...among, input.value] : among.filter((value) => value !== input.value);
    used();
  });
  const group = make('div', { role: 'group', 'aria-label': t.among(label) }, ticks.box);
  const [oneKind, amongKind] = [['one', t.one], ['among', t.several]].map(([kind, text]) => {
    const input = make('input', { type: 'radio', name: id, id: `${id}-${kind}-kind`, value: kind });
    input.addEventListener('change', () => {
      if (kind === 'among' && among.length === 0) among = [one.value];
      used();
    });
    return { input, label: make('label', { class: 'tick' }, input, make('span', {}, text)) };
  });
  const element = make('fieldset', { class: 'field draw' }, make('legend', { class: 'label' }, label), make('div', { class: 'kinds' }, oneKind.label, amongKind.label), one, group);
  slots.add(path, element, [one, oneKind.input, amongKind.input, ...ticks.inputs]);
  one.addEventListener('change', () => used());
  const several = () => amongKind.input.checked;

  function used() {
    foreign = undefined;
    show();
    changed();
  }
  function show() {
    one.hidden = several();
    group.hidden = !several();
    for (const input of ticks.inputs) input.checked = among.includes(input.value);
  }
  return {
    element,
    fill(lesson) {
      const value = holds.get(lesson);
      const known = (/** @type {string | undefined} */ name) => options.some(([option]) => option === name);
      const several = value?.among;
      const fits = several ? several.every((name, i) => known(name) && several.indexOf(name) === i) : known(value?.one);
      foreign = fits ? undefined : lesson;
      oneKind.input.checked = !several;
      amongKind.input.checked = Boolean(several);
      among = fits && several ? [...several] : [];
      if (fits && value?.one !== undefined) one.value = value.one;
      show();
    },
    put(lesson) {
      // What is not understood is taken over as it came.
      if (foreign === undefined) holds.set(lesson, several() ? { among } : { one: one.value });
    },
  };
}
