// A learner at the mouse who does whole lessons: the careful hand's log (a receipt of the Rust tests' learner) done over with presses and
// drags on what is in sight. A step that stands closed is never opened by hand: what it holds counts as out of reach.
// Hands are coarser than the log in places (a pixel of the picture, 0.5 mm an advance): what is left over is carried on.

import { lessonStands, settled } from './harness.mjs';
import { drawn } from './keyboard.mjs';

const FIELD_MM = 512 * 0.4;
/** A drag over the picture's width turns so far, degrees. */
const TURN_DEG = 90;
/** What is in reach is there by then, ms. */
const REACH_MS = 4000;
/** A view that stands so long has been looked at, ms. */
const LOOK_MS = 1100;

/** Presses what is in sight; throws when it is not. */
async function click(page, selector) {
  await page.locator(selector).click({ timeout: REACH_MS });
  await drawn(page);
}

const film = (page) => page.locator('#overlay').boundingBox();
const angle = async (page, key) => Number(await page.inputValue(`#turn-${key}-number`));

/** Turns the C-arm by drags on the picture, from a corner, where no hub is. */
async function turn(page, { oblique, tilt }) {
  await page.locator('#overlay').scrollIntoViewIfNeeded();
  for (let tries = 0; tries < 4; tries++) {
    const off = [oblique - (await angle(page, 'oblique')), tilt - (await angle(page, 'tilt'))];
    if (Math.hypot(...off) < 0.15) break;
    const box = await film(page);
    const [x, y] = [box.x + 0.97 * box.width, box.y + 0.04 * box.height];
    const to = off.map((deg) => (-deg * box.width) / TURN_DEG);
    // A drag turns one angle: the one that it has set out on, once it has gone far enough to mean it.
    for (const [dx, dy] of [[to[0], 0], [0, to[1]]]) {
      if (Math.hypot(dx, dy) < 0.5) continue;
      await page.mouse.move(x, y);
      await page.mouse.down();
      if (Math.hypot(dx, dy) < 8) await page.mouse.move(x - 10 * Math.sign(dx), y - 10 * Math.sign(dy));
      await page.mouse.move(x + dx, y + dy, { steps: 3 });
      await page.mouse.up();
      await drawn(page);
    }
  }
  await settled(page);
}

/** Presses a place on the picture, mm from its middle. */
async function pressAt(page, [u, v]) {
  await page.locator('#overlay').scrollIntoViewIfNeeded();
  const box = await film(page);
  await page.mouse.click(box.x + (0.5 + u / FIELD_MM) * box.width, box.y + (0.5 - v / FIELD_MM) * box.height);
  await drawn(page);
}

/** Where each part can be pressed, from another room of the same engine: the page does not say it. `[label, [u, v]]` each. */
const placesOf = (page) =>
  page.evaluate(async () => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const own = new TeachingRoom('average', 'L4', 'left');
    const at = (key) => Number(document.getElementById(`turn-${key}-number`).value);
    own.setOrientation(at('oblique'), at('tilt'));
    const found = [];
    for (let v = 60; v >= -60; v -= 3)
      for (let u = -60; u <= 60; u += 3) {
        const part = own.partAt(u, v, 7, false);
        if (part) found.push([part, [u, v]]);
      }
    own.free();
    return found;
  });
const sameLabel = (a, b) => ['level', 'part', 'side'].every((key) => (a[key] ?? null) === (b[key] ?? null));

/** Presses buttons for a length in tenths of a millimetre; returns what is left. */
async function lengths(page, row, tenths) {
  // To the nearest half millimetre.
  let left = 5 * Math.round(tenths / 5);
  const over = tenths - left;
  for (const [size, name] of [[50, '5'], [10, '1'], [5, '0.5']]) {
    for (; left >= size - 1e-9; left -= size) await page.locator(`#hand .hand-row[aria-label="${row}"] button`, { hasText: new RegExp(`^${name}$`) }).click({ timeout: REACH_MS });
  }
  await drawn(page);
  return left + over;
}

/** What is carried on: what hands are too coarse for, and where kept views stand. */
const fresh = () => ({ roll: 0, push: 0, at: null, kept: {} });

const DO = {
  // To the middle of the field: by what the page proposes, until its step has ended.
  move_table: async (page) => {
    for (let i = 0; i < 8 && (await page.locator('[data-stage="centre"]').count()) > 0; i++) {
      await click(page, '#needle-next');
      await settled(page);
    }
  },
  orient: (page, _, [oblique, tilt], rest) => turn(page, (rest.at = { oblique: oblique / 10, tilt: tilt / 10 })),
  // Where the live picture is free there is no beam to switch on.
  spot: async (page) => (await page.locator('#spot').isVisible()) && click(page, '#spot'),
  fluoroscopy: async (page) => {
    if (!(await page.locator('#fluoroscopy').isVisible())) return;
    if (!(await page.locator('#latch').isChecked())) await click(page, '.latch');
    await click(page, '#fluoroscopy');
    await page.waitForTimeout(300);
  },
  keep: async (page, [view], _, rest) => {
    const again = Boolean(rest.kept[view]);
    rest.kept[view] = rest.at;
    const alone = view === 'lateral' && (await page.locator('#stage-lateral').isVisible());
    const button = `#keep-${view}${alone ? '-alone' : ''}`;
    // To keep a view again, or the lateral of a depth, is for the learner's own use: to have seen it is enough.
    if ((again || (view === 'lateral' && !alone)) && !(await page.locator(button).isVisible())) return page.waitForTimeout(LOOK_MS);
    await click(page, button);
  },
  recall: (page, [view], _, rest) => turn(page, (rest.at = rest.kept[view])),
  mark: async (page, _, [u, v]) => {
    await click(page, '#mark');
    await pressAt(page, [u / 100, v / 100]);
  },
  choose: (page, [approach]) => click(page, `label[for="approach-${approach}"]`),
  place: async (page, [gauge, length]) => {
    await click(page, `label[for="gauge-${gauge}"]`);
    await click(page, `label[for="length-${length}"]`);
    await click(page, '#place');
  },
  angle: async (page, _, [right, up]) => {
    const fine = page.locator('#hand .tick input');
    for (const [size, on] of [[5, false], [1, true]]) {
      if ((await fine.isChecked()) !== on) await page.locator('#hand .tick').click();
      for (const [by, more, less] of [[right, '→', '←'], [up, '↑', '↓']]) {
        const times = on ? Math.abs(by) % 5 : Math.floor(Math.abs(by) / size);
        for (let i = 0; i < times; i++) await page.locator('#hand .hand-buttons button', { hasText: by > 0 ? more : less }).click({ timeout: REACH_MS });
      }
    }
    await drawn(page);
  },
  roll: async (page, _, [by], rest) => {
    rest.roll += by / 10;
    const degrees = Math.round(((rest.roll + 540) % 360) - 180);
    rest.roll = 0;
    if (degrees === 0) return;
    await page.locator('#hub-dial').scrollIntoViewIfNeeded();
    const box = await page.locator('#hub-dial').boundingBox();
    const radius = 0.4 * box.width;
    const on = (deg) => [box.x + box.width / 2 + radius * Math.sin((deg * Math.PI) / 180), box.y + box.height / 2 - radius * Math.cos((deg * Math.PI) / 180)];
    await page.mouse.move(...on(0));
    await page.mouse.down();
    const steps = Math.ceil(Math.abs(degrees) / 30);
    for (let i = 1; i <= steps; i++) await page.mouse.move(...on((degrees * i) / steps));
    await page.mouse.up();
    await drawn(page);
  },
  advance: async (page, _, [by, spin], rest) => {
    await page.locator(`label[for="spin-${spin}"]`).click({ timeout: REACH_MS });
    rest.push = await lengths(page, 'Advance, mm', rest.push + by);
  },
  withdraw: async (page, _, [by], rest) => {
    rest.push = -(await lengths(page, 'Withdraw, mm', by - rest.push));
  },
  remove: (page) => click(page, '#remove'),
  aspirate: async (page) => {
    // A hand that stands a hair elsewhere may stand in another vessel: on blood it draws back and asks again.
    for (let i = 0; i < 6; i++) {
      await click(page, '#aspirate');
      if (!(await page.locator('#needle-signs').isVisible())) return;
      await lengths(page, 'Withdraw, mm', 10);
      await turn(page, { oblique: await angle(page, 'oblique'), tilt: await angle(page, 'tilt') });
    }
  },
  inject: async (page, _, [volume]) => {
    for (let i = 0; i < Math.floor(volume / 50); i++) await click(page, '#inject-50');
    for (let i = 0; i < Math.round((volume % 50) / 10); i++) await click(page, '#inject-10');
    if (await page.locator('#fluoroscopy[aria-pressed="true"]').count()) await click(page, '#fluoroscopy');
  },
  name: async (page, [pattern]) => {
    // The list that opens is the system's own, which no test can press.
    await page.selectOption('#pattern', pattern, { timeout: REACH_MS });
    await click(page, '#name');
  },
  point: async (page, [level, part, side], _, rest) => {
    rest.places ??= await placesOf(page);
    const wanted = { level, part, side: side === '-' ? null : side };
    const found = rest.places.find(([label]) => sameLabel(label, wanted));
    if (!found) throw new Error(`${level} ${part} is nowhere in the picture`);
    for (let i = 0; i < 2; i++) await pressAt(page, found[1]);
  },
  finish: (page) => click(page, '#finish'),
};

const STAGE_OF = { mark: 'mark', aspirate: 'contrast', inject: 'contrast', fluoroscopy: 'contrast', name: 'contrast' };
/** The careful hand does a whole injection; a lesson may ask for less and then has no such step, or it is over. */
const notAsked = async (page, name, [view]) => {
  const stage = name === 'keep' && view !== 'lateral' ? view : STAGE_OF[name];
  if (stage !== undefined && !(await page.locator(`#stage-${stage}`).isVisible())) return true;
  // All that was asked for is done already: a hand that stands a hair elsewhere needs no second injection.
  return stage === 'contrast' && (await page.locator('#finish').isVisible());
};

/** Does a log by mouse. */
export async function byMouse(page, log) {
  const rest = fresh();
  // Where parts are named all of them have to be in the picture: the oblique view shows them.
  if (log[0].includes(' point ')) await turn(page, { oblique: 24, tilt: -2 });
  for (const [i, line] of log.entries()) {
    const [, name, ...values] = line.split(' ');
    if (await notAsked(page, name, values)) continue;
    await DO[name](page, values, values.map(Number), rest).catch?.((error) => {
      throw new Error(`line ${i + 1}, ${line}: ${String(error).split('\n')[0]}`);
    });
  }
}

/** A lesson from the list to its result. Returns what the page says of it. */
export async function lessonByMouse(page, id, { learner, log }) {
  await click(page, `#lesson-${id}`);
  await page.waitForSelector('#lesson-begin');
  // A code is typed: nobody writes one with a mouse.
  await page.fill('#lesson-code', learner);
  await page.waitForTimeout(50);
  await click(page, '#lesson-begin');
  await lessonStands(page);
  await byMouse(page, log);
  await page.waitForSelector('#lesson-receipt', { timeout: REACH_MS });
  const said = await page.textContent('.lesson-total');
  const failed = await page.$$eval('.gates [data-held="false"]', (rows) => rows.map((row) => row.textContent));
  await click(page, '#lesson-leave');
  await page.waitForSelector('.lesson-row');
  return { said, failed };
}
