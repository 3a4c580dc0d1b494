// Made by `node docs/element.mjs` from interface.js. Do not edit.

export type DownbeamLevel = 'L1' | 'L2' | 'L3' | 'L4' | 'L5' | 'S1';
export type DownbeamSide = 'left' | 'right';
export type DownbeamKind = 'true_ap' | 'oblique' | 'lateral' | 'free';

/** What the engine says of a view; `downbeam view --json` gives the same. */
export interface DownbeamReport {
  readonly criteria: readonly DownbeamCriterion[];
  readonly [entry: string]: unknown;
}

export interface DownbeamState {
  /** as the attribute */
  readonly patient: string;
  /** as the attribute */
  readonly level: DownbeamLevel;
  /** as the attribute */
  readonly side: DownbeamSide;
  /** as the attribute */
  readonly view: DownbeamKind;
  /** degrees */
  readonly oblique: number;
  /** degrees */
  readonly tilt: number;
  /** degrees */
  readonly rotation: number;
  /** 0 to 1 */
  readonly score: number | null;
  /** all checks met by turning */
  readonly reached: boolean;
  /** the best view is being shown */
  readonly shown: boolean;
  /** it stands still */
  readonly settled: boolean;
  /** the checks of the view */
  readonly criteria: DownbeamCriterion[];
}

export interface DownbeamCriterion {
  /** such as `squared` */
  readonly id: string;
  /** in words, always English */
  readonly name: string;
  /** signed; `null` where the view does not define it */
  readonly value: number | null;
  /** of value and tolerance */
  readonly unit: string;
  /** 0 to 1 */
  readonly score: number;
  /** what to move, and how far, always English */
  readonly sentence: string;
}

export interface DownbeamBest {
  /** degrees */
  readonly oblique: number;
  /** degrees */
  readonly tilt: number;
  /** whether the machine’s ranges reach full marks */
  readonly reached: boolean;
}

export interface DownbeamProblem {
  /** what it is about */
  readonly about: 'attribute' | 'engine' | 'integrity' | 'style';
  /** its name */
  readonly attribute: string | null;
  /** what was found there */
  readonly value: string | null;
  /** what was wrong, and what is allowed */
  readonly sentence: string;
}

export interface DownbeamUsage {
  /** elements with a picture */
  readonly views: number;
  /** patients in memory; elements with the same patient share one */
  readonly patients: string[];
  /** the engine’s memory; it grows and is used again, but never shrinks */
  readonly memory_bytes: number;
}

/** `<downbeam-view>`. A property that does not fit changes nothing and is told by `downbeam-error`. */
export class DownbeamView extends HTMLElement {
  /** What all elements of the page use together. */
  static usage(): DownbeamUsage;
  /** Who lies on the table: one of the patients of Downbeam’s own page by name, such as `small`, `thin-bones` or `curved`. */
  patient: string;
  /** The level that is aimed at. */
  level: DownbeamLevel;
  /** The patient’s side that is aimed at. */
  side: DownbeamSide;
  /** The view that is to be found: its checks are shown, and meeting them all is `downbeam-reached`. With `free` nothing is checked. */
  view: DownbeamKind;
  /** Degrees, positive: receptor to the patient’s left. */
  oblique: number;
  /** Degrees, positive: cephalad. */
  tilt: number;
  /** Image rotation, degrees, positive: clockwise. */
  rotation: number;
  /** Opens where `oblique` and `tilt` say, or at the best view that the machine reaches (for a figure). */
  start: 'given' | 'best';
  /** Grey values. */
  polarity: 'bone-dark' | 'bone-white';
  /** Outlines of the bones on the picture. */
  outlines: boolean;
  /** Names of the parts of the oblique view’s dog on the picture. */
  labels: boolean;
  /** Through the beam: over the film the bones in 3D as the source sees them, with the rays through the end plate’s rims and the pedicle. A switch under the film says the same. */
  through: boolean;
  /** Sliders, the drag that turns, and what may be switched. Without them the element is a figure. */
  controls: boolean;
  /** How near the view is: always shown, shown when the learner asks, or never. Events and `report()` know it in any case. */
  checks: 'on' | 'ask' | 'off';
  /** The look; `device` follows the system’s colour scheme. */
  theme: 'dark' | 'light' | 'device';
  /** Starts when it comes near the screen, or at once. */
  loading: 'lazy' | 'eager';
  /** Digests of the engine’s wasm, as in HTML’s attribute of that name: another file is not run. All elements of a page share one engine, so all need the same. */
  integrity: string;
  /** Score of the view, 0 to 1; `null` while there is no picture, and where nothing is checked. */
  readonly score: number | null;
  /** Whether all checks of the view are met, and not by showing the best view. */
  readonly reached: boolean;
  /** Resolves once the first picture is drawn. */
  readonly ready: Promise<void>;
  /** What is wrong at present: what the element shows in its notice. */
  readonly problems: DownbeamProblem[];
  /** Turns to the best view that the machine reaches, or rejects where nothing is checked. It does not count as reached. */
  best(): Promise<DownbeamBest>;
  /** Shows the checks of the view as it stands, as the button does with `checks="ask"`. */
  check(): Promise<DownbeamState>;
  /** Back to what the attributes say. */
  restart(): void;
  /** Everything that the engine says of the view; `downbeam view --json` gives the same. */
  report(): Promise<DownbeamReport>;
  /** The picture as it stands, with its marks, what it is and the caution line, as a PNG. */
  png(): Promise<Blob>;
}

declare global {
  interface HTMLElementTagNameMap {
    'downbeam-view': DownbeamView;
  }
  interface GlobalEventHandlersEventMap {
    'downbeam-ready': CustomEvent<DownbeamState>;
    'downbeam-change': CustomEvent<DownbeamState>;
    'downbeam-reached': CustomEvent<DownbeamState>;
    'downbeam-error': CustomEvent<DownbeamProblem>;
  }
}
