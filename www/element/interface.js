// The element's interface, once: attributes and properties, methods, events, parts and custom properties. The element reads its
// attributes by this table; `node docs/element.mjs` makes docs/element.md and downbeam-view.d.ts from it.

import { FIRST_CATALOGUE } from '../engine/catalogue.js';
import { between, oneOf, onOff } from '../base/rules.js';

export const TAG = 'downbeam-view';

const { levels, range } = FIRST_CATALOGUE;

/**
 * @import { Level, Side } from '../pkg/values.js'
 * @import { Angles } from '../base/tenth.js'
 * @import { Rule } from '../base/rules.js'
 *
 * What an element's attributes say, by the names that they have in its state.
 * @typedef {object} Said
 * @property {string} patient
 * @property {Level} level
 * @property {Side} side
 * @property {'true_ap' | 'oblique' | 'lateral' | 'free'} view
 * @property {number} oblique_deg
 * @property {number} tilt_deg
 * @property {number} rotation_deg
 * @property {'given' | 'best'} start
 * @property {'bone-dark' | 'bone-white'} polarity
 * @property {boolean} outlines
 * @property {boolean} labels
 * @property {boolean} through
 * @property {boolean} controls
 * @property {'on' | 'ask' | 'off'} checks
 * @property {'dark' | 'light' | 'device'} theme
 * @property {'lazy' | 'eager'} loading
 * @property {string} integrity
 *
 * An element's state: what its attributes say, and the learner's own angles while the best view is shown.
 * @typedef {Said & { ownView: Angles | null }} ElementState
 *
 * An attribute: its name, that in the state, what it takes and what it is without.
 * @typedef {{ name: string, key: keyof Said, rule: Rule, fallback: string | number | boolean, says: string }} Attribute
 */

/**
 * On or off; the bare attribute is on, and what a script writes as true and false is understood.
 * @type {Rule}
 */
const flag = { ...onOff, read: (text) => onOff.read(text) ?? new Map([['', true], ['true', true], ['false', false]]).get(text) };
/**
 * A name that the engine knows or not.
 * @type {Rule}
 */
const named = { kind: 'named', read: (text) => text.trim() || undefined };
const DIGEST = /^sha(256-[A-Za-z\d+/]{43}=|384-[A-Za-z\d+/]{64}|512-[A-Za-z\d+/]{86}==)$/;
/**
 * Digests as in HTML's attribute of that name. Anything else would be passed over by the browser, and nothing checked.
 * @type {Rule}
 */
const digests = { kind: 'digest', read: (text) => (text.trim() === '' || text.trim().split(/\s+/).every((d) => DIGEST.test(d)) ? text.trim() : undefined) };

/**
 * Every attribute is a property of the same name.
 * @type {Attribute[]}
 */
export const ATTRIBUTES = [
  { name: 'patient', key: 'patient', rule: named, fallback: 'average', says: 'Who lies on the table: one of the patients of Downbeam’s own page by name, such as `small`, `thin-bones` or `curved`.' },
  { name: 'level', key: 'level', rule: oneOf(levels), fallback: 'L4', says: 'The level that is aimed at.' },
  { name: 'side', key: 'side', rule: oneOf(['left', 'right']), fallback: 'left', says: 'The patient’s side that is aimed at.' },
  { name: 'view', key: 'view', rule: oneOf(['true_ap', 'oblique', 'lateral', 'free']), fallback: 'oblique', says: 'The view that is to be found: its checks are shown, and meeting them all is `downbeam-reached`. With `free` nothing is checked.' },
  { name: 'oblique', key: 'oblique_deg', rule: between(...range.oblique_deg), fallback: 0, says: 'Degrees, positive: receptor to the patient’s left.' },
  { name: 'tilt', key: 'tilt_deg', rule: between(...range.tilt_deg), fallback: 0, says: 'Degrees, positive: cephalad.' },
  { name: 'rotation', key: 'rotation_deg', rule: between(...range.rotation_deg), fallback: 0, says: 'Image rotation, degrees, positive: clockwise.' },
  { name: 'start', key: 'start', rule: oneOf(['given', 'best']), fallback: 'given', says: 'Opens where `oblique` and `tilt` say, or at the best view that the machine reaches (for a figure).' },
  { name: 'polarity', key: 'polarity', rule: oneOf(['bone-dark', 'bone-white']), fallback: 'bone-dark', says: 'Grey values.' },
  { name: 'outlines', key: 'outlines', rule: flag, fallback: true, says: 'Outlines of the bones on the picture.' },
  { name: 'labels', key: 'labels', rule: flag, fallback: false, says: 'Names of the parts of the oblique view’s dog on the picture.' },
  { name: 'through', key: 'through', rule: flag, fallback: false, says: 'Through the beam: over the film the bones in 3D as the source sees them, with the rays through the end plate’s rims and the pedicle. A switch under the film says the same.' },
  { name: 'controls', key: 'controls', rule: flag, fallback: true, says: 'Sliders, the drag that turns, and what may be switched. Without them the element is a figure.' },
  { name: 'checks', key: 'checks', rule: oneOf(['on', 'ask', 'off']), fallback: 'on', says: 'How near the view is: always shown, shown when the learner asks, or never. Events and `report()` know it in any case.' },
  { name: 'theme', key: 'theme', rule: oneOf(['dark', 'light', 'device']), fallback: 'dark', says: 'The look; `device` follows the system’s colour scheme.' },
  { name: 'loading', key: 'loading', rule: oneOf(['lazy', 'eager']), fallback: 'lazy', says: 'Starts when it comes near the screen, or at once.' },
  { name: 'integrity', key: 'integrity', rule: digests, fallback: '', says: 'Digests of the engine’s wasm, as in HTML’s attribute of that name: another file is not run. All elements of a page share one engine, so all need the same.' },
];

/** What can be read beside them. */
export const READINGS = [
  { name: 'score', type: 'number | null', says: 'Score of the view, 0 to 1; `null` while there is no picture, and where nothing is checked.' },
  { name: 'reached', type: 'boolean', says: 'Whether all checks of the view are met, and not by showing the best view.' },
  { name: 'ready', type: 'Promise<void>', says: 'Resolves once the first picture is drawn.' },
  { name: 'problems', type: 'DownbeamProblem[]', says: 'What is wrong at present: what the element shows in its notice.' },
];

export const METHODS = [
  { name: 'best', takes: '', gives: 'Promise<DownbeamBest>', says: 'Turns to the best view that the machine reaches, or rejects where nothing is checked. It does not count as reached.' },
  { name: 'check', takes: '', gives: 'Promise<DownbeamState>', says: 'Shows the checks of the view as it stands, as the button does with `checks="ask"`.' },
  { name: 'restart', takes: '', gives: 'void', says: 'Back to what the attributes say.' },
  { name: 'report', takes: '', gives: 'Promise<DownbeamReport>', says: 'Everything that the engine says of the view; `downbeam view --json` gives the same.' },
  { name: 'png', takes: '', gives: 'Promise<Blob>', says: 'The picture as it stands, with its marks, what it is and the caution line, as a PNG.' },
];

export const STATICS = [
  { name: 'usage', takes: '', gives: 'DownbeamUsage', says: 'What all elements of the page use together.' },
];

export const EVENTS = [
  { name: 'downbeam-ready', detail: 'DownbeamState', says: 'The first picture is drawn (again after the element was removed and put back).' },
  { name: 'downbeam-change', detail: 'DownbeamState', says: 'The view is another one: at most once a frame while it turns (`settled: false`), and once when it has stood still for a third of a second (`settled: true`).' },
  { name: 'downbeam-reached', detail: 'DownbeamState', says: 'The view stands still and all its checks are met; again only after they were not. With `checks="ask"` only when asked. Not for the best view shown.' },
  { name: 'downbeam-error', detail: 'DownbeamProblem', says: 'Something is wrong; the sentence is shown in the element too, and the rest goes on working.' },
];

/** The shapes of what is handed out: `[field, type, what]`. */
export const SHAPES = {
  DownbeamState: [
    ['patient', 'string', 'as the attribute'],
    ['level', 'DownbeamLevel', 'as the attribute'],
    ['side', 'DownbeamSide', 'as the attribute'],
    ['view', 'DownbeamKind', 'as the attribute'],
    ['oblique', 'number', 'degrees'],
    ['tilt', 'number', 'degrees'],
    ['rotation', 'number', 'degrees'],
    ['score', 'number | null', '0 to 1'],
    ['reached', 'boolean', 'all checks met by turning'],
    ['shown', 'boolean', 'the best view is being shown'],
    ['settled', 'boolean', 'it stands still'],
    ['criteria', 'DownbeamCriterion[]', 'the checks of the view'],
  ],
  DownbeamCriterion: [
    ['id', 'string', 'such as `squared`'],
    ['name', 'string', 'in words, always English'],
    ['value', 'number | null', 'signed; `null` where the view does not define it'],
    ['unit', 'string', 'of value and tolerance'],
    ['score', 'number', '0 to 1'],
    ['sentence', 'string', 'what to move, and how far, always English'],
  ],
  DownbeamBest: [
    ['oblique', 'number', 'degrees'],
    ['tilt', 'number', 'degrees'],
    ['reached', 'boolean', 'whether the machine’s ranges reach full marks'],
  ],
  DownbeamProblem: [
    ['about', "'attribute' | 'engine' | 'integrity' | 'style'", 'what it is about'],
    ['attribute', 'string | null', 'its name'],
    ['value', 'string | null', 'what was found there'],
    ['sentence', 'string', 'what was wrong, and what is allowed'],
  ],
  DownbeamUsage: [
    ['views', 'number', 'elements with a picture'],
    ['patients', 'string[]', 'patients in memory; elements with the same patient share one'],
    ['memory_bytes', 'number', 'the engine’s memory; it grows and is used again, but never shrinks'],
  ],
};

/** What a page can dress with `::part(…)`. */
export const PARTS = [
  { name: 'frame', says: 'everything' },
  { name: 'title', says: 'level, side and view' },
  { name: 'notice', says: 'what is wrong' },
  { name: 'film', says: 'the picture' },
  { name: 'tools', says: 'the switches under it' },
  { name: 'key', says: 'what the outlines mean' },
  { name: 'turns', says: 'the sliders' },
  { name: 'checks', says: 'how near the view is' },
  { name: 'caution', says: 'the caution line, which has to stay readable' },
];

/** Custom properties (style/tokens.css), set on the element or above it. */
export const PROPERTIES = [
  { name: 'bg', says: 'ground, behind everything' },
  { name: 'panel', says: 'ground of the checks' },
  { name: 'raised', says: 'ground of buttons and fields' },
  { name: 'line', says: 'thin lines and empty tracks' },
  { name: 'edge', says: 'edges of buttons and fields, at least 3 : 1 on `raised`' },
  { name: 'text', says: 'text' },
  { name: 'muted', says: 'quieter text, at least 4.5 : 1 on `bg` and `panel`' },
  { name: 'accent', says: 'thumbs, bars, values' },
  { name: 'on-accent', says: 'text on `accent`' },
  { name: 'film', says: 'the film where nothing is on it' },
  { name: 'font', says: 'typeface' },
  { name: 'font-size', says: 'size from which all others are worked out; 1rem otherwise' },
  { name: 'radius', says: 'rounding of corners' },
];
