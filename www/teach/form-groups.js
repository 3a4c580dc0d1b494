// The fields of the author's form that are of one kind only: texts by language, the patient's seed, parts to name, limits.

import { byId, make } from '../base/dom.js';
import { asField, at, isObject, numberOrText, put } from './lesson-text.js';
import { teach } from '../words/teach.js';

const t = teach.author;

/**
 * @import { LessonPart, ToleranceEntry } from '../pkg/values.js'
 * @import { Context, Field } from './form-fields.js'
 * @import { Loose } from './lesson-text.js'
 *
 * Title and intro of a language.
 * @typedef {{ language: string, titleInput: HTMLInputElement, introInput: HTMLTextAreaElement, group: HTMLElement }} LanguageRow
 *
 * A part to be named, as the file has it and as the form does.
 * @typedef {{ part: string, bone?: string, side?: string }} AskedPart
 * @typedef {{ item: HTMLElement, group: HTMLElement, selects: Record<'part' | 'bone' | 'side', HTMLSelectElement>, remove: HTMLElement }} PartRow
 */

/**
 * Title and intro by language.
 * @param {Context} context
 * @returns {Field}
 */
export function textsField({ slots, changed }) {
  const list = make('div', { class: 'languages' });
  const tag = make('input', { type: 'text', id: 'new-language', autocomplete: 'off', spellcheck: 'false', maxlength: '40' });
  const add = make('button', { type: 'button', class: 'button', id: 'add-language' }, t.addLanguage);
  const twice = make('p', { class: 'complaint', role: 'alert', hidden: true }, t.twice);
  const element = make('div', { class: 'texts' }, list,
    make('div', { class: 'field-row' }, make('div', { class: 'field' }, make('label', { for: 'new-language' }, t.newLanguage), tag), add), twice);
  /** @type {LanguageRow[]} */
  let rows = [];
  let foreign = false;

  /** @param {string} language */
  function row(language) {
    const id = (/** @type {string} */ what) => `text-${what}-${language.replace(/[^A-Za-z0-9-]/g, '_')}`;
    const titleInput = make('input', { type: 'text', id: id('title'), lang: language });
    const introInput = make('textarea', { id: id('intro'), rows: 4, lang: language });
    const titleHolder = make('div', { class: 'field' }, make('label', { for: titleInput.id }, t.titleIn(language)), titleInput);
    const introHolder = make('div', { class: 'field' }, make('label', { for: introInput.id }, t.introIn(language)), introInput);
    const group = make('div', { class: 'language', role: 'group', 'aria-label': t.language(language) }, titleHolder, introHolder);
    slots.add(`title.${language}`, titleHolder, [titleInput]);
    slots.add(`intro.${language}`, introHolder, [introInput]);
    if (language === 'en') {
      slots.add('title', titleHolder, [titleInput]);
      slots.add('intro', introHolder, [introInput]);
    } else {
      const remove = make('button', { type: 'button', class: 'button plain' }, t.removeLanguage(language));
      remove.addEventListener('click', () => {
        rows = rows.filter((r) => r.group !== group);
        group.remove();
        slots.drop(`title.${language}`);
        slots.drop(`intro.${language}`);
        tag.focus();
        used();
      });
      group.append(remove);
    }
    for (const input of [titleInput, introInput]) input.addEventListener('input', used);
    list.append(group);
    rows.push({ language, titleInput, introInput, group });
    return titleInput;
  }

  function used() {
    foreign = false;
    changed();
  }

  function addLanguage() {
    const language = tag.value.trim();
    twice.hidden = !rows.some((r) => r.language.toLowerCase() === language.toLowerCase());
    if (language === '' || !twice.hidden) return tag.focus();
    tag.value = '';
    row(language).focus();
    used();
  }
  add.addEventListener('click', addLanguage);
  tag.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    addLanguage();
  });

  /** @type {(value: unknown) => Record<string, string> | null} */
  const texts = (value) => (isObject(value) && Object.values(value).every((text) => typeof text === 'string') ? value : null);
  return {
    element,
    fill(lesson) {
      const [title, intro] = [texts(lesson.title), texts(lesson.intro)];
      foreign = !title || !intro;
      const languages = [...new Set(['en', ...Object.keys(title ?? {}), ...Object.keys(intro ?? {})])];
      if (languages.join('\n') !== rows.map((r) => r.language).join('\n')) {
        slots.drop('title');
        slots.drop('intro');
        list.replaceChildren();
        rows = [];
        for (const language of languages) row(language);
      }
      for (const r of rows) {
        r.titleInput.value = title?.[r.language] ?? '';
        r.introInput.value = intro?.[r.language] ?? '';
      }
    },
    put(lesson) {
      if (foreign) return;
      // A text that is wanted is written even when it is empty, so that the engine says so.
      /** @type {(input: 'titleInput' | 'introInput') => Record<string, string>} */
      const of = (input) => Object.fromEntries(rows.filter((r) => r.language === 'en' || r[input].value !== '').map((r) => [r.language, r[input].value]));
      lesson.title = of('titleInput');
      lesson.intro = of('introInput');
      // A language without any text yet is wanted all the same: its title is what is missing.
      for (const r of rows) if (!(r.language in lesson.title) && !(r.language in lesson.intro)) lesson.title[r.language] = '';
    },
  };
}

/**
 * Where the patient's seed comes from.
 * @param {Context} context
 * @returns {Field}
 */
export function seedField({ slots, changed }) {
  const select = make('select', { id: 'field-seed' });
  const number = make('input', { type: 'text', id: 'field-seed-number', inputmode: 'numeric', autocomplete: 'off' });
  const numberHolder = make('div', { class: 'field narrow' }, make('label', { for: number.id }, t.seedNumber), number);
  const element = make('div', { class: 'field-row seed' }, make('div', { class: 'choice field' }, make('label', { for: select.id }, t.seed), select), numberHolder);
  const holder = make('div', {}, element);
  select.append(...(/** @type {const} */ (['none', 'learner', 'number'])).map((kind) => make('option', { value: kind }, t.seeds[kind])));
  slots.add('patient.seed', holder, [number]);
  slots.add('patient.seed_from', holder, [select]);
  let foreign = false;
  const used = () => {
    foreign = false;
    numberHolder.hidden = select.value !== 'number';
    changed();
  };
  select.addEventListener('change', () => {
    if (select.value === 'number' && number.value === '') number.value = '1';
    used();
  });
  number.addEventListener('input', used);
  return {
    element: holder,
    fill(lesson) {
      const [seed, from] = [at(lesson, 'patient.seed'), at(lesson, 'patient.seed_from')];
      foreign = from !== undefined && (from !== 'learner' || seed !== undefined);
      select.value = from !== undefined ? 'learner' : seed !== undefined ? 'number' : 'none';
      number.value = asField(seed);
      numberHolder.hidden = select.value !== 'number';
    },
    put(lesson) {
      if (foreign) return;
      put(lesson, 'patient.seed', select.value === 'number' ? numberOrText(number.value) : undefined);
      put(lesson, 'patient.seed_from', select.value === 'learner' ? 'learner' : undefined);
    },
  };
}

/**
 * Parts to name, in the order in which they stand.
 * @param {readonly LessonPart[]} parts
 * @param {Context} context
 * @returns {Field}
 */
export function partsField(parts, { slots, changed }) {
  const list = make('ol', { class: 'parts-list' });
  const add = make('button', { type: 'button', class: 'button', id: 'add-part' }, t.addPart);
  const element = make('fieldset', { class: 'field parts' }, make('legend', { class: 'label' }, t.parts), make('p', { class: 'quiet' }, t.partsHint), list, make('div', { class: 'row' }, add));
  slots.add('parts', element, [add]);
  /** @type {PartRow[]} */
  let rows = [];
  let foreign = false;
  const choice = (/** @type {string} */ name, /** @type {string[][]} */ options) => {
    const select = make('select', { 'aria-label': name });
    select.append(...options.map(([value, text]) => make('option', { value }, text)));
    select.addEventListener('change', used);
    return select;
  };

  function used() {
    foreign = false;
    changed();
  }

  /** @param {AskedPart} asked */
  function row({ part, bone = 'target', side = 'needle' }) {
    const selects = {
      part: choice(t.part, parts.map((name) => [name, t.partName(name)])),
      bone: choice(t.bone, Object.entries(t.bones)),
      side: choice(t.partSide, Object.entries(t.partSides)),
    };
    selects.part.value = part;
    selects.bone.value = bone;
    selects.side.value = side;
    const remove = make('button', { type: 'button', class: 'button plain remove' }, '×');
    const group = make('div', { class: 'asked', role: 'group' }, selects.part, selects.bone, selects.side, remove);
    const item = make('li', {}, group);
    remove.addEventListener('click', () => {
      rows = rows.filter((r) => r.item !== item);
      item.remove();
      add.focus();
      number();
      used();
    });
    rows.push({ item, group, selects, remove });
    list.append(item);
    return selects.part;
  }

  function number() {
    rows.forEach(({ group, remove }, i) => {
      group.setAttribute('aria-label', t.partNumber(i + 1));
      remove.setAttribute('aria-label', t.removePart(i + 1));
    });
    list.hidden = rows.length === 0;
  }

  add.addEventListener('click', () => {
    const asked = rows.map((r) => r.selects.part.value);
    row({ part: parts.find((part) => !asked.includes(part)) ?? parts[0] }).focus();
    number();
    used();
  });

  const known = (/** @type {unknown} */ asked) =>
    isObject(asked) && parts.includes(asked.part) && (asked.bone ?? 'target') in t.bones && (asked.side ?? 'needle') in t.partSides && Object.keys(asked).every((key) => ['part', 'bone', 'side'].includes(key));
  return {
    element,
    fill(lesson) {
      const value = lesson.parts ?? [];
      foreign = !Array.isArray(value) || !value.every(known);
      list.replaceChildren();
      rows = [];
      if (!foreign) for (const asked of value) row(asked);
      number();
    },
    put(lesson) {
      if (foreign) return;
      if (rows.length === 0) delete lesson.parts;
      else {
        lesson.parts = rows.map(({ selects }) => ({
          part: selects.part.value,
          ...(selects.bone.value === 'target' ? {} : { bone: selects.bone.value }),
          ...(selects.side.value === 'needle' ? {} : { side: selects.side.value }),
        }));
      }
    },
  };
}

/**
 * Limits other than the usual: a row of two numbers each.
 * @param {readonly ToleranceEntry[]} tolerances
 * @param {Context} context
 * @returns {Field}
 */
export function tolerancesField(tolerances, { slots, changed }) {
  const body = make('div', { class: 'limits' });
  const summary = make('summary', {}, t.tolerances);
  const element = make('details', { class: 'more field', id: 'field-tolerances' }, summary, make('p', { class: 'quiet' }, t.tolerancesHint), body);
  const rows = tolerances.map(({ name, usual }) => {
    const words = /** @type {Record<string, string>} */ (t.tolerance)[name] ?? name;
    const input = (/** @type {'full' | 'none'} */ end, /** @type {string} */ label) => {
      const field = make('input', { type: 'text', id: `limit-${name}-${end}`, inputmode: 'decimal', autocomplete: 'off', placeholder: t.usual(usual[end]), 'aria-label': label });
      field.addEventListener('input', changed);
      return field;
    };
    const [full, none] = [input('full', t.fullOf(words)), input('none', t.noneOf(words))];
    const holder = make('div', { class: 'limit', role: 'group', 'aria-label': words }, make('span', { class: 'limit-name' }, words), full, none);
    slots.add(`tolerances.${name}`, holder, [full, none]);
    body.append(holder);
    return { name, full, none };
  });
  slots.add('tolerances', element, []);
  return {
    element,
    fill(lesson) {
      for (const { name, full, none } of rows) {
        full.value = asField(at(lesson, `tolerances.${name}.full`));
        none.value = asField(at(lesson, `tolerances.${name}.none`));
      }
      if (isObject(lesson.tolerances)) element.open = true;
    },
    put(lesson) {
      // What is no object, or empty as it came, stays: only what the rows can show is theirs.
      const given = lesson.tolerances;
      if (given !== undefined && (!isObject(given) || Object.keys(given).length === 0) && rows.every(({ full, none }) => full.value === '' && none.value === '')) return;
      for (const { name, full, none } of rows) {
        for (const [end, field] of /** @type {const} */ ([['full', full], ['none', none]])) put(lesson, `tolerances.${name}.${end}`, field.value.trim() === '' ? undefined : numberOrText(field.value));
      }
    },
  };
}

/**
 * Opens what a field is folded into, and puts the focus on it.
 * @param {string} id
 */
export function goTo(id) {
  const field = byId(id);
  const folded = field.closest('details');
  if (folded) folded.open = true;
  field.focus();
}

