// A learner at the keyboard: does an injection with keys alone, reading what the page says.

import { settled } from './harness.mjs';

/** Waits until what was done has been drawn. */
export const drawn = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** Presses a key so often, wherever the focus is. */
export async function press(page, key, times = 1) {
  for (let i = 0; i < times; i++) await page.keyboard.press(key);
  await drawn(page);
}

/** Presses a control by its key, opening the stage that it stands in. */
export async function use(page, id, key = 'Enter') {
  const stage = page.locator(`.stage:has(#${id}) > .stage-dot[aria-expanded=false]`);
  if (await stage.count()) await stage.press('Enter');
  await page.locator(`#${id}`).press(key);
  await drawn(page);
}

/** Types the angles of a view and waits until the page has seen the C-arm at rest. */
export async function turnTo(page, { oblique, tilt }) {
  for (const [key, degrees] of [['oblique', oblique], ['tilt', tilt]]) {
    const field = page.locator(`#turn-${key}-number`);
    await field.press('ControlOrMeta+A');
    await page.keyboard.type(String(Math.round(degrees * 10) / 10));
    await page.keyboard.press('Enter');
  }
  await drawn(page);
  await settled(page);
}

/** Moves the cross from the middle to a place on the detector, mm to 0.2, and marks it. */
export async function mark(page, [u, v]) {
  await use(page, 'mark');
  for (const [mm, more, less] of [[u, 'ArrowRight', 'ArrowLeft'], [v, 'ArrowUp', 'ArrowDown']]) {
    const fifths = Math.round(Math.abs(mm) * 5);
    const key = mm > 0 ? more : less;
    await press(page, key, Math.floor(fifths / 5));
    await press(page, `Shift+${key}`, fifths % 5);
  }
  await press(page, 'Enter');
}

/** What the page says beside the hub, as text. */
export const readings = (page) => page.textContent('#readings');

/** `[right, up]` mm out of words such as `hub 2.1 mm right, 0.3 mm up of the tip`. */
export function offsetIn(text, what) {
  const clause = text.match(new RegExp(`${what} ([^|]*?) of the`))?.[1] ?? '';
  const part = (more, less) => {
    const found = clause.match(new RegExp(`([\\d.]+) mm (${more}|${less})`));
    return found ? Number(found[1]) * (found[2] === more ? 1 : -1) : 0;
  };
  return [part('right', 'left'), part('up', 'down')];
}

/** Puts the hub over the tip with the arrow keys on the picture, until it stands so many degrees off at most. */
export async function align(page, most_deg = 0.3) {
  await page.locator('#picture').focus();
  for (let i = 0; i < 25; i++) {
    const text = await readings(page);
    if (Number(text.match(/([\d.]+)° off the beam/)?.[1] ?? 99) <= most_deg) return;
    const outside = Number((await page.textContent('#needle-left')).match(/[\d.]+/)[0]);
    // The hub is seen about 1.45 times as far off as it is.
    const tenths = offsetIn(text, 'hub').map((mm) => Math.round((-mm / (1.45 * outside)) * 573));
    for (const [by, more, less] of [[tenths[0], 'ArrowRight', 'ArrowLeft'], [tenths[1], 'ArrowUp', 'ArrowDown']]) {
      const key = by > 0 ? more : less;
      await press(page, key, Math.floor(Math.abs(by) / 5));
      await press(page, `Shift+${key}`, Math.abs(by) % 5);
    }
  }
}

export const depth = async (page) => Number((await page.textContent('#needle-depth')).match(/[\d.]+/)[0]);

/** Turns the notch to a direction on the screen, degrees clockwise from up. */
export async function notchTo(page, degrees) {
  const now = Number(await page.getAttribute('#hub-dial', 'aria-valuenow'));
  const by = ((Math.round(degrees - now) + 540) % 360) - 180;
  const key = by > 0 ? 'e' : 'q';
  await press(page, key, Math.floor(Math.abs(by) / 15));
  await press(page, `Shift+${key.toUpperCase()}`, Math.abs(by) % 15);
}

/** So far off the line a tip is seen to be, mm, and so far off this much further on it is seen to lean: a little more than the engine asks. */
const SEEN = { off_mm: 0.6, ahead_mm: 1.3, further_mm: 20 };
/** Where the tip of each page's needle was seen on its way: `{deep, off}`. */
const seenOn = new WeakMap();

/** Which way the tip strays so far that it can be seen, `[right, up]`; null while it is on its line. */
function straysTo(way) {
  const { deep, off } = way.at(-1);
  const before = way.find((w) => deep - w.deep <= 12) ?? way.at(-1);
  const gone = deep - before.deep;
  const ahead = off.map((o, i) => (gone < 5 ? o : o + ((o - before.off[i]) / gone) * SEEN.further_mm));
  if (Math.hypot(...ahead) >= SEEN.ahead_mm) return ahead;
  return Math.hypot(...off) >= SEEN.off_mm ? off : null;
}

/** Advances to a depth on the oblique picture, turning the notch to the side that the tip is seen to stray to, and leaving it on the line. */
export async function steerTo(page, depth_mm) {
  for (let i = 0; i < 60; i++) {
    const deep = await depth(page);
    const left = depth_mm - deep;
    if (left < 0.25) return;
    const way = (seenOn.get(page) ?? []).filter((w) => w.deep < deep);
    way.push({ deep, off: offsetIn(await readings(page), 'tip') });
    seenOn.set(page, way);
    const to = deep < 6 ? null : straysTo(way);
    if (to) {
      const wanted = (Math.atan2(to[0], to[1]) * 180) / Math.PI;
      const off = ((wanted - Number(await page.getAttribute('#hub-dial', 'aria-valuenow')) + 540) % 360) - 180;
      if (Math.abs(off) > 50) await notchTo(page, wanted);
    }
    if (left >= 3) await press(page, 'f', 3);
    else if (left >= 1) await press(page, 'f');
    else await press(page, 'g');
    if ((await depth(page)) - deep < 0.05) return;
  }
}

/** Behind the posterior body line as the lateral view's reading says, mm. */
export async function behindWall(page) {
  const found = (await readings(page)).match(/Lateral: ([\d.]+) mm (behind|in front of)/);
  return Number(found[1]) * (found[2] === 'behind' ? 1 : -1);
}

/** The marks of a step as the table shows them, 0 to 100, and the reason. */
export const marks = (page) =>
  page.evaluate(() =>
    Object.fromEntries([...document.querySelectorAll('#marks [data-step]')].map((row) => [row.dataset.step, `${row.querySelector('.marks-score').textContent} ${row.nextElementSibling?.textContent ?? ''}`])),
  );

/** The whole, 0 to 1. */
export const total = async (page) => Number(await page.getAttribute('#marks [data-total]', 'data-total'));
