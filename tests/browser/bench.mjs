// Frame times in Chromium, from bench.html: `npm run bench [-- FRAMES]`. Prints a table and one line of JSON.

import { open, setUp } from './harness.mjs';

const frames = Number(process.argv[2] ?? 240);
const site = await setUp();
try {
  const opened = await open(site);
  const first_picture_ms = await opened.page.evaluate(() => performance.getEntriesByName('downbeam:first-picture')[0].startTime);
  await opened.close();
  const page = await site.browser.newPage();
  await page.goto(`${site.server.address}bench.html?frames=${frames}`);
  const result = await page.evaluate(() => globalThis.downbeamBench);
  if (result.failed) throw new Error(result.failed);
  console.log(`${site.browser.version()}, ${result.frames} frames, engine memory ${result.engine_memory_MB.toFixed(0)} MB`);
  console.log(`${'first picture'.padEnd(13)} ${first_picture_ms.toFixed(0)} ms after navigation`);
  for (const [name, { median_ms, p95_ms }] of Object.entries(result.figures)) {
    console.log(`${name.padEnd(13)} median ${median_ms.toFixed(2).padStart(7)} ms   95th percentile ${p95_ms.toFixed(2).padStart(7)} ms`);
  }
  console.log(JSON.stringify({ first_picture_ms, ...result }));
} finally {
  await site.tearDown();
}
