// Checks the types of the page's modules: `tsc` over www, strict, with the types that JSDoc comments and the engine's own declarations
// (www/pkg, made by the build) give.

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
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
const { status, stdout, stderr, error } = spawnSync(join(here, 'node_modules/.bin/tsc'), ['--project', root, '--pretty', 'false'], { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 });
if (error) stop(`tsc did not run: ${error.message}`);
// A finding begins with its place; what is indented below goes on with it.
const all = stdout.split(/\n(?=\S)/).filter((text) => text.trim() !== '');
if (status !== 0 && all.length === 0) stop(`tsc failed: ${stderr}`);
const findings = all.filter((finding) => !finding.startsWith(BUILT));
for (const finding of findings) console.error(finding);
if (findings.length > 0) stop(`types: ${findings.length} findings`);
console.log('types: no findings');
