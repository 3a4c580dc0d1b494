// The next action as one button, where a guided learner has a needle in hand: what the engine's hint says, done by the same actions as the other
// buttons. Steps that have a strong button of their own keep it.

import { notchHour } from './hand.js';
import { isSideways } from '../state/positioning.js';
import { gantryLink } from '../words/gantry.js';
import { texts } from '../words/injection.js';

/**
 * @import { Action, ProcedureReport, Remark, ViewKind } from '../pkg/values.js'
 * @import { HandActs } from './hand.js'
 *
 * @typedef {HandActs & { do: (action: Action) => unknown, finish: () => void, table: (way: string, mm?: number) => void }} NextActs
 */

/**
 * Towards the middle: first the view that shows the way, then the move.
 * @param {Remark} hint
 * @param {NextActs} act
 * @param {import('../state/positioning.js').Place} state
 */
function tableAct(hint, act, state) {
  if (hint.id !== 'move_table') return null;
  const wanted = hint.way === 'up' || hint.way === 'down' ? 'lateral' : 'true_ap';
  const stands = isSideways(state) ? 'lateral' : 'true_ap';
  if (wanted !== stands) return { text: texts.needle.next.look(wanted), does: () => act.view(wanted) };
  return { text: gantryLink.table.to(hint.way, hint.mm), does: () => act.table(hint.way, hint.mm) };
}

const STAGES = ['align', 'steer', 'depth', 'contrast'];
/** As far as one press goes in, mm: then one looks. A choice, no source. */
const PUSH_MM = 5;
/** The hub is seen about so many times as far off as it is. Found by trying; a second press puts right what the first has left. */
const SEEN_TIMES = 1.45;
const TENTHS_PER_RADIAN = 573;
/** With a beam steeper to the needle than this the hub cannot be put over the tip, degrees. A choice, no source. */
const BESIDE_DEG = 30;

const halves = (/** @type {number} */ mm) => Math.max(0.5, Math.round(2 * mm) / 2);

/**
 * `{ text, does() }` for the engine's `report` in this stage, or null. `act` as the keys have it.
 * @param {string} stage
 * @param {ProcedureReport} report
 * @param {NextActs} act
 * @param {import('../state/positioning.js').Place} state
 * @returns {{ text: string, does: () => void } | null}
 */
export function nextAct(stage, report, act, state) {
  const { hint, needle } = report;
  if (stage === 'centre') return tableAct(hint, act, state);
  if (!STAGES.includes(stage) || !needle) return null;
  const t = texts.needle;
  const push = (/** @type {number} */ mm) => ({ text: mm > 0 ? t.hand.advanceBy(mm) : t.hand.withdrawBy(-mm), does: () => act.push(mm) });
  const look = (/** @type {ViewKind} */ view) => ({ text: t.next.look(view), does: () => act.view(view) });
  const advance = (/** @type {number} */ mm) => push(Math.min(PUSH_MM, halves(mm)));
  switch (hint.id) {
    case 'hub_off': {
      if (needle.coaxial.angle_deg > BESIDE_DEG) return look('oblique');
      const [right, up] = needle.coaxial.hub_offset_mm.map((mm) => Math.round((-mm / (SEEN_TIMES * needle.outside_mm)) * TENTHS_PER_RADIAN));
      return { text: t.next.hub, does: () => act.hub(right, up) };
    }
    case 'tip_strayed': {
      const by = ((((Math.round(30 * hint.hour) - Math.round(30 * notchHour(needle))) % 360) + 540) % 360) - 180;
      return Math.abs(by) > 20 ? { text: t.next.notch(Math.max(1, Math.round(hint.hour))), does: () => act.roll(by) } : advance(3);
    }
    case 'advance':
      return advance(PUSH_MM);
    case 'advance_by':
      return advance(hint.mm);
    case 'draw_back_by':
      return push(-halves(hint.mm));
    case 'on_bone':
    case 'pain_answer':
    case 'clear_fluid_answer':
    case 'blood_answer':
    case 'spread_wrong':
      return push(-PUSH_MM);
    case 'look_in':
      return look(hint.view);
    case 'aspirate_now':
      return { text: t.contrast.aspirate, does: () => act.do({ do: 'aspirate' }) };
    case 'inject_now':
      return { text: t.contrast.inject(0.5), does: () => act.do({ do: 'inject', volume: 50 }) };
    case 'spread_good':
      return { text: t.stage.finish, does: () => act.finish() };
    default:
      return stage === 'align' && needle.depth_mm < 15 ? advance(PUSH_MM) : null;
  }
}
