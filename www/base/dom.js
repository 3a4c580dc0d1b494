// Building blocks of every view: elements, text, choices. Attributes and classes only: the content policy bars inline styles.

/** A new HTML element with attributes and children. */
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === false || value === null || value === undefined) continue;
    element.setAttribute(name, value === true ? '' : value);
  }
  element.append(...children);
  return element;
}

/** A button that does something when it is pressed. Its class is `button` unless the attributes say otherwise. */
export function button(text, onPress, attributes = {}) {
  const element = make('button', { type: 'button', class: 'button', ...attributes }, text);
  element.addEventListener('click', onPress);
  return element;
}

/** Writes text only when it differs, so that a screen reader is not told the same thing again. */
export function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/** A row of radio buttons that looks like one segmented control. Returns a function that shows a value. */
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

/** A select with options. Returns a function that shows a value. */
export function choices(select, options, onPick) {
  select.replaceChildren(...options.map(([value, text]) => make('option', { value }, text)));
  select.onchange = () => onPick(select.value);
  return (value) => {
    select.value = value;
  };
}

/** The element of that id; a missing one is a mistake in the page, said at once. */
export function byId(id) {
  const element = document.getElementById(id);
  if (!element) throw new Error(`the page has no #${id}`);
  return element;
}
