// The room: the table moves across, along, up and down; the target is brought to the middle of AP and lateral; a turn that would hit stops and says so.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeFinds, lessonStands, open, openSheet, setUp, settled, sideways } from './harness.mjs';
import { drawn, press, turnTo } from './keyboard.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const VIEWS = '#patient=average&level=L4&side=left&start=1&oblique=0&tilt=0';
const LESSON = '#open=target-in-the-middle';
const move = (page, way) => page.locator('#picture-sheet').getByRole('button', { name: `Move the table 5 mm: ${way}`, exact: true });
/** Where the table's sheet says that it stands. */
const tableNow = (page) => page.textContent('#picture-sheet [aria-label="Move the table"] .turn-words');

async function lesson(options) {
  const opened = await open(site, { hash: LESSON, ready: false, options });
  await opened.page.waitForSelector('#lesson-begin');
  await opened.page.click('#lesson-begin');
  await lessonStands(opened.page);
  return opened;
}

test('buttons and keys move the table each way; the drawing and the described form follow', async () => {
  const { page, errors, close } = await open(site, { hash: VIEWS });
  await page.waitForFunction(() => document.documentElement.dataset.later === 'done');
  await openSheet(page, 'picture');
  for (const way of ['Left', 'Up', 'Up', 'To the head']) await move(page, way).click();
  await settled(page);
  assert.equal(await tableNow(page), '5 mm left, 5 mm to the head, 10 mm up');
  // From the feet the patient's left is left and up is up: the group with table and patient stands there.
  const [x, y] = (await page.getAttribute('#gantry-feet g', 'transform')).match(/-?[\d.]+/g).map(Number);
  assert.ok(Math.abs(x + 5) < 0.2 && y < -8 && y > -12, `${x} ${y}`);
  assert.match(await page.textContent('#gantry-feet desc'), /Table: 5 mm left, 5 mm to the head, 10 mm up\./);
  await page.keyboard.press('Escape');
  await page.focus('#picture');
  for (const key of ['d', 's', 'j', 'j']) await press(page, key);
  await settled(page);
  await openSheet(page, 'picture');
  assert.equal(await tableNow(page), 'target at the isocentre');
  for (let i = 0; i < 6; i++) await move(page, 'Right').click();
  await settled(page);
  const facts = await page.evaluate(async () => {
    const { factsOf } = await import('/help/describe.js');
    const { TeachingRoom } = await import('/pkg/downbeam.js');
    const room = new TeachingRoom('average', 'L4', 'left');
    room.setOrientation(0, 0);
    const centred = factsOf(room.report()).middle;
    room.setTableShift(-30, 0, 0);
    const aside = factsOf(room.report()).middle;
    room.free();
    return { centred, aside };
  });
  // 30 mm to the patient's right, which is right on the film, magnified 1100 / 700.
  assert.deepEqual(facts, { centred: null, aside: [47, 0] });
  assert.deepEqual(errors, []);
  await close();
});

test('on the page’s own engine a raised patient is smaller in AP and stands aside in the lateral, as similar triangles say', async () => {
  const { page, close } = await open(site, { hash: VIEWS });
  const seen = await page.evaluate(async () => {
    const { TeachingRoom } = await import('/pkg/downbeam.js');
    const room = new TeachingRoom('average', 'L4', 'left');
    const at = (oblique, up) => {
      room.setOrientation(oblique, 0);
      room.setTableShift(0, up, 0);
      const of = (name, side = null) => room.report().landmarks.find((l) => l.name === name && l.level === 'L4' && l.side === side);
      const [left, right, body] = [of('pedicle_centre', 'left'), of('pedicle_centre', 'right'), of('body_centre')];
      return { left: left.detector_mm, right: right.detector_mm, body: body.detector_mm, height: left.patient_mm[1], across: left.patient_mm[0] - right.patient_mm[0] };
    };
    return { low: at(0, -50), high: at(0, 50), side: at(90, 40) };
  });
  for (const [of, up] of [[seen.low, -50], [seen.high, 50]]) {
    const wanted = (of.across * 1100) / (700 + up + of.height);
    assert.ok(Math.abs(Math.abs(of.left[0] - of.right[0]) - wanted) < 0.5, `${up}: ${of.left[0] - of.right[0]} against ${wanted}`);
  }
  assert.ok(Math.abs(seen.side.body[0] - (40 * 1100) / 700) < 0.1 && Math.abs(seen.side.body[1]) < 0.1, String(seen.side.body));
  await close();
});

test('a newcomer brings the target to the middle by the strong button alone, and the film says the same way', async () => {
  const { page, errors, close } = await lesson();
  const said = [];
  for (let i = 0; i < 10 && !(await page.locator('#stage-true_ap[data-phase="current"]').count()); i++) {
    said.push(await page.textContent('#needle-next'));
    // The film says the same way, wherever it may be seen in this view.
    if (said.at(-1).startsWith('Table')) assert.match(await page.textContent('#film-said'), /^Table /);
    await page.click('#needle-next');
    await drawn(page);
    await settled(page);
  }
  assert.ok(said.some((text) => /^Table (up|down) \d+ mm$/.test(text)) && said.includes('Look in the lateral'), said.join(', '));
  assert.match(await page.textContent('#stage-centre .stage-result'), /100 of 100/);
  assert.deepEqual(errors, []);
  await close();
});

test('by hand, and undo brings the table back; the numbers do not tell where the middle is', async () => {
  const { page, errors, close } = await lesson();
  await openSheet(page, 'picture');
  assert.equal(await tableNow(page), 'as it stood at the start');
  await page.keyboard.press('Escape');
  await page.locator('#stage-table').getByRole('button', { name: 'Move the table 5 mm: Left' }).click();
  await settled(page);
  await openSheet(page, 'picture');
  assert.equal(await tableNow(page), '5 mm left');
  await page.keyboard.press('Escape');
  await page.evaluate(() => document.getElementById('needle-undo').click());
  await settled(page);
  await openSheet(page, 'picture');
  assert.equal(await tableNow(page), 'as it stood at the start');
  await move(page, 'Up').click();
  await drawn(page);
  assert.equal(await tableNow(page), '5 mm up');
  await page.click('#straighten');
  await drawn(page);
  assert.equal(await tableNow(page), 'as it stood at the start');
  assert.deepEqual((await axeFinds(page)).violations, []);
  assert.ok((await sideways(page)) <= 0);
  assert.deepEqual(errors, []);
  await close();
});

test('a turn that would hit stops and says what would hit what and what to move; moved so, it goes on', async () => {
  const { page, errors, close } = await open(site, { hash: VIEWS });
  await page.waitForFunction(() => document.documentElement.dataset.later === 'done');
  await openSheet(page, 'picture');
  for (let i = 0; i < 30; i++) await move(page, 'Left').click();
  await page.keyboard.press('Escape');
  await settled(page);
  await turnTo(page, { oblique: 105, tilt: 0 });
  const sentence = await page.textContent('#notice-text');
  assert.match(sentence, /^Stopped: the receptor would hit the (table|patient); move the table \d+ mm (down|up|to the right|to the head|to the feet) first\.$/);
  const stopped = Number(await page.inputValue('#turn-oblique-number'));
  assert.ok(stopped > 0 && stopped < 105, String(stopped));
  const [, mm, way] = sentence.match(/(\d+) mm (down|up|to the right|to the head|to the feet)/);
  await openSheet(page, 'picture');
  const name = { down: 'Down', up: 'Up', 'to the right': 'Right', 'to the head': 'To the head', 'to the feet': 'To the feet' }[way];
  // What is told frees the place where it was stopped; going all the way may want more of it.
  for (let i = 0; i < Number(mm) / 5; i++) await move(page, name).click();
  await page.keyboard.press('Escape');
  await settled(page);
  await turnTo(page, { oblique: stopped + 1, tilt: 0 });
  assert.equal(Number(await page.inputValue('#turn-oblique-number')), Math.round((stopped + 1) * 10) / 10);
  assert.ok(await page.locator('#notice').isHidden());
  assert.deepEqual(errors, []);
  await close();
});
