// Whole packages of `downbeam pack` in their hosts: opened, worked in, left, come back to, finished; the receipt that arrives is graded.

import assert from 'node:assert/strict';
import { fileURLToPath } from 'node:url';
import { after, before, test } from 'node:test';
import { cmi5Host } from './cmi5-host.mjs';
import { launch, lessonStands, typeAngle } from './harness.mjs';
import { MODULES, origin } from './hosts.mjs';
import { bestTrueAp, graded, packer, unpacked } from './packages.mjs';
import { scormHost } from './scorm-host.mjs';

const EXAMPLES = fileURLToPath(new URL('../../examples/', import.meta.url));
const LESSON = 'true-ap';

let browser;
let packages;
let site;
before(async () => {
  packages = packer();
  browser = await launch();
  const folders = ['scorm12', 'scorm2004', 'cmi5'].map((form) => [`/${form}/`, unpacked(packages.pack(form, `${form}.zip`, LESSON))]);
  site = await origin([
    ...folders,
    ['/examples/', EXAMPLES],
    ['/site/', packages.pack('site', 'site')],
    ['/scorm-again/', `${MODULES}scorm-again/dist/`],
    ['/host/', async (_, form) => scormHost(form, `/${form}/player.html`)],
  ], { 'Access-Control-Allow-Origin': '*' });
});
after(async () => (await browser.close(), await site.close(), packages.remove()));

/** A page that collects what went wrong in it and in its frames. */
async function watched() {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  const errors = [];
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(String(error)));
  return { page, errors };
}

/** The lesson's page: in the frame of `page`, or `page` itself. */
const inFrame = async (page) => (await page.waitForSelector('iframe')).contentFrame();

/** The learner begins, or goes on, and waits for the patient. */
async function begin(lesson, button = '#lesson-begin') {
  await lesson.waitForSelector(button, { timeout: 30_000 });
  await lesson.click(button);
  await lessonStands(lesson);
}

/** Keeps the true AP: straight, and squared by what the engine holds for best. */
async function keepView(lesson) {
  const best = bestTrueAp('average', 'L4', 'left');
  await typeAngle(lesson, 'oblique', best.oblique.toFixed(1));
  await typeAngle(lesson, 'tilt', best.tilt.toFixed(1));
  await lesson.click('#keep-true_ap');
}

const finish = async (lesson) => (await lesson.click('#finish'), lesson.waitForSelector('#lesson-receipt'));

for (const form of ['scorm12', 'scorm2004']) {
  test(`${form}: from the platform’s launch to its record`, async () => {
    const { page, errors } = await watched();
    await page.goto(`${site.address}/host/${form}`);
    let lesson = await inFrame(page);
    await lesson.waitForSelector('#lesson-begin', { timeout: 30_000 });
    assert.ok(await lesson.locator('.top').isHidden());
    assert.match(await lesson.inputValue('#lesson-code'), /^[0-9a-v]{13}$/);
    await begin(lesson);
    await keepView(lesson);
    await page.waitForTimeout(1200);
    await page.evaluate(() => document.getElementById('lesson').remove());
    assert.match(await page.evaluate(() => model().suspend_data), /^db1\./);

    await page.reload();
    lesson = await inFrame(page);
    await begin(lesson, '#lesson-go-on');
    assert.match(await lesson.textContent('#stage-true_ap'), /100 of 100/);
    await finish(lesson);
    assert.ok(await lesson.locator('#lesson-leave').isHidden(), 'no list to go to');
    await page.waitForFunction(() => model().suspend_data.includes('{'));
    const kept = await page.evaluate(() => model());
    assert.equal(form === 'scorm12' ? kept.core.lesson_status : kept.success_status, 'passed');
    assert.equal(Number((kept.core ?? kept).score.raw), 100);
    const row = graded(packages.folder, kept.suspend_data);
    assert.deepEqual([row.status, row.lesson, row.total], ['verified', LESSON, 1]);
    assert.deepEqual(await page.evaluate(() => refused), []);
    assert.deepEqual(errors, []);
    await page.close();
  });
}

test('cmi5: from the platform’s launch to its record', async () => {
  const host = await cmi5Host();
  const { page, errors } = await watched();
  await page.goto(`${site.address}/cmi5/player.html?${host.launched()}`);
  await begin(page);
  await keepView(page);
  await finish(page);
  await page.waitForFunction(() => document.querySelector('#lesson-receipt'));
  for (let tries = 0; tries < 40 && !host.verbs().includes('passed'); tries += 1) await page.waitForTimeout(100);
  await page.goto('about:blank');
  await page.waitForTimeout(300);
  assert.deepEqual(host.verbs(), ['initialized', 'completed', 'passed', 'terminated']);
  assert.deepEqual(host.broken, []);
  assert.equal(graded(packages.folder, host.receipts[0].body).status, 'verified');
  assert.deepEqual(errors.filter((error) => !/404/.test(error)), []);
  await page.close();
  await host.close();
});

for (const sandbox of ['', '&sandbox=1']) {
  test(`in the frame of a course page${sandbox ? ', sandboxed' : ''}: the example takes the result`, async () => {
    const { page, errors } = await watched();
    await page.goto(`${site.address}/examples/iframe-host/index.html?player=/site/player.html&lesson=${LESSON}&learner=A7${sandbox}`);
    const lesson = await inFrame(page);
    await begin(lesson);
    assert.equal(await lesson.evaluate(() => self.origin), sandbox ? 'null' : site.address);
    await keepView(lesson);
    await page.waitForFunction(() => /Actions done: [1-9]/.test(document.getElementById('progress').textContent));
    await finish(lesson);
    await page.waitForFunction(() => /100 of 100, passed/.test(document.getElementById('result').textContent));
    await lesson.waitForFunction(() => /Your course page has your receipt/.test(document.getElementById('notice-text').textContent));
    // The size goes to the page around as a message, after the notice has made the lesson longer.
    let sizes;
    for (let i = 0; i < 50; i++) {
      sizes = [await page.evaluate(() => document.getElementById('lesson').clientHeight), await lesson.evaluate(() => document.body.scrollHeight)];
      if (Math.abs(sizes[0] - sizes[1]) <= 4) break;
      await page.waitForTimeout(100);
    }
    assert.ok(Math.abs(sizes[0] - sizes[1]) <= 4, `a frame of ${sizes[0]} px for ${sizes[1]} px`);
    assert.deepEqual(errors, []);
    await page.close();
  });
}

test('the example of a platform shows what a package says, and keeps it', async () => {
  const { page, errors } = await watched();
  await page.goto(`${site.address}/examples/lms-host/index.html?package=/scorm12`);
  const lesson = await inFrame(page);
  await begin(lesson);
  await keepView(lesson);
  await page.waitForTimeout(1200);
  await page.click('#leave');
  await page.waitForFunction(() => /cmi\.suspend_data\s*db1\./.test(document.getElementById('values').textContent));
  await page.reload();
  await (await inFrame(page)).waitForSelector('#lesson-go-on', { timeout: 30_000 });
  assert.deepEqual(errors, []);
  await page.close();
});
