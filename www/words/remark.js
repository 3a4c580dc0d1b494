// What the engine says of an attempt by name and values (src/score/remark.rs), and what the needle meets, what contrast shows, cautions.
// Sentences in texts/…/remark.ftl.

import { pageSayer } from './language.js';
import { remark as english } from '../pkg/texts/en/remark.js';
import { needle, one, whole } from './needle.js';
import { view } from './view-page.js';

/**
 * @import { ContactKind, ContactReport, Label, Level, Remark } from '../pkg/values.js'
 */

const say = pageSayer('remark', english);

const partOf = (/** @type {Label} */ label) => say('part', { side: label.side ?? 'none', part: view.picture.part(label.part), level: label.level });
const contactText = (/** @type {{ level: Level | null, kind: ContactKind, mm: number }} */ m) => say(m.level ? 'metOf' : 'met', { kind: say(`kind-${m.kind}`), level: m.level, mm: whole(m.mm), sign: say(`sign-${m.kind}`) });

const missedOf = (/** @type {{ missed: Label[] }} */ r) => r.missed.map(partOf).join(', ');
/** Values that are counted, or whole by nature; other numbers are said to a tenth. */
const COUNTS = ['pictures', 'par_pictures', 'par_beam_s', 'all', 'left', 'blind', 'needles'];

/**
 * What a remark's own values become where the message wants something else than the number to a tenth or the word.
 * @type {{ [Id in Remark['id']]?: (r: Extract<Remark, { id: Id }>) => Record<string, string | number> }}
 */
const OWN = {
  move_table: (r) => ({ mm: whole(r.mm) }),
  view_off: (r) => ({ criterion: view.checks.criterion({ id: r.criterion, name: r.criterion }), finding: view.checks.sentence(r) }),
  mark_outside: (r) => ({ off: say(`off-${r.along}-${r.across}`) }),
  mark_behind_bone: (r) => ({ level: r.level ?? 'none' }),
  ap_at: (r) => ({ hour: needle.hour(r.hour) }),
  harm: (r) => ({ met: contactText(r), pushed: r.pushed_mm === null ? 'no' : 'yes', pushed_mm: one(r.pushed_mm ?? 0) }),
  parts_missed: (r) => ({ missed: missedOf(r) }),
  parts_left_missed: (r) => ({ missed: missedOf(r) }),
  hub_off: (r) => ({ of: say(`of-${r.off}`), to: say(`to-${r.to}`), n: Math.round(r.deg) }),
  tip_strayed: (r) => ({ to: say(`to-${r.way}`), hour: needle.hour(Math.max(1, Math.round(r.hour))) }),
  other_target: (r) => ({ wanted: say(`wanted-${r.wanted_side}`, { level: r.wanted_level }) }),
  economy_scaled: (r) => ({ percent: whole(r.percent) }),
  advance_by: (r) => ({ mm: whole(Math.max(1, r.mm)) }),
  draw_back_by: (r) => ({ mm: whole(Math.max(1, r.mm)) }),
};

/**
 * One remark.
 * @param {Remark} r
 */
function remark(r) {
  const values = Object.entries(r).map(([name, value]) => [name, typeof value === 'number' && !COUNTS.includes(name) ? one(value) : value]);
  const own = /** @type {((r: Remark) => Record<string, string | number>) | undefined} */ (OWN[r.id]);
  return say(r.id, { ...Object.fromEntries(values), ...own?.(r) });
}

/** The whole table: `one` remark, several as one text, what was met, what a pattern of contrast shows, the caution of a target. */
export const remarks = {
  one: remark,
  all: (/** @type {Remark[]} */ list) => list.map(remark).join(' '),
  contact: (/** @type {ContactReport} */ contact) => `${contactText({ ...contact, mm: contact.depth_mm })}.`,
  pattern: (/** @type {string} */ name) => say(`pattern-${name}`),
  caution: (/** @type {string} */ name) => say(`caution-${name}`),
  gate: (/** @type {string} */ id) => say(`gate-${id}`),
  /** What a dry aspirate is worth. */
  worth: () => say('aspirate-nothing-worth'),
};
