// The checks in the browser: `npm test [-- FILE…]`, files by their names without `.test.mjs`; all of them otherwise. A few processes at once
// take the files, a handful each; the files of a process use one browser (`checks-process.mjs`), and all share what `downbeam pack` makes of
// the same things (`packages.mjs`). A file alone, as while it is written: `node --test FILE`.
//
// Files that open no browser may put objects of their own in the place of a browser's, so each has a process of its own, under `node --test`.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { run } from './checks-run.mjs';

/** Processes at once: one more than this needs, since a page often waits for a frame or a timer. */
const AT_ONCE = 3;
/** Files a process takes. */
const HANDFUL = 5;
/** A process that takes longer is ended, and has failed. */
const MOST_MS = 20 * 60_000;

const folder = fileURLToPath(new URL('.', import.meta.url));
const usesBrowser = (file) => /\b(setUp|launch|lessonSite)\b/.test(readFileSync(join(folder, file), 'utf8'));

const given = process.argv.slice(2).map((name) => name.replace(/(\.test)?(\.mjs)?$/, '.test.mjs'));
const there = readdirSync(folder).filter((name) => name.endsWith('.test.mjs')).sort();
const unknown = given.filter((file) => !there.includes(file));
if (unknown.length > 0) {
  console.error(`no such checks: ${unknown.join(', ')}`);
  process.exit(2);
}
const files = given.length > 0 ? given : there;
const inBrowser = files.filter(usesBrowser);
const alone = files.filter((file) => !usesBrowser(file));
const handfuls = [];
for (let i = 0; i < inBrowser.length; i += HANDFUL) handfuls.push([join(folder, 'checks-process.mjs'), ...inBrowser.slice(i, i + HANDFUL)]);
if (alone.length > 0) handfuls.push(['--test', ...alone]);

/** Runs some files; prints what they said once they are over. Whether all went well. */
async function went(args) {
  const { code, said, ended } = await run(['--test-reporter=spec', ...args], { most_ms: MOST_MS });
  console.log(said);
  if (ended) console.log(`ended after ${MOST_MS / 60_000} minutes: ${args.join(' ')}`);
  return code === 0;
}

const began_ms = performance.now();
let failed = 0;
const queue = [...handfuls];
await Promise.all(Array.from({ length: AT_ONCE }, async () => {
  for (let args = queue.shift(); args; args = queue.shift()) if (!(await went(args))) failed += 1;
}));
console.log(`${files.length} files of checks in ${handfuls.length} processes, ${failed} of them with a check that failed; ${((performance.now() - began_ms) / 1000).toFixed(0)} s`);
process.exitCode = failed > 0 ? 1 : 0;
