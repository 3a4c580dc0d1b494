// Opens the page again and again, until one does not settle: `BROWSER=webkit node opens.mjs [TIMES]`. Then what the page, the browser and
// the server knew at that moment, so that one can tell which of them it was.

import { BROWSER, launch, open, serve, settled } from './harness.mjs';

const times = Number(process.argv[2] ?? 200);
const server = await serve();
const browser = await launch({ direct: true });
const took_ms = [];
let stuck = 0;
for (let i = 1; i <= times; i += 1) {
  server.asked.length = 0;
  const began_ms = Date.now();
  let opened;
  try {
    opened = await open({ browser, server }, { ready: false });
    await settled(opened.page);
    took_ms.push(Date.now() - began_ms);
  } catch (error) {
    stuck += 1;
    console.log(`open ${i} of ${times}: ${String(error).split('\n')[0]}`);
    console.log(`  asked of the server: ${server.asked.length} files, the last ${server.asked.slice(-3).join(', ')}`);
    const state = opened && (await opened.page.evaluate(() => ({
      ready: document.readyState,
      hidden: document.hidden,
      focus: document.hasFocus(),
      ...document.documentElement.dataset,
      film: document.getElementById('film-state')?.textContent.trim().replace(/\s+/g, ' '),
      unfinished: performance.getEntriesByType('resource').filter((r) => r.responseEnd === 0).map((r) => r.name),
      picture_ms: performance.getEntriesByName('downbeam:first-picture')[0]?.startTime,
    })).catch((failure) => `the page does not answer: ${String(failure).split('\n')[0]}`));
    console.log(`  ${JSON.stringify(state)}`);
    // Whether the page draws frames at all, and whether it gets on when it is asked again.
    const frame = opened && (await Promise.race([opened.page.evaluate(() => new Promise((next) => requestAnimationFrame(() => next('frames are drawn')))), new Promise((done) => setTimeout(done, 5000, 'no frame within 5 s'))]).catch(String));
    console.log(`  ${frame}`);
    const later = opened && (await settled(opened.page).then(() => 'settled after another wait', () => 'not settled after another 30 s'));
    console.log(`  ${later}`);
  }
  await opened?.close();
  if (i % 25 === 0) console.log(`${i} opens, ${stuck} not settled; middle ${took_ms.sort((a, b) => a - b)[took_ms.length >> 1]} ms, longest ${took_ms.at(-1)} ms`);
}
console.log(`${BROWSER} ${browser.version()}: ${times} opens, ${stuck} not settled`);
await browser.close();
await server.close();
process.exitCode = stuck > 0 ? 1 : 0;
