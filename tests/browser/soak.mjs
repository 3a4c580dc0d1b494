// Half an hour of random use, and what it leaves in memory: `npm run soak [-- MINUTES [SEED]]`, in the browser that BROWSER names. One page
// is the page itself: patients, levels, sides, angles, looks, injections begun, taken back and left; the other is a course page to which
// elements are added and from which they are removed. A row a minute: what the engines hold, the scripts' own memory (Chromium tells it),
// elements and patients in memory, and all processes of the browser together. Figures from the log of a run stand in docs/times.md.

import { execFileSync } from 'node:child_process';
import { allReady } from './element-site.mjs';
import { BROWSER, open, serve, setUp, settled } from './harness.mjs';

const minutes = Number(process.argv[2] ?? 30);
let seed = Number(process.argv[3] ?? 20261128);
/** Numerical Recipes' generator (Press and others, 7.1), so that a run can be done again. */
const random = (below) => {
  seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  return Math.floor((seed / 2 ** 32) * below);
};
const oneOf = (list) => list[random(list.length)];
const PATIENTS = ['average', 'small', 'large', 'worn'];
const LEVELS = ['L1', 'L2', 'L3', 'L4', 'L5', 'S1'];

const site = await setUp({ direct: true });
const { page, errors } = await open(site, { ownPace: true });
const course = await serve('www', { pages: { '/course.html': '<!doctype html><html lang="en"><meta charset="utf-8"><link rel="icon" href="data:,"><title>Course</title><script type="module" src="element/downbeam-view.js"></script><main></main></html>' } });
const second = await site.browser.newPage();
second.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
second.on('pageerror', (error) => errors.push(String(error)));
await second.goto(`${course.address}course.html`);
await second.waitForFunction(() => Boolean(customElements.get('downbeam-view')));

/** Sets a field of the page as a hand does: the value, then what the browser tells of it. */
const set = (id, value) =>
  page.evaluate(([at, to]) => {
    const field = document.getElementById(at);
    if (!field || field.disabled || field.closest('[hidden]')) return;
    if (field.type === 'checkbox' || field.type === 'radio') field.click();
    else {
      field.value = to;
      for (const type of ['input', 'change']) field.dispatchEvent(new Event(type, { bubbles: true }));
    }
  }, [id, value]);
/** Presses one of the buttons that can be pressed, but those that hand out files, open other pages or leave the window. */
const pressAny = (within, n) =>
  page.evaluate(([selector, at]) => {
    const free = [...document.querySelectorAll(`${selector} button, ${selector} summary`)].filter((b) => !b.disabled && b.checkVisibility() && !/save|open|file|print|export|language/.test(b.id));
    free[at % Math.max(1, free.length)]?.click();
  }, [within, n]);
const turn = async () => {
  await set('turn-oblique', String(random(60) - 30));
  await set('turn-tilt', String(random(40) - 20));
};

const ON_THE_PAGE = [
  () => set('patient', oneOf(PATIENTS)),
  () => set(`level-${oneOf(LEVELS)}`),
  () => set(`side-${oneOf(['left', 'right'])}`),
  turn,
  turn,
  () => set(oneOf(['bone-dark', 'outlines', 'labels', 'self-test'])),
  () => set(`activity-${oneOf(['views', 'injection', 'injection'])}`),
  () => pressAny('main', random(1000)),
  () => pressAny('#needle', random(1000)),
  async () => {
    for (const key of ['f', 'f', 'e', 'g', 'b', 'p', 'l', 'o', 'Control+z', 'Control+y']) if (random(2)) await page.keyboard.press(key);
  },
];
const IN_THE_COURSE = [
  () => second.evaluate(([patient, level]) => document.querySelector('main').append(Object.assign(document.createElement('downbeam-view'), { patient, level, loading: 'eager' })), [oneOf(PATIENTS), oneOf(LEVELS)]),
  () => second.evaluate((n) => { const all = document.querySelectorAll('downbeam-view'); if (all.length > 0) all[n % all.length].remove(); }, random(100)),
  () => second.evaluate(([n, oblique, tilt]) => { const all = document.querySelectorAll('downbeam-view'); if (all.length > 0) Object.assign(all[n % all.length], { oblique, tilt }); }, [random(100), random(60) - 30, random(40) - 20]),
  // No more than eight at once, and now and then none.
  () => second.evaluate((none) => { for (const e of [...document.querySelectorAll('downbeam-view')].slice(none ? 0 : 8)) e.remove(); }, random(10) === 0),
];

/** Memory of the browser's processes, MB: what each has for itself and its share of the rest (Linux's Pss). */
function processes() {
  const listed = execFileSync('ps', ['-eo', 'pid,ppid'], { encoding: 'utf8' }).trim().split('\n').slice(1).map((line) => line.trim().split(/\s+/).map(Number));
  const family = new Set([process.pid]);
  for (let grown = true; grown; ) {
    grown = false;
    for (const [pid, parent] of listed) if (family.has(parent) && !family.has(pid)) grown = Boolean(family.add(pid));
  }
  family.delete(process.pid);
  let kB = 0;
  for (const pid of family) {
    try {
      kB += Number(/^Pss:\s+(\d+)/m.exec(execFileSync('cat', [`/proc/${pid}/smaps_rollup`], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }))[1]);
    } catch {
      // It has ended since it was listed.
    }
  }
  return kB / 1000;
}

const cdp = BROWSER === 'chromium' ? await Promise.all([page, second].map((tab) => tab.context().newCDPSession(tab))) : [];
await Promise.all(cdp.map((session) => session.send('Performance.enable')));
async function scripts() {
  let bytes = 0;
  for (const session of cdp) {
    await session.send('HeapProfiler.collectGarbage');
    const { metrics } = await session.send('Performance.getMetrics');
    bytes += metrics.find(({ name }) => name === 'JSHeapUsedSize').value;
  }
  return cdp.length > 0 ? (bytes / 1e6).toFixed(1) : '–';
}
async function row(minute, done) {
  await allReady(second).catch(() => {});
  const engine = await page.evaluate(async () => (await (await import('/pkg/downbeam.js')).default()).memory.buffer.byteLength / 1e6);
  const { views, patients, memory_bytes } = await second.evaluate(() => customElements.get('downbeam-view').usage());
  console.log(`| ${minute} | ${done} | ${engine.toFixed(0)} | ${(memory_bytes / 1e6).toFixed(0)} | ${views} / ${patients.length} | ${await scripts()} | ${processes().toFixed(0)} | ${errors.length} |`);
}

console.log(`${BROWSER} ${site.browser.version()}, seed ${seed}\n\n| minute | things done | page's engine MB | elements' engine MB | elements / patients | scripts MB | processes MB | errors |\n|---|---|---|---|---|---|---|---|`);
const began_ms = Date.now();
let done = 0;
await row(0, done);
for (let minute = 1; minute <= minutes; minute += 1) {
  while (Date.now() - began_ms < minute * 60_000) {
    await oneOf(random(3) === 0 ? IN_THE_COURSE : ON_THE_PAGE)();
    done += 1;
    await page.waitForTimeout(20 + random(80));
    // Nobody goes on for long before a picture has come.
    if (random(8) === 0) await settled(page).catch(() => errors.push('the page did not settle within 30 s'));
  }
  await row(minute, done);
}
for (const error of new Set(errors)) console.log(error);
await site.tearDown();
await course.close();
process.exitCode = errors.length > 0 ? 1 : 0;
