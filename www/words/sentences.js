// Fluent messages at work. `downbeam build` makes a table of each file in texts/: a message is a text, or a function of a formatter and
// its values. What a language lacks is said in English.

/** How a language writes numbers and chooses between the variants of a message. */
function formatter(tag) {
  const plural = new Intl.PluralRules(tag);
  const formats = new Map();
  const format = (options) => {
    const key = JSON.stringify(options);
    if (!formats.has(key)) formats.set(key, new Intl.NumberFormat(tag, options));
    return formats.get(key);
  };
  return {
    n: (value, options) => (typeof value === 'number' ? format({ useGrouping: false, ...options }).format(value) : String(value)),
    pick(value, variants, otherwise) {
      const key = typeof value === 'number' && !Object.hasOwn(variants, value) ? plural.select(value) : value;
      return (Object.hasOwn(variants, key) ? variants[key] : variants[otherwise])();
    },
  };
}

/**
 * What says the messages of a part: `say(name, values)`. `table` is the language's, `english` what stands in for missing ones.
 * `say.tag` is the language, `say.number(value, digits)` a number with so many decimals.
 */
export function sayer(tag, table, english) {
  const own = { table, format: formatter(tag) };
  const other = { table: english, format: formatter('en') };
  const say = (name, values = {}) => {
    const { table: from, format } = Object.hasOwn(table, name) ? own : other;
    if (!Object.hasOwn(from, name)) throw new Error(`no text '${name}'`);
    const message = from[name];
    return typeof message === 'string' ? message : message(format, values);
  };
  say.tag = tag;
  // Rounded before Intl does it: that goes by the shortest decimals and says 0.2 of 0.15, which in binary is a little less.
  say.number = (value, digits) => own.format.n(Number(value.toFixed(digits)), { minimumFractionDigits: digits, maximumFractionDigits: digits });
  /** All messages without values, each where its name puts it (`case-heading` is `case.heading`), and `functions` beside them. */
  say.tree = (functions) => {
    const tree = {};
    for (const [name, message] of Object.entries(english)) if (typeof message === 'string') place(tree, name.split(/[-.]/), say(name));
    return merge(tree, functions);
  };
  return say;
}

function place(tree, path, text) {
  const last = path.pop();
  let at = tree;
  for (const key of path) at = at[key] ??= {};
  at[last] = text;
}

function merge(tree, functions) {
  for (const [key, value] of Object.entries(functions)) {
    const nested = value !== null && typeof value === 'object' && !Array.isArray(value);
    tree[key] = nested ? merge(tree[key] ?? {}, value) : value;
  }
  return tree;
}
