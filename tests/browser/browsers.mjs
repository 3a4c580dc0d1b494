// The main checks in Firefox and WebKit: `npm run browsers [-- BROWSER…]`. Chromium does them with all others in `npm test`; any check
// can be done in any browser by `BROWSER=webkit node --test FILE`, and says so where it needs Chromium.

import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The checks, by file, and the beginnings of their names. */
const CHECKS = {
  'every-browser.test.mjs': ['a lesson of views', 'a whole injection'],
  'loading.test.mjs': ['opens without a word on the console', 'every module of the first picture'],
  'element.test.mjs': ['the course page: two elements, one engine'],
  'delivery-frame.test.mjs': ['a course page keeps the attempt and takes the result'],
  'packages.test.mjs': ['one file: the page from file', 'a site works without a network'],
  'replay.test.mjs': ['a thousand attempts score the same'],
};
const folder = fileURLToPath(new URL('.', import.meta.url));
const kinds = process.argv.length > 2 ? process.argv.slice(2) : ['firefox', 'webkit'];

/** One browser's checks; what they print. */
function run(kind) {
  const names = Object.values(CHECKS).flat().map((name) => `--test-name-pattern=^${name}`);
  const child = spawn(process.execPath, ['--test', '--test-concurrency=2', '--test-timeout=240000', '--test-reporter=tap', ...names, ...Object.keys(CHECKS)], { cwd: folder, env: { ...process.env, BROWSER: kind }, stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  child.stdout.setEncoding('utf8').on('data', (text) => (said += text));
  return new Promise((done) => child.on('exit', (code) => done({ code, said })));
}

let failed = false;
for (const kind of kinds) {
  const began_ms = performance.now();
  const { code, said } = await run(kind);
  const done = said.split('\n').filter((line) => /^\s*(ok|not ok) /.test(line) && !/# (SKIP|TODO)/.test(line) && !/\.test\.mjs$/.test(line));
  // A name that no longer fits any check would be left out without a word.
  const missing = Object.values(CHECKS).flat().filter((name) => !done.some((line) => line.includes(` - ${name.replace('#', '\\#')}`)));
  if (code !== 0 || missing.length > 0) {
    failed = true;
    console.log(said);
    for (const name of missing) console.log(`${kind}: no check begins with “${name}”`);
  }
  console.log(done.map((line) => `${kind}: ${line.trim()}`).join('\n'));
  console.log(`${kind}: ${done.length} checks, ${((performance.now() - began_ms) / 1000).toFixed(0)} s`);
}
process.exitCode = failed ? 1 : 0;
