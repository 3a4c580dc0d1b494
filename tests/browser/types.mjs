// Checks the types of the page's modules: `tsc` over www, strict, with the types that JSDoc comments and the engine's own declarations
// (www/pkg, made by the build) give. `tsconfig.json` lists under `notYetTyped` the files and folders (these end in a slash) whose findings
// are not told yet; one that has none any more has to leave the list.

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../..');
/** What the build makes: its declarations are used, its modules are not ours to type. */
const BUILT = 'www/pkg/';

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}

if (!existsSync(join(root, BUILT, 'downbeam.d.ts'))) stop('there are no declarations of the engine in www/pkg: run `cargo run -- build` first');
const { notYetTyped } = JSON.parse(readFileSync(join(root, 'tsconfig.json'), 'utf8'));
const { status, stdout, stderr, error } = spawnSync(join(here, 'node_modules/.bin/tsc'), ['--project', root, '--pretty', 'false'], { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 });
if (error) stop(`tsc did not run: ${error.message}`);
// A finding begins with its place; what is indented below goes on with it.
const findings = stdout.split(/\n(?=\S)/).filter((text) => text.trim() !== '');
if (status !== 0 && findings.length === 0) stop(`tsc failed: ${stderr}`);
const fileOf = (finding) => /^(\S+?)\(\d+,\d+\): /.exec(finding)?.[1] ?? '';
const isIn = (entry) => (finding) => (entry.endsWith('/') ? fileOf(finding).startsWith(entry) : fileOf(finding) === entry);

const told = findings.filter((finding) => ![BUILT, ...notYetTyped].some((entry) => isIn(entry)(finding)));
const clean = notYetTyped.filter((entry) => !findings.some(isIn(entry)));
for (const finding of told) console.error(finding);
for (const entry of clean) console.error(`tsconfig.json: ${entry} has no findings any more; take it from notYetTyped`);
if (told.length + clean.length > 0) stop(`types: ${told.length} findings`);
console.log(`types: no findings; not yet typed: ${notYetTyped.join(' ') || 'nothing'}`);
