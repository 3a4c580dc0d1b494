// What the page's state holds, and what its parts pass around: types, and the first state.

import { startPosition } from './start.js';
import { createStore } from './store.js';
import { endsOwnView, PATIENT, PLACE, TARGET } from './positioning.js';

/**
 * @import { Angles } from '../base/tenth.js'
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { BeamChoices, DrawnEntry, ExerciseEntry, Label, LessonEntry, Level, PatientEntry, Ranges, Report, Standing, ViewKind } from '../pkg/values.js'
 * @import { Place, Positioning } from './positioning.js'
 * @import { Store } from './store.js'
 *
 * What can be chosen: the engine's own lists, or before it is there the page's.
 * @typedef {{ levels: Level[], patients: PatientEntry[], range: Ranges, beam: BeamChoices }} Catalogue
 *
 * What the beam is set to: pulses a second, the low-dose mode, the share of the field that each pair of shutters opens, the magnification mode.
 * @typedef {{ pulses_per_s: number, low_dose: boolean, open: [number, number], magnification: number }} Beam
 *
 * `lesson` names the lesson that runs and which time; `start` is the number of the start position; `view` the view that is worked at; `ownView`
 * the learner's own angles while the best view is shown; `contrast` and `brightness` are percent.
 * @typedef {Positioning & {
 *   lesson: string, lessons: boolean, start: number, contrast: number, brightness: number, view: ViewKind, selfTest: boolean,
 *   ownView: Angles | null, boneDark: boolean, outlines: boolean, labels: boolean, byExposure: boolean, beam: Beam,
 *   injection: boolean, guided: boolean,
 * }} PageState
 *
 * The lesson that runs: its file, what the engine says of it, and the log to go on with (until that was done).
 * @typedef {{
 *   json: string, info: LessonEntry, drawn: DrawnEntry, resume: string[] | null, asks: Set<string>, assessment: boolean, wantsMark: boolean,
 *   openApproach: boolean, standing: (log: string[]) => Standing, naming: () => ExerciseEntry | null,
 *   hintPart: () => string, hintDone: string, hintOpen: string, noUndo: (finished: boolean | undefined) => boolean,
 *   lit: () => Label | null, verdict: (answer: ExerciseEntry) => string,
 * }} RunningLesson
 *
 * What the parts of the page share. `room` and `report` are null while there is no engine.
 * @typedef {{
 *   catalogue: Catalogue, state: PageState, subscribe: Store<PageState>['subscribe'], room: TeachingRoom | null, report: Report | null,
 *   lesson: RunningLesson | null, change: (patch: Partial<PageState>) => void, free: (to: Partial<Place>) => boolean, touch: () => void, hold: (on: boolean) => void, check: () => void,
 *   toggleBest: () => void,
 * }} App
 */

/** What a case is: another one begins everything again. */
export const CASE = /** @type {const} */ ([...PATIENT, ...TARGET, 'lesson']);

/**
 * The page's store. Where the case or the place changes, the learner's own view is no longer what was left for the best one.
 * @param {Pick<PageState, 'boneDark' | 'outlines' | 'beam'>} kept what the learner has chosen before, and the beam
 */
export function pageStore(kept) {
  /** @type {PageState} */
  const first = {
    patient: 'average', seed: null, changed: '', level: 'L4', side: 'left', lesson: '', lessons: false, start: 1, ...startPosition(1),
    rotation_deg: 0, table_x_mm: 0, table_y_mm: 0, table_z_mm: 0, contrast: 100, brightness: 0, view: 'true_ap', selfTest: false, ownView: null,
    labels: false, byExposure: false, injection: false, guided: true, ...kept,
  };
  return createStore(first, endsOwnView([...CASE, ...PLACE]));
}
