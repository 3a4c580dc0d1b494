// Building blocks of every view: elements, text, choices. Attributes and classes only: the content policy bars inline styles.

/**
 * What an attribute may be given: `true` is the bare attribute, and nothing is no attribute.
 * @typedef {Record<string, string | number | boolean | null | undefined>} Attributes
 */

/**
 * A new HTML element with attributes and children.
 * @template {keyof HTMLElementTagNameMap} T
 * @param {T} tag
 * @param {Attributes} attributes
 * @param {...(Node | string)} children
 * @returns {HTMLElementTagNameMap[T]}
 */
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === false || value === null || value === undefined) continue;
    element.setAttribute(name, value === true ? '' : String(value));
  }
  element.append(...children);
  return element;
}

/**
 * A width on screen in the screen's own pixels, one at least.
 * @param {number} css_px
 */
export const screenPixels = (css_px) => Math.max(1, Math.round(css_px * devicePixelRatio));

/**
 * A button that does something when it is pressed. Its class is `button` unless the attributes say otherwise.
 * @param {string} text
 * @param {(event: MouseEvent) => void} onPress
 * @param {Attributes} attributes
 */
export function button(text, onPress, attributes = {}) {
  const element = make('button', { type: 'button', class: 'button', ...attributes }, text);
  element.addEventListener('click', onPress);
  return element;
}

/**
 * Writes text only when it differs, so that a screen reader is not told the same thing again.
 * @param {Node} element
 * @param {string} text
 */
export function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/**
 * A row of radio buttons that looks like one segmented control. Returns a function that shows a value.
 * @template {string} V
 * @param {HTMLElement} holder
 * @param {string} name
 * @param {readonly (readonly [V, string])[]} options
 * @param {(value: V) => void} onPick
 * @returns {(value: string) => void}
 */
export function segments(holder, name, options, onPick) {
  holder.replaceChildren();
  const inputs = options.map(([value, text]) => {
    const input = make('input', { type: 'radio', name, value, id: `${name}-${value}` });
    // A short name stays on one line; a long one may have two.
    holder.append(make('label', { class: 'segment', for: input.id }, input, make('span', {}, text.length < 10 ? text.replaceAll(' ', '\u00a0') : text)));
    input.addEventListener('change', () => onPick(value));
    return input;
  });
  return (value) => {
    for (const input of inputs) input.checked = input.value === value;
  };
}

/**
 * A select with options, each its value and its text. Returns a function that shows a value.
 * @param {HTMLSelectElement} select
 * @param {readonly (readonly [string | number, string])[]} options
 * @param {(value: string) => void} onPick
 * @returns {(value: string) => void}
 */
export function choices(select, options, onPick) {
  select.replaceChildren(...options.map(([value, text]) => make('option', { value }, text)));
  select.onchange = () => onPick(select.value);
  return (value) => {
    select.value = value;
  };
}

/**
 * The element of that id; a missing one, or one of another kind than `kind`, is a mistake in the page, said at once.
 * @template {HTMLElement} [E=HTMLElement]
 * @param {string} id
 * @param {new () => E} [kind] such as `HTMLInputElement`; anything else, such as an index of `map`, is none
 * @returns {E}
 */
export function byId(id, kind) {
  const element = document.getElementById(id);
  if (!element || (typeof kind === 'function' && !(element instanceof kind))) throw new Error(`the page has no ${kind?.name ?? ''}#${id}`);
  return /** @type {E} */ (element);
}

/**
 * The first element within `root` that a selector finds; a missing one is a mistake in the page, said at once.
 * @template {Element} [E=HTMLElement]
 * @param {ParentNode} root
 * @param {string} selector
 * @param {new () => E} [kind]
 * @returns {E}
 */
export function within(root, selector, kind) {
  const element = root.querySelector(selector);
  if (!element || (kind && !(element instanceof kind))) throw new Error(`there is no ${kind?.name ?? ''} '${selector}' here`);
  return /** @type {E} */ (element);
}

/**
 * The 2D pen of a canvas.
 * @param {HTMLCanvasElement} canvas
 * @param {CanvasRenderingContext2DSettings} [settings]
 */
export function penOf(canvas, settings) {
  const pen = canvas.getContext('2d', settings);
  if (!pen) throw new Error('the browser gives no 2D canvas');
  return pen;
}
