// Elements of a drawing.

const SVG = 'http://www.w3.org/2000/svg';

/** An SVG element with its attributes and what it holds: elements or texts. */
export function shape(tag, attributes = {}, ...children) {
  const element = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  element.append(...children);
  return element;
}
