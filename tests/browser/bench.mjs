// Frame times in Chromium, from bench.html: `npm run bench [-- FRAMES]`. Prints a table and one line of JSON.

import { setUp } from './harness.mjs';

const frames = Number(process.argv[2] ?? 240);
const site = await setUp();
try {
  const page = await site.browser.newPage();
  await page.goto(`${site.server.address}bench.html?frames=${frames}`);
  const result = await page.evaluate(() => globalThis.downbeamBench);
  if (result.failed) throw new Error(result.failed);
  console.log(`${site.browser.version()}, ${result.frames} frames, engine loaded in ${result.loaded_ms.toFixed(0)} ms`);
  for (const [name, { median_ms, p95_ms }] of Object.entries(result.figures)) {
    console.log(`${name.padEnd(12)} median ${median_ms.toFixed(2).padStart(7)} ms   95th percentile ${p95_ms.toFixed(2).padStart(7)} ms`);
  }
  console.log(JSON.stringify(result));
} finally {
  await site.tearDown();
}
