// The author's form: every key of the lesson file, in sections.

import { make } from '../base/dom.js';
import { drawField, listField, radioField, selectField, textField } from './form-fields.js';
import { partsField, seedField, textsField, tolerancesField } from './form-groups.js';
import { isObject } from './lesson-text.js';
import { problemSlots } from './problem-slots.js';
import { teach } from '../words/teach.js';

const t = teach.author;
/**
 * @import { Choices } from '../pkg/values.js'
 * @import { Field, Holds } from './form-fields.js'
 * @import { Loose } from './lesson-text.js'
 */

const entries = (/** @type {Record<string, string>} */ table) => Object.entries(table);
/** Options of a key that may be left out: the first one leaves it out. */
const optional = (/** @type {Record<string, string>} */ table) => entries(table).map(([key, text]) => /** @type {const} */ ([key, text, key === 'none' ? undefined : key]));

/**
 * `one` or `among` out of `"L4"` or `{any_of: […]}`.
 * @type {(key: string) => Holds}
 */
const choice = (key) => ({
  get: ({ [key]: value }) => (typeof value === 'string' ? { one: value } : isObject(value) && Array.isArray(value.any_of) && Object.keys(value).length === 1 ? { among: value.any_of } : undefined),
  set: (lesson, value) => void (lesson[key] = value.among ? { any_of: value.among } : value.one),
});

/** @type {Holds} */
const patient = {
  get({ patient: value }) {
    if (!isObject(value) || ('name' in value) === ('any_of' in value)) return undefined;
    return Array.isArray(value.any_of) ? { among: value.any_of } : { one: value.name };
  },
  set(lesson, value) {
    const { name, any_of, ...seed } = isObject(lesson.patient) ? lesson.patient : {};
    lesson.patient = value.among ? { any_of: value.among, ...seed } : { name: value.one, ...seed };
  },
};

/**
 * Builds the form into `holder` out of what the engine offers. Returns `{ fill(lesson), read(lesson), show(problems) }`.
 * @param {HTMLElement} holder
 * @param {Choices} offered
 * @param {() => void} changed
 */
export function lessonForm(holder, offered, changed) {
  const slots = problemSlots();
  const context = { slots, changed };
  const sides = /** @type {const} */ (['left', 'right']).map((name) => /** @type {const} */ ([name, t.sides[name]]));
  const par = /** @type {(keyof typeof t.pars)[]} */ (Object.keys(t.pars)).map((key) => textField(`par.${key}`, t.pars[key], { ...context, number: true, optional: true, placeholder: t.usual(offered.par[key]), narrow: true }));
  const parBox = make('fieldset', { class: 'field' }, make('legend', { class: 'label' }, t.par), make('p', { class: 'quiet' }, t.parHint), make('div', { class: 'field-row' }, ...par.map((field) => field.element)));
  slots.add('par', parBox, par.map((field) => field.input));

  /** @type {[name: keyof typeof t.sections, fields: Field[]][]} */
  const sections = [
    ['about', [
      textField('id', t.id, { ...context, hint: t.idHint }),
      textsField(context),
    ]],
    ['task', [
      radioField('mode', t.mode, /** @type {(keyof typeof t.modes)[]} */ (Object.keys(t.modes)).map((value) => /** @type {const} */ ([value, t.modes[value], t.modeNotes[value]])), context),
      listField('steps', t.steps, offered.steps.map((step) => /** @type {const} */ ([step.id, teach.stepName(step)])), context),
      partsField(offered.parts, context),
    ]],
    ['who', [
      drawField('patient', t.patient, offered.patients.map((p) => /** @type {const} */ ([p.name, t.patientLine(p)])), patient, context),
      seedField(context),
      drawField('level', t.level, offered.levels.map((level) => /** @type {const} */ ([level, level])), choice('level'), context),
      drawField('side', t.side, sides, choice('side'), context),
    ]],
    ['way', [
      selectField('approach', t.approach, optional(t.approaches), context),
      selectField('medium', t.medium, optional(t.media), context),
      selectField('exposures', t.exposures, entries(t.exposuresChoice).map(([key, text]) => /** @type {const} */ ([key, text, key === 'none' ? undefined : key === 'true'])), { ...context, note: t.exposuresNote }),
    ]],
    ['marks', [
      textField('pass_mark', t.pass, { ...context, number: true, narrow: true }),
      { element: parBox, fill: (lesson) => par.forEach((field) => field.fill(lesson)), put: (lesson) => par.forEach((field) => field.put(lesson)) },
      tolerancesField(offered.tolerances, context),
    ]],
  ];
  const fields = sections.flatMap(([, all]) => all);
  holder.append(...sections.map(([name, all]) =>
    make('section', { class: `panel part-${name}`, 'aria-labelledby': `section-${name}` },
      make('h2', { id: `section-${name}` }, t.sections[name]), ...all.map((field) => field.element))));

  return {
    fill: (/** @type {Loose} */ lesson) => fields.forEach((field) => field.fill(lesson)),
    /**
     * The lesson that the form shows; what no field is for comes from `lesson`.
     * @param {Loose} lesson
     */
    read(lesson) {
      const made = structuredClone(lesson);
      for (const field of fields) field.put(made);
      return made;
    },
    show: slots.show,
  };
}
