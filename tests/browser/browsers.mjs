// The main checks in Firefox and WebKit: `npm run browsers [-- BROWSER…]`. Chromium does them with all others in `npm test`; any check
// can be done in any browser by `BROWSER=webkit node --test FILE`, and says so where it needs Chromium.

import { run } from './checks-run.mjs';

/** Checks of a browser that take longer are ended, and have failed. */
const MOST_MS = 10 * 60_000;

/** The checks, by file, and the beginnings of their names. */
const CHECKS = {
  'every-browser.test.mjs': ['a lesson of views', 'a whole injection'],
  'loading.test.mjs': ['opens without a word on the console', 'every module of the first picture'],
  'element.test.mjs': ['the course page: two elements, one engine'],
  'delivery-frame.test.mjs': ['a course page keeps the attempt and takes the result'],
  'packages.test.mjs': ['one file: the page from file', 'a site works without a network'],
  'replay.test.mjs': ['a thousand attempts score the same'],
};
const kinds = process.argv.length > 2 ? process.argv.slice(2) : ['firefox', 'webkit'];

/** Whether all of a browser's checks, in one process and one browser after the other, were done and went well; says how each went. */
async function checked(kind) {
  const began_ms = performance.now();
  const names = Object.values(CHECKS).flat().map((name) => `--test-name-pattern=^${name}`);
  const { code, said } = await run(['--test-reporter=tap', ...names, 'checks-process.mjs', ...Object.keys(CHECKS)], { most_ms: MOST_MS, env: { BROWSER: kind } });
  // A check's time stands in the lines behind it.
  const done = said.split('\n').flatMap((line, i, all) => {
    if (!/^\s*(ok|not ok) /.test(line) || /# (SKIP|TODO)/.test(line) || /\.test\.mjs$/.test(line)) return [];
    const ms = /duration_ms: ([\d.]+)/.exec(all.slice(i + 1, i + 4).join('\n'))?.[1];
    return [`${line.trim()} (${(Number(ms) / 1000).toFixed(0)} s)`];
  });
  // A name that no longer fits any check would be left out without a word.
  const missing = Object.values(CHECKS).flat().filter((name) => !done.some((line) => line.includes(` - ${name.replace('#', '\\#')}`)));
  if (code !== 0 || missing.length > 0) {
    console.log(said);
    for (const name of missing) console.log(`${kind}: no check begins with “${name}”`);
  }
  console.log(done.map((line) => `${kind}: ${line.trim()}`).join('\n'));
  console.log(`${kind}: ${done.length} checks, ${((performance.now() - began_ms) / 1000).toFixed(0)} s`);
  return code === 0 && missing.length === 0;
}

const began_ms = performance.now();
// Both at once: each has a processor, and while one waits for a frame the other works.
const went = await Promise.all(kinds.map(checked));
console.log(`${kinds.join(' and ')}: ${((performance.now() - began_ms) / 1000).toFixed(0)} s`);
process.exitCode = went.every(Boolean) ? 0 : 1;
