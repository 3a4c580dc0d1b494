// What is said through the beam, by the page and by the course element. Sentences in texts/…/through.ftl.

/**
 * A distance to a tenth of a mm below 10 mm, else whole, as a number.
 * @param {number} mm
 */
const near = (mm) => (mm < 10 ? Math.round(mm * 10) / 10 : Math.round(mm));

/**
 * The table of a language.
 * @param {import('./sentences.js').Sayer<typeof import('../pkg/texts/en/through.js').through>} say a sayer of its `through` part
 */
export function throughWords(say) {
  return say.tree({
    /** Names of the rays. */
    names: { front: say('front'), back: say('back'), pedicle: say('pedicle'), tip: say('tip') },
    /** `squared`: how the end plate lies, in the words of the checks. @type {(level: string, squared: string, tip_mm: number | null) => string} */
    sentence: (level, squared, tip_mm) => say('sentence', { level, squared, tip: tip_mm === null ? '' : say('apart', { mm: near(tip_mm) }) }).trim(),
    /** @type {(swing: { right_deg: number, up_deg: number }) => string} */
    swung: ({ right_deg, up_deg }) => say('swung', { right: Math.round(Math.abs(right_deg)), side: right_deg < 0 ? 'left' : 'right', up: Math.round(Math.abs(up_deg)), way: up_deg < 0 ? 'down' : 'up' }),
    /** @type {(why: string) => string} */
    failed: (why) => say('failed', { why }),
  });
}
