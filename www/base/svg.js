// Elements of a drawing.

const SVG = 'http://www.w3.org/2000/svg';

/**
 * An SVG element with its attributes and what it holds: elements or texts.
 * @template {keyof SVGElementTagNameMap} T
 * @param {T} tag
 * @param {Record<string, string | number>} attributes
 * @param {...(Node | string)} children
 * @returns {SVGElementTagNameMap[T]}
 */
export function shape(tag, attributes = {}, ...children) {
  const element = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
  element.append(...children);
  return element;
}
