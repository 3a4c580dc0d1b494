// Terms of the field, explained once where they are first met: in what is to be done now the first place of a term is dotted, and a press opens what it
// means. Who has opened it knows it; it is dotted no more. Loaded after the first picture.

import { onceQuiet } from '../base/frame.js';
import { byId, make, say } from '../base/dom.js';
import { store, stored } from '../base/storage.js';
import { terms } from '../words/terms.js';

/** What is read for them: the step in hand, what to look for, the hint. */
const PLACES = '#step-list [data-phase="current"] .step-body p, #step-said, #stage-list [data-open] .stage-act, #needle-hint-text';
const KNOWN = 'downbeam.terms';
/** How long the words have not changed before they are gone through: while the C-arm turns they change with every picture. */
const QUIET_ms = 150;

const known = new Set((stored(KNOWN) ?? '').split(' ').filter(Boolean));

/** The first of the terms in a text that is not in `but`: `{ term, at, word }`, or null. @param {string} text @param {Set<string>} but */
export function firstTerm(text, but) {
  /** @type {{ term: (typeof terms)[number], at: number, word: string } | null} */
  let first = null;
  for (const term of terms) {
    if (but.has(term.name)) continue;
    for (const word of term.words) {
      const found = new RegExp(`(?<!\\p{L})${word}(?!\\p{L})`, 'iu').exec(text);
      if (!found || (first && found.index >= first.at)) continue;
      first = { term, at: found.index, word: found[0] };
      break;
    }
  }
  return first;
}

/** Marks them from now on. `wanted()`: whether terms may be explained. @param {() => boolean} wanted */
export function explainTerms(wanted) {
  const note = make('div', { class: 'term-note', id: 'term-note', popover: 'auto', role: 'note' });
  byId('side').append(note);
  /** @type {HTMLButtonElement | null} */
  let open = null;

  /** @param {HTMLButtonElement} press @param {(typeof terms)[number]} term */
  function toggle(press, term) {
    if (open === press) return note.hidePopover();
    say(note, term.means);
    note.showPopover();
    open = press;
    press.setAttribute('aria-expanded', 'true');
    const [box, own] = [press.getBoundingClientRect(), note.getBoundingClientRect()];
    note.style.left = `${Math.max(8, Math.min(innerWidth - own.width - 8, box.left))}px`;
    note.style.top = `${box.bottom + own.height + 8 < innerHeight ? box.bottom + 4 : Math.max(8, box.top - own.height - 4)}px`;
    say(byId('status'), term.means);
    known.add(term.name);
    store(KNOWN, [...known].join(' '));
  }
  note.addEventListener('toggle', (event) => {
    if (/** @type {ToggleEvent} */ (event).newState === 'open') return;
    open?.setAttribute('aria-expanded', 'false');
    open = null;
    mark();
  });

  /** @param {Text} node @param {Set<string>} explained */
  function markIn(node, explained) {
    const found = firstTerm(node.data, explained);
    if (!found) return;
    explained.add(found.term.name);
    const press = make('button', { type: 'button', class: 'term', 'aria-expanded': 'false' }, found.word);
    press.addEventListener('click', () => toggle(press, found.term));
    const rest = node.splitText(found.at);
    rest.data = rest.data.slice(found.word.length);
    rest.before(press);
    markIn(rest, explained);
  }

  /** A mark that no longer holds becomes text again. @param {Element} press */
  function unmark(press) {
    const parent = press.parentElement;
    press.replaceWith(press.textContent ?? '');
    parent?.normalize();
  }

  function mark() {
    if (open) return;
    watch.disconnect();
    const focused = document.activeElement;
    for (const press of document.querySelectorAll('.term')) if (press !== focused) unmark(press);
    const explained = new Set(known);
    if (focused?.matches('.term')) for (const { name, words } of terms) if (words.includes(focused.textContent?.toLowerCase() ?? '')) explained.add(name);
    if (wanted()) {
      for (const place of document.querySelectorAll(PLACES)) {
        if (!place.checkVisibility()) continue;
        for (const node of [...place.childNodes]) if (node instanceof Text) markIn(node, explained);
      }
    }
    for (const id of ['steps', 'needle']) watch.observe(byId(id), { childList: true, subtree: true, characterData: true, attributes: true, attributeFilter: ['hidden', 'data-phase', 'data-open'] });
  }
  const soon = onceQuiet(mark, QUIET_ms);
  const watch = new MutationObserver(soon);
  mark();
}
