// An element's bones in 3D through the beam, on a canvas over its film: the drawing and its words are fetched when they are first asked for.

import { screenPixels } from '../base/dom.js';
import { sayer } from '../words/sentences.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { Report } from '../pkg/values.js'
 *
 * @typedef {{ drawing: ReturnType<typeof import('../through/through.js').throughDrawing>, words: ReturnType<typeof import('../words/through.js').throughWords> }} There
 */

/** What brings the words of a language besides English. */
const TABLES = {
  de: () => import('../pkg/texts/de/through.js'),
  es: () => import('../pkg/texts/es/through.js'),
};

/** @param {string} tag */
async function bring(tag) {
  const [{ throughDrawing }, { throughWords }, english, own] = await Promise.all([
    import('../through/through.js'), import('../words/through.js'), import('../pkg/texts/en/through.js'),
    // What a language lacks is said in English.
    TABLES[/** @type {keyof typeof TABLES} */ (tag)]?.().catch(() => null) ?? null,
  ]);
  return { drawing: throughDrawing(), words: throughWords(sayer(tag, own?.through ?? english.through, english.through)) };
}

/**
 * Draws on `canvas`, which stands in `holder`. `tag` is the element's language; `come()` once it can draw; `failed(error)`.
 * @param {HTMLCanvasElement} canvas
 * @param {HTMLElement} holder
 * @param {string} tag
 * @param {{ come: () => void, failed: (error: unknown) => void }} act
 */
export function elementBones(canvas, holder, tag, { come, failed }) {
  /** @type {There | null} */
  let there = null;
  let coming = false;
  const pen = canvas.getContext('2d');

  function fetched() {
    if (coming) return;
    coming = true;
    bring(tag).then((found) => {
      there = found;
      come();
    }, (error) => {
      coming = false;
      failed(error);
    });
  }

  return {
    /** Whether they stand over the film. */
    shown: () => holder.dataset.through === 'on',
    /**
     * Shows them, or only the film. Returns what is to be said of it: `squared` is how the end plate lies, in words.
     * @param {boolean} on
     * @param {{ room: TeachingRoom | null, name: string }} stand
     * @param {Report} report
     * @param {string} squared
     */
    show(on, stand, report, squared) {
      if (!on) delete holder.dataset.through;
      if (on && !there) fetched();
      if (!on || !there || !stand.room || !pen) return '';
      const pixels = screenPixels(holder.clientWidth || 512);
      if (canvas.width !== pixels) canvas.width = canvas.height = pixels;
      const swing = { right_deg: 0, up_deg: 0 };
      const { tip_mm } = there.drawing.draw(pen, { room: stand.room, report, who: stand.name, table_mm: [0, 0, 0], needle: null, swing }, { names: there.words.names, scale: pixels / (holder.clientWidth || 512) });
      holder.dataset.through = 'on';
      return there.words.sentence(report.level, squared, tip_mm);
    },
  };
}
