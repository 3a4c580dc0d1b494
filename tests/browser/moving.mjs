// Takes the frames of README's moving picture from the page, as a learner goes: to a true AP along the arrow, on to the oblique view, and through the
// beam. Then `moving_picture.py` makes docs/moving.webp of them: `npm run moving` (once before: `tests/.venv/bin/python -m pip install --no-deps -r
// tests/reference/moving-requirements.txt`).

import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { open, ROOT, setUp, settled } from './harness.mjs';
import { drawn } from './keyboard.mjs';

/** How long a frame stands while something moves, and where one is to read, ms. */
const [MOVING_MS, READ_MS] = [110, 1300];
const folder = mkdtempSync(join(tmpdir(), 'downbeam-moving-'));
const site = await setUp();
const { page, errors } = await open(site, {
  hash: '#patient=average&level=L4&side=left&start=1&oblique=-14&tilt=10',
  options: { viewport: { width: 568, height: 960 }, deviceScaleFactor: 1 },
});
let number = 0;
async function frame(ms) {
  await drawn(page);
  number += 1;
  await page.locator('#film-stage').screenshot({ path: join(folder, `${String(number).padStart(3, '0')}-${ms}.png`) });
}
const set = (key, degrees) => page.evaluate(([id, value]) => {
  const slider = document.getElementById(id);
  slider.value = value;
  slider.dispatchEvent(new Event('input', { bubbles: true }));
}, [`turn-${key}`, String(Math.round(degrees * 10) / 10)]);
/** Turns evenly, in so many frames. */
async function turn(key, from, to, frames) {
  for (let i = 1; i <= frames; i++) {
    await set(key, from + ((to - from) * i) / frames);
    await frame(MOVING_MS);
  }
}

try {
  await page.waitForSelector('#through', { state: 'attached' });
  await page.click('#way-1');
  await settled(page);
  await page.evaluate(() => scrollTo(0, 0));
  await frame(READ_MS);
  await turn('oblique', -14, 0, 12);
  await settled(page);
  await frame(READ_MS);
  await turn('tilt', 10, -2, 10);
  await settled(page);
  await frame(READ_MS);
  await turn('oblique', 0, 24, 14);
  await settled(page);
  await frame(READ_MS);
  const button = await page.locator('#through').boundingBox();
  const at = [button.x + button.width / 2, button.y + button.height / 2];
  await page.mouse.move(...at);
  await page.mouse.down();
  await frame(MOVING_MS);
  await page.waitForTimeout(300);
  await frame(READ_MS);
  for (let i = 1; i <= 12; i++) {
    await page.mouse.move(at[0] - 9 * i, at[1] - 2 * i);
    await frame(MOVING_MS);
  }
  await frame(READ_MS);
  for (let i = 11; i >= 0; i -= 2) {
    await page.mouse.move(at[0] - 9 * i, at[1] - 2 * i);
    await frame(MOVING_MS);
  }
  await page.mouse.up();
  await page.waitForTimeout(300);
  await frame(READ_MS);
  if (errors.length) throw new Error(errors.join('\n'));
  const out = process.argv[2] ?? join(ROOT, 'docs/moving.webp');
  console.log(execFileSync(join(ROOT, 'tests/.venv/bin/python'), [join(ROOT, 'tests/reference/moving_picture.py'), folder, out], { encoding: 'utf8' }).trim());
} finally {
  await site.tearDown();
  if (!process.env.KEEP_FRAMES) rmSync(folder, { recursive: true, force: true });
  else console.log(folder);
}
