// Fluent messages at work. `downbeam build` makes a table of each file in texts/: a message is a text, or a function of a formatter and
// its values. What a language lacks is said in English.

/**
 * A value that a message may hold.
 * @typedef {string | number | boolean | null | undefined} Value
 *
 * @typedef {{ n: (value: Value, options?: Intl.NumberFormatOptions) => string, pick: (value: Value, variants: Record<string, () => string>, otherwise: string) => string }} Formatter
 *
 * A language's messages of a part, as the build makes them: a text, or what makes one of values.
 * @typedef {Record<string, string | ((f: Formatter, values: Record<string, Value>) => string)>} Table
 */

/**
 * Where a message without values stands in the tree: `case-heading` is `case.heading`.
 * @template {string} Name
 * @typedef {Name extends `${infer First}-${infer Rest}` ? { [K in First]: Placed<Rest> }
 *   : Name extends `${infer First}.${infer Rest}` ? { [K in First]: Placed<Rest> } : { [K in Name]: string }} Placed
 */

/**
 * @template U
 * @typedef {(U extends unknown ? (value: U) => void : never) extends (value: infer All) => void ? All : never} AllOf
 */

/**
 * The texts of a part that want no values.
 * @template T
 * @typedef {AllOf<{ [K in keyof T & string]: T[K] extends string ? Placed<K> : never }[keyof T & string]>} Tree
 */

/**
 * How a language writes numbers and chooses between the variants of a message.
 * @param {string} tag
 * @returns {Formatter}
 */
function formatter(tag) {
  const plural = new Intl.PluralRules(tag);
  /** @type {Map<string, Intl.NumberFormat>} */
  const formats = new Map();
  /** @param {Intl.NumberFormatOptions} options */
  const format = (options) => {
    const key = JSON.stringify(options);
    const made = formats.get(key) ?? new Intl.NumberFormat(tag, options);
    formats.set(key, made);
    return made;
  };
  return {
    n: (value, options) => (typeof value === 'number' ? format({ useGrouping: false, ...options }).format(value) : String(value)),
    pick(value, variants, otherwise) {
      const key = typeof value === 'number' && !Object.hasOwn(variants, value) ? plural.select(value) : String(value);
      return (Object.hasOwn(variants, key) ? variants[key] : variants[otherwise])();
    },
  };
}

/**
 * @template {Table} E
 * @typedef {ReturnType<typeof sayer<E>>} Sayer
 */

/**
 * What says the messages of a part: `say(name, values)`. `table` is the language's, `english` what stands in for missing ones.
 * `say.tag` is the language, `say.number(value, digits)` a number with so many decimals.
 * @template {Table} E
 * @param {string} tag
 * @param {Table} table
 * @param {E} english
 */
export function sayer(tag, table, english) {
  const own = { table, format: formatter(tag) };
  const other = { table: english, format: formatter('en') };
  /**
   * @param {string} name
   * @param {Record<string, Value>} [values]
   */
  const say = (name, values = {}) => {
    const { table: from, format } = Object.hasOwn(table, name) ? own : other;
    if (!Object.hasOwn(from, name)) throw new Error(`no text '${name}'`);
    const message = from[name];
    return typeof message === 'string' ? message : message(format, values);
  };
  say.tag = tag;
  // Rounded before Intl does it: that goes by the shortest decimals and says 0.2 of 0.15, which in binary is a little less.
  /**
   * @param {number} value
   * @param {number} digits
   */
  say.number = (value, digits) => own.format.n(Number(value.toFixed(digits)), { minimumFractionDigits: digits, maximumFractionDigits: digits });
  /**
   * All messages without values, each where its name puts it (`case-heading` is `case.heading`), and `functions` beside them.
   * @template {object} T
   * @param {T} functions
   */
  say.tree = (functions) => {
    /** @type {Branch} */
    const tree = {};
    for (const [name, message] of Object.entries(english)) if (typeof message === 'string') place(tree, name.split(/[-.]/), say(name));
    return /** @type {Tree<E> & T} */ (merge(tree, functions));
  };
  return say;
}

/**
 * A part of the tree while it is made.
 * @typedef {{ [key: string]: unknown }} Branch
 *
 * @param {unknown} value
 * @returns {value is Branch}
 */
const isBranch = (value) => value !== null && typeof value === 'object' && !Array.isArray(value);

/**
 * @param {Branch} tree
 * @param {string[]} path
 * @param {string} text
 */
function place(tree, [key, ...rest], text) {
  if (rest.length === 0) tree[key] = text;
  else place(branchAt(tree, key), rest, text);
}

/**
 * @param {Branch} tree
 * @param {object} functions
 */
function merge(tree, functions) {
  for (const [key, value] of Object.entries(functions)) tree[key] = isBranch(value) ? merge(branchAt(tree, key), value) : value;
  return tree;
}

/**
 * @param {Branch} tree
 * @param {string} key
 */
function branchAt(tree, key) {
  const known = tree[key];
  const branch = isBranch(known) ? known : {};
  tree[key] = branch;
  return branch;
}
