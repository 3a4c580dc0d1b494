// A learner at the keyboard who does whole lessons: what the careful hand of the Rust tests does (a log), done over with keys alone.
// Keys are coarser than the log in places (0.5 mm an advance, 0.2 mm a mark, 1 degree a roll): what is left over is carried on.

import { readFileSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { cargo, lessonStands, ROOT } from './harness.mjs';
import { drawn, mark, press, turnTo, use } from './keyboard.mjs';
import { madeOnce } from './packages.mjs';

/** The careful hand's receipts for lessons of the course, by lesson: `{learner, log}`. */
export function carefulHands(ids) {
  const made = () => cargo(ROOT, '--example', 'class', '--', String(ids.length), ...ids, '--careful');
  // The careful hand takes its time: a run of many files asks it once.
  const kept = madeOnce(`careful-${ids.join('+')}`, (path) => writeFileSync(path, made()));
  const lines = (kept ? readFileSync(kept, 'utf8') : made()).trim().split('\n');
  return new Map(lines.map((line) => JSON.parse(line)).map((receipt) => [receipt.lesson.id, { learner: receipt.learner, log: receipt.log }]));
}

/** From the list of lessons into one that runs, for a learner's code. */
export async function beginLesson(page, id, code) {
  await page.locator(`#lesson-${id}`).press('Enter');
  await page.waitForSelector('#lesson-begin');
  await page.locator('#lesson-code').press('ControlOrMeta+A');
  await page.keyboard.type(code);
  await page.locator('#lesson-begin').press('Enter');
  await lessonStands(page);
}

/** The whole way of a lesson, from the list to its receipt and back. Returns what the page says of it, and the receipt's text. */
export async function lessonByKeys(page, id, { learner, log }) {
  await beginLesson(page, id, learner);
  await byKeys(page, log);
  await page.waitForSelector('#lesson-receipt');
  const said = await page.textContent('.lesson-total');
  const [file] = await Promise.all([page.waitForEvent('download'), page.locator('#lesson-receipt').press('Enter')]);
  const receipt = await readFile(await file.path(), 'utf8');
  await page.locator('#lesson-leave').press('Enter');
  await page.waitForSelector('.lesson-row');
  return { said, receipt };
}

/** The course's ids. */
export const course = async () => JSON.parse(await readFile(join(ROOT, 'www/lessons/index.json'), 'utf8')).lessons;

/** What is left over of steps that keys are too coarse for, by kind. */
const leftOver = (rest, kind, value) => (rest[kind] = (rest[kind] ?? 0) + value);

/** Does a log by keys. */
export async function byKeys(page, log) {
  const rest = {};
  // Where parts are named all of them have to be in the picture: the oblique view shows them.
  if (log[0].includes(' point ')) await turnTo(page, { oblique: 24, tilt: -2 });
  for (const line of log) {
    const [, name, ...values] = line.split(' ');
    const numbers = values.map(Number);
    await DO[name](page, values, numbers, rest);
    await drawn(page);
  }
}

/** Picks an option of a list as one does by keys: its first letters. */
async function choose(page, id, value) {
  const list = page.locator(`#${id}`);
  const text = await list.locator(`option[value="${value}"]`).textContent();
  await list.focus();
  await page.keyboard.type(text.slice(0, 12));
  await page.keyboard.press('Enter');
}

const repeated = async (page, tenths, [coarse, step, fine], keys) => {
  let left = tenths;
  for (const [size, key] of [[coarse, keys[0]], [step, keys[1]], [fine, keys[2]]]) {
    const times = Math.floor(left / size + 1e-9);
    await press(page, key, times);
    left -= times * size;
  }
  return left;
};

/** Which of the outlines in the picture is a part's, from another room of the same engine: the page does not say it. Naming lessons are of L4 left of the average patient. */
const outline = (page, label) =>
  page.evaluate(async (wanted) => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const own = new TeachingRoom('average', 'L4', 'left');
    const angle = (key) => Number(document.getElementById(`turn-${key}-number`).value);
    own.setOrientation(angle('oblique'), angle('tilt'));
    const at = own.partsShown(false).findIndex((p) => ['level', 'part', 'side'].every((key) => (p[key] ?? null) === wanted[key]));
    own.free();
    return at;
  }, label);

const DO = {
  orient: (page, _, [oblique, tilt]) => turnTo(page, { oblique: oblique / 10, tilt: tilt / 10 }),
  // Where the live picture is free there is no beam to switch on.
  spot: async (page) => (await page.locator('#spot').isVisible()) && use(page, 'spot'),
  fluoroscopy: async (page) => {
    if (!(await page.locator('#fluoroscopy').isVisible())) return;
    // Set to stay on, it is a press of the key to have it and one to be rid of it.
    await use(page, 'latch', 'Space');
    await use(page, 'fluoroscopy');
    await page.waitForTimeout(300);
  },
  keep: async (page, [view]) => {
    // The lateral has a stage of its own where no depth is to be proven.
    const alone = view === 'lateral' && (await page.locator('#stage-lateral').isVisible());
    await use(page, alone ? 'keep-lateral-alone' : `keep-${view}`);
  },
  recall: (page, [view]) => press(page, { true_ap: 'p', lateral: 'l', oblique: 'o' }[view]),
  mark: (page, _, [u, v]) => mark(page, [u / 100, v / 100]),
  choose: (page, [approach]) => use(page, `approach-${approach}`, 'Space'),
  place: async (page, [gauge, length]) => {
    const stage = page.locator('.stage:has(#place) > .stage-dot[aria-expanded=false]');
    if (await stage.count()) await stage.press('Enter');
    if (await page.locator('#gauge').count()) await choose(page, 'gauge', gauge);
    if (await page.locator('#length').count()) await choose(page, 'length', length);
    await use(page, 'place');
  },
  angle: async (page, _, tenths) => {
    await page.locator('#picture').focus();
    for (const [by, more, less] of [[tenths[0], 'ArrowRight', 'ArrowLeft'], [tenths[1], 'ArrowUp', 'ArrowDown']]) {
      const key = by > 0 ? more : less;
      await press(page, key, Math.floor(Math.abs(by) / 5));
      await press(page, `Shift+${key}`, Math.abs(by) % 5);
    }
  },
  roll: async (page, _, [by], rest) => {
    const wanted = leftOver(rest, 'roll', by / 10);
    const degrees = Math.round(((wanted + 540) % 360) - 180);
    rest.roll = 0;
    const key = degrees > 0 ? 'e' : 'q';
    await press(page, key, Math.floor(Math.abs(degrees) / 15));
    await press(page, `Shift+${key.toUpperCase()}`, Math.abs(degrees) % 15);
  },
  advance: async (page, _, [by, spin], rest) => {
    await page.locator(`#spin-${spin}`).press('Space');
    rest.push = await repeated(page, leftOver(rest, 'push', by), [50, 10, 5], ['Shift+F', 'f', 'g']);
  },
  withdraw: async (page, _, [by], rest) => {
    rest.push = -(await repeated(page, leftOver(rest, 'push', -by) * -1, [50, 10, 5], ['Shift+B', 'b', 'v']));
  },
  remove: (page) => use(page, 'remove'),
  aspirate: (page) => use(page, 'aspirate'),
  inject: async (page, _, [volume]) => {
    for (let i = 0; i < Math.floor(volume / 50); i++) await use(page, 'inject-50');
    for (let i = 0; i < Math.round((volume % 50) / 10); i++) await use(page, 'inject-10');
    const beam = page.locator('#fluoroscopy[aria-pressed="true"]');
    if (await beam.count()) await use(page, 'fluoroscopy');
  },
  name: async (page, [pattern]) => {
    await choose(page, 'pattern', pattern);
    await use(page, 'name');
  },
  point: async (page, [level, part, side]) => {
    const at = await outline(page, { level, part, side: side === '-' ? null : side });
    const film = page.locator('#picture');
    for (let i = 0; i < 200; i++) {
      await film.press('ArrowRight');
      if ((await page.textContent('#needle-said')).startsWith(`Outline ${at + 1} of `)) return film.press('Enter');
    }
    throw new Error(`${level} ${part} is never lit`);
  },
  finish: (page) => use(page, 'finish'),
};
