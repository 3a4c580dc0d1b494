// Lessons on the page: the course, a link, an attempt under the lesson's rules, coming back, the receipt, naming the parts.

import assert from 'node:assert/strict';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { ROOT, axeFinds, cargo, lessonStands, open, setUp, sideways, typeAngle, openSheet } from './harness.mjs';
import { drawn } from './keyboard.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const notice = (page) => page.locator('#notice-text').textContent();

/** Opens a lesson at its first panel. */
async function arrive(hash, more = {}) {
  const opened = await open(site, { hash, ready: false, ...more });
  await opened.page.waitForSelector('#lesson-begin', { timeout: 30_000 });
  return opened;
}

/** Begins it and waits until its patient stands. */
async function begin(page, code = '') {
  if (code) await page.fill('#lesson-code', code);
  await page.click('#lesson-begin');
  await lessonStands(page);
}

/** Types the angles of a view that the engine holds for the best. */
async function bestView(page, view, patient, level, side) {
  const best = await page.evaluate(async ([wanted, ...room]) => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const own = new TeachingRoom(...room);
    const found = own.report().views.find((v) => v.view === wanted).best;
    own.free();
    return found;
  }, [view, patient, level, side]);
  await typeAngle(page, 'oblique', best.oblique.toFixed(1));
  await typeAngle(page, 'tilt', best.tilt.toFixed(1));
}

/** What the native engine says of a receipt: its row. */
async function graded(text) {
  const folder = await mkdtemp(join(tmpdir(), 'receipt-'));
  try {
    await writeFile(join(folder, 'receipt.json'), text);
    cargo(folder, '--', 'grade', 'receipt.json', '--ndjson', 'rows.ndjson');
    return JSON.parse(await readFile(join(folder, 'rows.ndjson'), 'utf8'));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function receipt(page) {
  await page.waitForSelector('#lesson-receipt');
  const [file] = await Promise.all([page.waitForEvent('download'), page.click('#lesson-receipt')]);
  return readFile(await file.path(), 'utf8');
}

async function axe(page, what) {
  assert.deepEqual((await axeFinds(page)).violations, [], what);
}

test('a code typed and Begin reached at once by Tab: the button under the focus stays and begins', async () => {
  const { page, errors, close } = await arrive('#open=true-ap');
  await page.evaluate(() => (window.firstButton = document.getElementById('lesson-begin')));
  await page.focus('#lesson-code');
  await page.keyboard.type('M-7');
  await page.keyboard.press('Tab');
  // What was kept for a code is looked up after each letter; give every answer the time to come.
  await page.waitForTimeout(300);
  assert.equal(await page.evaluate(() => document.activeElement === window.firstButton && window.firstButton.isConnected), true);
  await page.keyboard.press('Enter');
  await lessonStands(page);
  assert.deepEqual(errors, []);
  await close();
});

test('the course is listed whole, and a lesson goes from its first panel to a receipt that the native engine verifies', async () => {
  const { page, errors, close } = await open(site);
  await page.check('#activity-lessons', { force: true });
  await page.waitForSelector('.lesson-row');
  const { lessons } = JSON.parse(await readFile(join(ROOT, 'www/lessons/index.json'), 'utf8'));
  assert.deepEqual(await page.$$eval('.lesson-row', (rows) => rows.map((r) => r.id.replace('lesson-', ''))), lessons);
  await axe(page, 'list');
  await page.click('#lesson-square-the-plate');
  await page.waitForSelector('#lesson-begin');
  await axe(page, 'before');
  await begin(page, ' anna 7 ');
  assert.equal(await page.locator('#levels').isVisible(), false);
  await bestView(page, 'true_ap', 'average', 'L5', 'left');
  await page.click('#keep-true_ap');
  await bestView(page, 'oblique', 'average', 'L5', 'left');
  await page.click('#keep-oblique');
  await page.click('#finish');
  const text = await receipt(page);
  await axe(page, 'result');
  assert.match(await page.locator('.lesson-total').textContent(), /^100 of 100: passed/);
  const row = await graded(text);
  assert.deepEqual([row.status, row.learner, row.lesson, row.total], ['verified', 'anna 7', 'square-the-plate', 1]);
  await page.click('#lesson-leave');
  await page.waitForSelector('#lesson-square-the-plate');
  assert.match(await page.locator('#lesson-square-the-plate').textContent(), /passed, best 100 of 100/);
  assert.deepEqual(errors, []);
  await close();
});

test('a closed page loses a second at most: the attempt goes on where it was', async () => {
  const { page, close } = await arrive('#open=true-ap');
  await begin(page, 'bo');
  await bestView(page, 'true_ap', 'average', 'L4', 'left');
  await page.click('#keep-true_ap');
  await page.waitForTimeout(1200);
  await page.reload();
  await page.waitForSelector('#lesson-go-on', { timeout: 30_000 });
  await page.click('#lesson-go-on');
  await lessonStands(page);
  assert.match(await page.locator('#stage-true_ap').textContent(), /100 of 100/);
  await page.click('#finish');
  assert.equal((await graded(await receipt(page))).total, 1);
  // Another code has nothing to go on with.
  await page.click('#lesson-again');
  await page.fill('#lesson-code', 'cy');
  assert.equal(await page.locator('#lesson-go-on').count(), 0);
  await close();
});

test('a reload in mid-lesson offers at once to go on, and the list shows what was begun', async () => {
  const { page, close } = await open(site);
  await page.click('label[for="activity-lessons"]');
  await page.click('#lesson-true-ap');
  await page.waitForSelector('#lesson-begin');
  await begin(page, 'fay');
  await bestView(page, 'true_ap', 'average', 'L4', 'left');
  await page.click('#keep-true_ap');
  await page.waitForTimeout(1200);
  await page.reload();
  await page.waitForSelector('#lesson-go-on', { timeout: 30_000 });
  assert.match(await page.textContent('#lesson-heading'), /A true AP/);
  await page.click('#lesson-leave');
  await page.waitForSelector('#lesson-true-ap');
  assert.match(await page.textContent('#lesson-true-ap'), /begun/);
  await page.reload();
  await page.waitForFunction(() => document.documentElement.dataset.later === 'done');
  assert.equal(await page.locator('#lesson').isVisible(), false, 'what was left is not offered again');
  await close();
});

test('a view worth nothing is asked about once, and does not look like one that is right; practice says nothing unasked', async () => {
  const { page, close } = await arrive('#open=process-under-pedicle');
  await begin(page);
  assert.equal(await page.locator('#needle-hint').isVisible(), false);
  assert.equal(await page.locator('#stage-true_ap .view-now').isVisible(), false);
  await openSheet(page, 'checks');
  assert.equal(await page.locator('#check-total').isVisible(), false);
  assert.doesNotMatch(await page.textContent('#status'), /degree/);
  await page.click('#needle-hint-ask');
  await drawn(page);
  assert.match(await page.textContent('#needle-hint-text'), /Turn the receptor/);
  await typeAngle(page, 'oblique', 60);
  assert.equal(await page.locator('#needle-hint').isVisible(), false, 'the hint was for the view that stood then');
  await page.click('#keep-true_ap');
  await drawn(page);
  assert.equal(await page.getAttribute('#stage-true_ap', 'data-phase'), 'current');
  assert.match(await page.textContent('#stage-true_ap .view-now'), /worth 0 of 100/);
  await page.click('#keep-true_ap');
  await drawn(page);
  assert.equal(await page.getAttribute('#stage-true_ap', 'data-phase'), 'done');
  assert.equal(await page.getAttribute('#stage-true_ap', 'data-worth'), 'nothing');
  assert.match(await page.textContent('#needle-said'), /True AP: 0 of 100\. Next: Oblique/);
  await page.locator('#stage-true_ap .stage-dot').click();
  await bestView(page, 'true_ap', 'worn', 'L4', 'right');
  await page.click('#keep-true_ap');
  await drawn(page);
  assert.equal(await page.getAttribute('#stage-true_ap', 'data-worth'), '');
  await page.locator('#stage-finish .stage-dot').click();
  await page.click('#finish');
  await page.waitForSelector('#lesson-receipt');
  assert.match(await page.textContent('#gates [data-gate="complete"]'), /^×Every step done .*: 1 of 2 steps/);
  assert.match(await page.textContent('.lesson-total'), /not passed yet/);
  await close();
});

test('steps that are left open say so, and none that is worth nothing looks right', async () => {
  const { page, close } = await arrive('#open=confirm-with-contrast');
  await begin(page);
  const press = async (selector) => (await page.click(selector), await drawn(page));
  const phase = (id) => page.getAttribute(`#stage-${id}`, 'data-phase');
  const worth = (id) => page.getAttribute(`#stage-${id}`, 'data-worth');
  for (const view of ['true_ap', 'oblique']) {
    await press(`#keep-${view}`);
    if ((await phase(view)) === 'current') await press(`#keep-${view}`);
  }
  // A mark off the bone, and a needle that nobody puts in line with the beam.
  await press('#mark');
  const film = await page.locator('#overlay').boundingBox();
  await page.mouse.click(film.x + 0.9 * film.width, film.y + 0.5 * film.height);
  await drawn(page);
  assert.deepEqual([await phase('mark'), await worth('mark')], ['done', 'nothing']);
  await press('#place');
  for (let i = 0; i < 4; i++) await press('#hand .hand-row[aria-label="Advance, mm"] button >> text=/^5$/');
  assert.deepEqual([await phase('align'), await worth('align')], ['done', 'nothing']);
  for (const id of ['steer', 'depth', 'contrast']) {
    await press(`#go-on-${id}`);
    assert.deepEqual([await phase(id), await page.textContent(`#stage-${id} .stage-result`)], ['left', 'left open']);
  }
  await press('#needle-hint-ask');
  assert.match(await page.textContent('#needle-hint-text'), /^Not every step is done/);
  await press('#finish');
  assert.equal(await phase('contrast'), 'left');
  assert.match(await page.textContent('.lesson-total'), /not passed yet/);
  await close();
});

test('naming begins on the needle’s side, and its hint is of a part', async () => {
  const { page, close } = await arrive('#open=name-the-parts');
  await begin(page);
  assert.ok(Number(await page.inputValue('#turn-oblique-number')) > 0);
  assert.match(await page.textContent('#needle-hint-text'), /of L\d is the dog’s|of L\d (stands|is)/);
  await close();
});

test('an assessment gives nothing away before its end, and what is finished stays finished', async () => {
  const { page, close } = await arrive('#open=views-assessment');
  await page.click('#lesson-begin');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'lesson-code', 'a code is wanted');
  await begin(page, 'dee');
  for (const id of ['checks', 'outlines', 'labels', 'needle-hint', 'needle-hint-ask', 'needle-again', 'film-aids']) assert.equal(await page.locator(`#${id}`).isVisible(), false, id);
  assert.equal(await page.locator('#film-empty').isVisible(), true, 'nothing is seen without an exposure');
  assert.equal(await page.locator('#source-live').isDisabled(), true);
  await page.click('#spot');
  await page.click('#keep-true_ap');
  await page.click('#keep-oblique');
  assert.doesNotMatch(await page.locator('#stage-list').innerText(), /of 100/);
  await page.click('#finish');
  const text = await receipt(page);
  assert.equal(await page.locator('#needle-undo').isDisabled(), true);
  await page.keyboard.press('Control+z');
  assert.equal(await page.locator('#lesson-receipt').isVisible(), true);
  const row = await graded(text);
  assert.equal(row.status, 'verified');
  assert.ok(row.total < 1);
  await close();
});

test('parts are named by keyboard; what was missed comes back', async () => {
  const { page, close } = await arrive('#open=name-the-parts');
  await begin(page);
  await page.waitForSelector('#naming-ask');
  const film = page.locator('#picture');
  await film.focus();
  const parts = () => page.evaluate(async () => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const own = new TeachingRoom('average', 'L4', 'left');
    const angle = (key) => Number(document.getElementById(`turn-${key}-number`).value);
    own.setOrientation(angle('oblique'), angle('tilt'));
    const shown = own.partsShown(false).map(({ level, part, side }) => `${side ? `${side} ` : ''}${part.replaceAll('_', ' ')} of ${level}`);
    own.free();
    return shown;
  });
  await bestView(page, 'oblique', 'average', 'L4', 'left');
  const shown = await parts();
  // The question stands with the next frame.
  const asked = async () => (await drawn(page), /Point at the (.*)\.$/.exec(await page.locator('#naming-ask').textContent())?.[1]);
  const give = async (name) => {
    const at = shown.indexOf(name);
    assert.ok(at >= 0, `${name} is not in the picture`);
    for (let i = 0; i <= shown.length; i += 1) {
      await film.press('ArrowRight');
      if ((await page.locator('#needle-said').textContent()) === `Outline ${at + 1} of ${shown.length} is lit.`) return film.press('Enter');
    }
    assert.fail(`${name} was never lit`);
  };
  const first = await asked();
  await give(shown.find((name) => name !== first));
  assert.match(await page.locator('#needle-said').textContent(), /^No: that is the /);
  const order = [];
  for (let name = await asked(); name; name = await asked()) {
    order.push(name);
    await give(name);
    assert.match(await page.locator('#needle-said').textContent(), /^Right: /);
    if (order.length > 40) break;
  }
  assert.equal(order.indexOf(first), 2, 'a missed part comes back after two others');
  await page.click('#finish');
  const row = await graded(await receipt(page));
  assert.ok(row.status === 'verified' && row.total < 1 && row.total > 0.8, JSON.stringify(row));
  await close();
});

test('a part is taken with a press, and given with a second one', async () => {
  const { page, close } = await arrive('#open=name-the-parts', { options: { viewport: { width: 360, height: 740 }, hasTouch: true } });
  await begin(page);
  await axe(page, 'naming on a phone');
  assert.ok((await sideways(page)) <= 0);
  // Some place on the picture where an outline is.
  const [x, y] = await page.evaluate(async () => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const own = new TeachingRoom('average', 'L4', 'left');
    const angle = (key) => Number(document.getElementById(`turn-${key}-number`).value);
    own.setOrientation(angle('oblique'), angle('tilt'));
    for (let v = 0; v < 60; v += 1) if (own.partAt(0, v, 1, false)) return [0.5, 0.5 - v / 204.8];
    return null;
  });
  const box = await page.locator('#overlay').boundingBox();
  const tap = () => page.touchscreen.tap(box.x + x * box.width, box.y + y * box.height);
  await tap();
  assert.equal(await page.locator('#needle-said').textContent(), 'An outline is lit.');
  await tap();
  assert.match(await page.locator('#needle-said').textContent(), /^(Right|No): /);
  await close();
});

test('links that are broken, and lessons that are none, leave the page as it was and say so', async () => {
  const { page, errors, close } = await open(site, { hash: '#lesson=bm90IGpzb24', ready: false });
  await page.waitForSelector('.lesson-row', { timeout: 30_000 });
  assert.match(await notice(page), /^This lesson cannot be opened: this is no JSON/);
  await page.evaluate(() => (location.hash = '#open=nothing'));
  await page.waitForFunction(() => /There is no lesson “nothing”/.test(document.getElementById('notice-text').textContent));
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.click('#lesson-file')]);
  await chooser.setFiles({ name: 'l.json', mimeType: 'application/json', buffer: Buffer.from('{"format": 1, "colour": "red"}') });
  await page.waitForFunction(() => /colour: unknown field 'colour'/.test(document.getElementById('notice-text').textContent));
  await page.check('#activity-views', { force: true });
  await page.locator('#steps').waitFor();
  assert.deepEqual(errors, []);
  await close();
});

test('a lesson in a link is opened whole, markup in it is text', async () => {
  const shipped = JSON.parse(await readFile(join(ROOT, 'www/lessons/true-ap.json'), 'utf8'));
  const json = JSON.stringify({ ...shipped, $schema: undefined, id: 'own', title: { en: '<b>Own</b> & <img src=x onerror=alert(1)>' } });
  const { page, close } = await arrive(`#lesson=${Buffer.from(json).toString('base64url')}`);
  assert.equal(await page.locator('#lesson-heading').textContent(), '<b>Own</b> & <img src=x onerror=alert(1)>');
  assert.equal(await page.locator('#lesson-heading').evaluate((e) => e.childElementCount), 0);
  await close();
});

test('without storage a lesson can be done, and the page says that nothing is kept', async () => {
  const { page, close } = await arrive('#open=true-ap', {
    prepare: (p) => p.addInitScript(() => Object.defineProperty(globalThis, 'localStorage', { get: () => { throw new DOMException('no', 'SecurityError'); } })),
  });
  await begin(page);
  // As it begins the view is worth nothing: asked about once.
  for (let i = 0; i < 2; i++) await page.click('#keep-true_ap');
  await page.waitForFunction(() => /keeps nothing for this page/.test(document.getElementById('notice-text').textContent), null, { timeout: 5000 });
  await page.click('#finish');
  assert.equal((await graded(await receipt(page))).status, 'verified');
  await close();
});

test('progress goes out as a file and comes in again, the better marks winning', async () => {
  const { page, close } = await arrive('#open=true-ap');
  await begin(page);
  await bestView(page, 'true_ap', 'average', 'L4', 'left');
  await page.click('#keep-true_ap');
  await page.click('#finish');
  await page.waitForSelector('#lesson-receipt');
  await page.click('#lesson-leave');
  await page.waitForSelector('#progress-save');
  const [file] = await Promise.all([page.waitForEvent('download'), page.click('#progress-save')]);
  const text = await readFile(await file.path(), 'utf8');
  await page.evaluate(() => localStorage.clear());
  await page.reload();
  await page.check('#activity-lessons', { force: true });
  await page.waitForSelector('#lesson-true-ap');
  assert.match(await page.locator('#lesson-true-ap').textContent(), /new$/);
  for (const [body, said] of [['[]', /no progress of this page/], [text, /best 100 of 100/]]) {
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.click('#progress-open')]);
    await chooser.setFiles({ name: 'p.json', mimeType: 'application/json', buffer: Buffer.from(body) });
    await page.waitForFunction((pattern) => new RegExp(pattern).test(document.getElementById('notice-text').textContent + document.getElementById('lesson-true-ap').textContent), said.source);
  }
  await close();
});

test('a lesson that was left stands as it was, and the page goes its own way', async () => {
  const { page, close } = await arrive('#open=square-the-plate');
  await begin(page, 'eve');
  for (let i = 0; i < 2; i++) await page.click('#keep-true_ap');
  await page.check('#activity-views', { force: true });
  await page.waitForFunction(() => document.body.dataset.activity === 'views');
  await openSheet(page, 'case');
  assert.equal(await page.locator('#levels').isVisible(), true);
  await page.keyboard.press('Escape');
  assert.equal(await page.locator('#lesson').isVisible(), false);
  await page.check('#activity-injection', { force: true });
  await page.waitForFunction(() => !document.getElementById('stage-mark').hidden);
  await page.check('#activity-lessons', { force: true });
  await page.click('#lesson-square-the-plate');
  await page.waitForSelector('#lesson-go-on');
  await close();
});
