// The film is the page: its share of the window, and what is needed in sight without scrolling, in each step of the views, of an injection and of a
// lesson, at each size the page is made for. And a newcomer who presses the one strong button and follows the arrow on the film.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { lessonStands, open, setUp, settled, sideways } from './harness.mjs';
import { align, drawn, mark, steerTo, turnTo, use } from './keyboard.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** Windows, and what the film must have of them at least: of the area, or of the width. */
const SIZES = [
  { width: 1440, height: 900, area: 0.45 },
  { width: 1280, height: 800, area: 0.45 },
  { width: 1024, height: 768, area: 0.45 },
  { width: 768, height: 1024, across: 0.6 },
  { width: 390, height: 844, whole: true },
  { width: 320, height: 640, whole: true },
];
const OPEN_TITLE = '[data-open] .stage-title';
const ANGLES = ['#picture', '#turn-oblique', '#turn-oblique-number', '#turn-tilt', '#turn-tilt-number', '#film-angles'];

/** What of `selectors` is not in sight, the film's share of the window's area and width, and how wide film and tilt are together. */
const seen = (page, selectors) =>
  page.evaluate((wanted) => {
    const caution = document.querySelector('.caution').getBoundingClientRect();
    const hidden = wanted.filter((selector) => {
      const element = document.querySelector(selector);
      if (!element?.checkVisibility()) return true;
      const box = element.getBoundingClientRect();
      const foot = box.right <= caution.left + 1 ? innerHeight : caution.top;
      return box.left < -0.5 || box.right > innerWidth + 0.5 || box.top < -0.5 || box.bottom > foot + 0.5;
    });
    const film = document.getElementById('picture').getBoundingClientRect();
    const tilt = document.getElementById('turn-tilt-control').getBoundingClientRect();
    const cautionSeen = caution.height > 10 && caution.bottom <= innerHeight + 0.5;
    return { hidden, area: (film.width * film.height) / (innerWidth * innerHeight), across: film.width / innerWidth, both: (tilt.right - film.left) / innerWidth, cautionSeen };
  }, selectors);

/** Sentences of the step in hand of which a line runs under its strong button. */
const underButton = (page) =>
  page.evaluate(() => {
    const buttons = [...document.querySelectorAll('.stage-body .button.strong')].filter((button) => button.checkVisibility()).map((button) => button.getBoundingClientRect());
    const sentences = [...document.querySelectorAll('.stage-title, .stage-act, .view-now, #needle-hint')].filter((one) => one.checkVisibility() && getComputedStyle(one).clipPath === 'none');
    return sentences.filter((sentence) => {
      const words = document.createRange();
      words.selectNodeContents(sentence);
      return [...words.getClientRects()].some((line) => buttons.some((box) => line.bottom > box.top + 2 && line.top < box.bottom - 2 && line.right > box.left && line.left < box.right));
    }).map((sentence) => sentence.textContent);
  });

/** Buttons that something else stands over. */
const covered = (page, selectors) =>
  page.evaluate((all) => all.filter((selector) => {
    const element = document.querySelector(selector);
    if (!element.matches('button')) return false;
    const box = element.getBoundingClientRect();
    return !element.contains(document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2));
  }), selectors);

/** At every size: the film rules, and nothing that is needed now is out of sight. */
async function rules(page, what, needed) {
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await page.evaluate(() => scrollTo(0, 0));
    await drawn(page);
    const now = await seen(page, [...ANGLES, ...needed]);
    const where = `${what} at ${size.width} × ${size.height}`;
    assert.deepEqual(now.hidden, [], `${where}: out of sight`);
    assert.ok(now.cautionSeen, `${where}: the caution`);
    assert.deepEqual(await covered(page, needed), [], `${where}: covered`);
    assert.deepEqual(await underButton(page), [], `${where}: under the strong button`);
    if (size.area) assert.ok(now.area >= size.area, `${where}: the film has ${(100 * now.area).toFixed(1)} % of the window`);
    if (size.across) assert.ok(now.across >= size.across, `${where}: the film has ${(100 * now.across).toFixed(1)} % of the width`);
    if (size.whole) assert.ok(now.both >= 0.99 && now.across >= 0.85, `${where}: film and tilt have ${(100 * now.both).toFixed(1)} % of the width`);
    assert.ok((await sideways(page)) <= 0, `${where}: sideways`);
    if (process.env.SHARES) console.log(where, `${(100 * now.area).toFixed(1)} % of the window, ${(100 * now.across).toFixed(0)} % of the width`);
    // However far one has scrolled, the film stays.
    await page.evaluate(() => scrollTo(0, 400));
    const scrolled = await seen(page, ['#picture', '#turn-oblique', '#turn-tilt']);
    assert.deepEqual(scrolled.hidden, [], `${where}, scrolled`);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.evaluate(() => scrollTo(0, 0));
}

/** The hand's buttons of a step are in sight without a scroll, and can be pressed there. */
async function underThumb(page, what, buttons) {
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await page.evaluate(() => scrollTo(0, 0));
    await drawn(page);
    const { hidden } = await seen(page, ['#needle-hint', ...buttons]);
    assert.deepEqual(hidden, [], `${what} at ${size.width} × ${size.height}`);
    assert.deepEqual(await covered(page, buttons), [], `${what} at ${size.width} × ${size.height}: covered`);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}

/** The first four steps of an injection, up to the button that places the needle, each measured. */
async function upToPlacing(page) {
  await rules(page, 'true AP', [OPEN_TITLE, '#keep-true_ap']);
  await turnTo(page, { oblique: 0, tilt: -2.1 });
  await use(page, 'keep-true_ap');
  await rules(page, 'oblique', [OPEN_TITLE, '#keep-oblique']);
  await turnTo(page, { oblique: 23.8, tilt: -2 });
  await use(page, 'keep-oblique');
  await rules(page, 'mark', [OPEN_TITLE, '#mark']);
  await mark(page, [-15.4, -5.6]);
  await rules(page, 'place', [OPEN_TITLE, '#place']);
}

test('views: the film rules, and question, answer and button are in sight in every step', async () => {
  const { page, errors, close } = await open(site, { hash: '#patient=average&level=L4&side=left&start=1&oblique=-9&tilt=12' });
  const current = '[data-phase="current"] .step-title';
  await rules(page, 'the question', [current, '#step-said', '#way-1', '#way-2', '#check']);
  await page.click('#way-1');
  await drawn(page);
  await rules(page, 'the answer', [current, '#step-said', '#check']);
  await turnTo(page, { oblique: 0, tilt: 12 });
  await rules(page, 'square', [current, '#check']);
  await turnTo(page, { oblique: 0, tilt: -2.1 });
  await rules(page, 'oblique', [current, '#way-1', '#way-2', '#check']);
  await turnTo(page, { oblique: 23.8, tilt: -2 });
  await page.waitForFunction(() => document.getElementById('steps-progress').textContent.startsWith('4'), null, { timeout: 5000 });
  await rules(page, 'done', ['#next-start']);
  assert.deepEqual(errors, []);
  await close();
});

for (const locale of ['de', 'es']) {
  for (const told of ['', 'self-test=on&']) {
    test(`injection in ${locale}, ${told || 'told'}: long sentences leave the button free`, async () => {
      const { page, errors, close } = await open(site, { hash: `#${told}injection=on&patient=average&level=L4&side=left`, options: { locale } });
      await upToPlacing(page);
      assert.deepEqual(errors, []);
      await close();
    });
  }
}

test('injection: the film rules, and what is to be done is in sight in each of its nine steps', async () => {
  const { page, errors, close } = await open(site, { hash: '#injection=on&patient=average&level=L4&side=left' });
  await upToPlacing(page);
  await use(page, 'place');
  const needle = ['#needle-hint', '#needle-next'];
  await rules(page, 'hub over tip', [OPEN_TITLE, ...needle]);
  await underThumb(page, 'hub over tip', ['.hand-pad .button:first-child', '.hand-pad .button:last-child']);
  await align(page);
  await steerTo(page, 20);
  await rules(page, 'steer', [OPEN_TITLE, ...needle]);
  await underThumb(page, 'steer', ['.hand-push .button:first-child', '.hand-push ~ .hand-push .button:last-child', '#hub-dial', '#half-turn']);
  await steerTo(page, 55);
  await rules(page, 'depth', [OPEN_TITLE, ...needle]);
  await underThumb(page, 'depth', ['#go-true_ap', '#go-lateral', '#go-oblique']);
  await use(page, 'go-on-depth');
  await rules(page, 'contrast', [OPEN_TITLE, '#needle-hint', '#aspirate']);
  await underThumb(page, 'contrast', ['#inject-10', '#inject-50', '#inject-hold']);
  await use(page, 'go-on-contrast');
  await rules(page, 'finish', [OPEN_TITLE, '#finish']);
  assert.deepEqual(errors, []);
  await close();
});

test('the target to the middle: the film rules, and the way, its button and the table’s buttons are in sight', async () => {
  const { page, errors, close } = await open(site, { hash: '#open=target-in-the-middle', ready: false });
  await page.waitForSelector('#lesson-begin');
  await page.click('#lesson-begin');
  await lessonStands(page);
  await rules(page, 'middle', ['#lesson-heading', OPEN_TITLE, '#needle-next', '#look-true_ap', '#stage-table .nudge:last-child']);
  assert.deepEqual(errors, []);
  await close();
});

test('a lesson: the film rules; its beginning, and then its step and its button are in sight', async () => {
  const { page, errors, close } = await open(site, { hash: '#open=true-ap', ready: false });
  await page.waitForSelector('#lesson-begin');
  await rules(page, 'before the lesson', ['#lesson-begin']);
  await page.click('#lesson-begin');
  await lessonStands(page);
  await rules(page, 'lesson', ['#lesson-heading', OPEN_TITLE, '#keep-true_ap']);
  assert.deepEqual(errors, []);
  await close();
});

/** The arrow on the film by its words, which the canvas also says in text: which way on the screen, and how far, degrees. */
async function arrow(page) {
  const [, deg, way] = (await page.textContent('#film-said')).match(/([\d.]+)° (to the left|to the right|cephalad|caudad)$/) ?? [];
  const ways = { 'to the left': [-1, 0], 'to the right': [1, 0], cephalad: [0, -1], caudad: [0, 1] };
  return way ? { deg: Number(deg), way: ways[way] } : null;
}

/** Follows the arrow with the mouse on the film. Returns whether there was one. */
async function follow(page) {
  const now = await arrow(page);
  if (!now) return false;
  const film = await page.locator('#overlay').boundingBox();
  const length = Math.max(8, (now.deg * film.width) / 90);
  // From where there is room to go that way, and no hub.
  const from = [film.x + film.width * (now.way[0] > 0 ? 0.05 : 0.95), film.y + film.height * (now.way[1] < 0 ? 0.85 : 0.12)];
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move(from[0] + now.way[0] * length, from[1] + now.way[1] * length, { steps: 4 });
  await page.mouse.up();
  await settled(page);
  return true;
}

/** The middle of the area that the film shows dashed, mm on the detector, from another room of the same engine. */
const middleOfArea = (page) => page.evaluate(async () => {
  const { TeachingRoom } = await import('/pkg/downbeam.js');
  const room = new TeachingRoom('average', 'L4', 'left');
  room.setOrientation(...['oblique', 'tilt'].map((key) => Number(document.getElementById(`turn-${key}-number`).value)));
  const area = room.procedure(0).area_mm;
  room.free();
  return [0, 1].map((i) => area.reduce((sum, p) => sum + p[i], 0) / area.length);
});

test('a newcomer who presses the one strong button and follows the arrow has a true AP within 20 seconds', async () => {
  const { page, errors, close } = await open(site);
  let presses = 0;
  // The button is pressed once; then the arrow is followed.
  await page.click('#check');
  for (; presses < 12 && !(await page.locator('#step-square[data-phase="done"]').count()); presses++) {
    await drawn(page);
    if (!(await follow(page))) await page.click('#check');
  }
  assert.ok(await page.locator('#step-square[data-phase="done"]').count(), 'a true AP, squared');
  // A press or drag of a newcomer takes about two seconds.
  assert.ok(presses * 2 <= 20, `${presses} presses and drags`);
  assert.equal(await page.locator(':popover-open').count(), 0);
  assert.deepEqual(errors, []);
  await close();
});

test('the same newcomer finishes a guided injection without opening anything', async () => {
  const { page, errors, close } = await open(site, { hash: '#injection=on&patient=average&level=L4&side=left' });
  const strong = '#needle .button.strong:visible';
  for (let i = 0; i < 120 && (await page.locator('#marks').isHidden()); i++) {
    // A view first: the arrow, while there is one.
    if (await follow(page)) continue;
    const button = page.locator(strong).first();
    const id = await button.getAttribute('id').catch(() => null);
    if (id === 'mark') {
      await button.click();
      await drawn(page);
      // The middle of the dashed area that the film shows.
      const at = await middleOfArea(page);
      const film = await page.locator('#overlay').boundingBox();
      await page.mouse.click(film.x + (0.5 + at[0] / 204.8) * film.width, film.y + (0.5 - at[1] / 204.8) * film.height);
    } else if (await page.locator('#pattern').isVisible() && !(await page.locator('#verdict').isVisible())) {
      // What the contrast shows is asked: the spread along the root.
      await page.selectOption('#pattern', 'perineural');
      await page.click('#name');
    } else {
      assert.ok(id, `a strong button: ${await page.innerText('#needle')}`);
      await button.click();
    }
    await drawn(page);
    await settled(page);
  }
  assert.ok(await page.locator('#marks').isVisible(), await page.innerText('#needle'));
  assert.equal(await page.locator(':popover-open').count(), 0);
  assert.deepEqual(errors, []);
  await close();
});
