// Makes docs/element.md and www/element/downbeam-view.d.ts from the table in www/element/interface.js: `node docs/element.mjs`.
// A test (tests/browser/element-interface.test.mjs) fails while they are not what this makes.

import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { ATTRIBUTES, EVENTS, METHODS, PARTS, PROPERTIES, READINGS, SHAPES, STATICS, TAG } from '../www/element/interface.js';
import { ENGLISH as texts } from '../www/element/words.js';

/** Chromium 156; the command stands in the text. */
const COSTS = [['one element', 1, 32], ['eight elements, one patient', 1, 32], ['two patients', 2, 58], ['four patients', 4, 120]];

/** The union that a table of words stands for, as a name or as it is. */
const NAMES = { level: 'DownbeamLevel', side: 'DownbeamSide', view: 'DownbeamKind' };

/** The files, by path from the project's folder. */
export function files() {
  return { 'docs/element.md': markdown(), 'www/element/downbeam-view.d.ts': declarations() };
}

// --- TypeScript ---

const union = (rule) => rule.values.map((v) => `'${v}'`).join(' | ');
const KIND_TYPES = { number: () => 'number', onOff: () => 'boolean', named: () => 'string', digest: () => 'string', word: union };
const typeOf = ({ name, rule }) => NAMES[name] ?? KIND_TYPES[rule.kind](rule);
const comment = (text) => `  /** ${text} */`;

function declarations() {
  const named = ATTRIBUTES.filter((a) => NAMES[a.name]).map((a) => `export type ${NAMES[a.name]} = ${union(a.rule)};`);
  const shapes = Object.entries(SHAPES).map(([name, fields]) => `export interface ${name} {\n${fields.map(([field, type, what]) => `${comment(what)}\n  readonly ${field}: ${type};`).join('\n')}\n}\n`);
  const attributes = ATTRIBUTES.map((a) => `${comment(a.says)}\n  ${a.name}: ${typeOf(a)};`);
  const readings = READINGS.map((r) => `${comment(r.says)}\n  readonly ${r.name}: ${r.type};`);
  const call = ({ name, takes, gives }) => `${name}(${takes}): ${gives};`;
  const methods = METHODS.map((m) => `${comment(m.says)}\n  ${call(m)}`);
  const statics = STATICS.map((m) => `${comment(m.says)}\n  static ${call(m)}`);
  const events = EVENTS.map((e) => `    '${e.name}': CustomEvent<${e.detail}>;`);
  return `// Made by \`node docs/element.mjs\` from interface.js. Do not edit.

${named.join('\n')}

/** What the engine says of a view; \`downbeam view --json\` gives the same. */
export interface DownbeamReport {
  readonly criteria: readonly DownbeamCriterion[];
  readonly [entry: string]: unknown;
}

${shapes.join('\n')}
/** \`<${TAG}>\`. A property that does not fit changes nothing and is told by \`downbeam-error\`. */
export class DownbeamView extends HTMLElement {
${[...statics, ...attributes, ...readings, ...methods].join('\n')}
}

declare global {
  interface HTMLElementTagNameMap {
    '${TAG}': DownbeamView;
  }
  interface GlobalEventHandlersEventMap {
${events.join('\n')}
  }
}
`;
}

// --- Documentation ---

const table = (head, rows) => [head, head.map(() => '---'), ...rows].map((row) => `| ${row.map((cell) => String(cell).replaceAll('|', '\\|')).join(' | ')} |`).join('\n');
const fallback = ({ fallback: value }) => (value === '' ? '' : `\`${typeof value === 'boolean' ? (value ? 'on' : 'off') : value}\``);
const allowed = ({ rule }) => (rule.values ? rule.values.map((v) => `\`${v}\``).join(', ') : texts.allowed(rule));

function markdown() {
  const shapes = Object.entries(SHAPES).map(([name, fields]) => `**${name}**\n\n${table(['field', 'type', 'what'], fields.map(([field, type, what]) => [`\`${field}\``, `\`${type}\``, what]))}`);
  return `<!-- Made by \`node docs/element.mjs\` from www/element/interface.js. Do not edit. -->
# \`<${TAG}>\`

A patient under a C-arm, in any page. Put the folder \`www\`, with \`www/pkg\` in it (\`cargo run --release -- build\`), on a web server; then

\`\`\`html
<script type="module" src="https://example.org/downbeam/element/downbeam-view.js"></script>
<${TAG} level="L4" side="left" view="oblique" oblique="6" tilt="10"></${TAG}>
\`\`\`

\`examples/course-page\` has two of them and a listener, \`examples/strict-csp\` a page with a strict content policy; after a build, \`python3 -m http.server\` in the project’s folder shows them at \`http://localhost:8000/examples/course-page/\`. What stands between the tags is shown where there is no JavaScript. **A teaching model, not for clinical use**: the element says so, and a page that takes the caution line away should say it itself.

## Attributes

Each is a property of the same name. The attribute says what the page asks for, the property what is there now: it follows the learner, and to set it changes the view and not the attribute. What does not fit is said in one sentence, in the element and by \`downbeam-error\`; the rest goes on working.

${table(['attribute', 'allowed', 'without it', 'what'], ATTRIBUTES.map((a) => [`\`${a.name}\``, allowed(a), fallback(a), a.says]))}

\`lang\`, on the element or around it, picks the language when the element is first used; English, German (\`de\`) and Spanish (\`es\`) are there, and any other is English.

## Properties to read

${table(['property', 'type', 'what'], READINGS.map((r) => [`\`${r.name}\``, `\`${r.type}\``, r.says]))}

## Methods

They start the engine if it has not been started, and reject with the sentence that the element shows.

${table(['method', 'gives', 'what'], [...METHODS.map((m) => [`\`${m.name}(${m.takes})\``, `\`${m.gives}\``, m.says]), ...STATICS.map((m) => [`\`DownbeamView.${m.name}(${m.takes})\``, `\`${m.gives}\``, m.says])])}

## Events

They bubble and cross shadow roots. Each has its \`detail\`.

${table(['event', 'detail', 'when'], EVENTS.map((e) => [`\`${e.name}\``, `\`${e.detail}\``, e.says]))}

${shapes.join('\n\n')}

## Look

${table(['part', 'what'], PARTS.map((p) => [`\`::part(${p.name})\``, p.says]))}

${table(['custom property', 'what'], PROPERTIES.map((p) => [`\`--downbeam-${p.name}\``, p.says]))}

The element fills the width that it is given: one column up to 740 px, two from there on, never wider than 1080 px. It needs a browser of 2024 or later; the checks run in Chromium alone.

## On another origin, and under a content policy

Modules, style sheets and wasm are fetched beside \`downbeam-view.js\`, wherever that stands. From another origin the whole folder needs the header \`Access-Control-Allow-Origin\`. The wasm should be sent as \`application/wasm\`; with another type it works too.

A policy needs, with the engine's origin in place of \`'self'\` where it stands on another one:

\`\`\`
script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'
\`\`\`

The element has no inline style, so \`style-src\` needs nothing for it.

\`integrity\` on the element covers the wasm, which is two files; put the digests of both there, with a space between:

\`\`\`sh
for part in bg rest; do echo "sha384-$(openssl dgst -sha384 -binary www/pkg/downbeam_$part.wasm | openssl base64 -A)"; done
\`\`\`

\`integrity\` on the \`script\` element covers \`downbeam-view.js\` alone; the modules that it imports can be covered by an import map's \`integrity\`.

## What it costs

One engine is fetched and compiled for all elements of a page. Elements with the same \`patient\` share one patient: it is turned to each one's level, side and angles before that one draws. Measured by \`cd tests/browser && node element-cost.mjs\`:

${table(['page', 'patients in memory', 'engine memory, MB'], COSTS)}

To turn a shared patient to another element’s aim takes less than 0.1 ms, and the picture after it as long as ever. A patient of its own costs about 30 MB and its shaping (a quarter of a second or more, DEVELOPERS.md has the times). So give elements the same patient where the lesson allows. The last element to leave a patient frees it; the memory is then used again, but a browser gives it back only with the page.
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [path, text] of Object.entries(files())) await writeFile(new URL(`../${path}`, import.meta.url), text);
}
