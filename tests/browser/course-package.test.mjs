// A course of several lessons in one package, opened as a platform does: by its table of contents, each lesson with a record of its own.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { cmi5Host } from './cmi5-host.mjs';
import { launch, lessonStands, typeAngle } from './harness.mjs';
import { MODULES, html, origin } from './hosts.mjs';
import { bestTrueAp, graded, packer, unpacked } from './packages.mjs';
import { scormHost } from './scorm-host.mjs';
import { sequencedHost } from './sequenced-host.mjs';

/** Both want the true AP, of different patients. */
const LESSONS = ['true-ap', 'true-ap-turned'];
const PATIENTS = { 'true-ap': 'average', 'true-ap-turned': 'turned' };

let browser;
let packages;
let folders;
/** An origin a lesson: the host of tests keeps one record an origin. */
let sites;
before(async () => {
  packages = packer();
  browser = await launch();
  folders = Object.fromEntries(['scorm2004', 'cmi5'].map((form) => [form, unpacked(packages.pack(form, `${form}.zip`, ...LESSONS))]));
  const routes = [['/scorm2004/', folders.scorm2004], ['/cmi5/', folders.cmi5], ['/scorm-again/', `${MODULES}scorm-again/dist/`], ['/course/', folders.scorm2004], ['/client/', `${MODULES}@xapi/cmi5/dist/`], ['/other', async () => html('<script src="/client/Cmi5.umd.js"></script>')], ['/sequenced', async () => sequencedHost()], ['/host/', async (_, page) => scormHost('scorm2004', `/scorm2004/${page}`)]];
  sites = [await origin(routes), await origin(routes)];
});
after(async () => {
  await browser?.close();
  for (const site of sites ?? []) await site.close();
  packages.remove();
});

async function watched() {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  const errors = [];
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(String(error)));
  return { page, errors };
}

/** What a table of contents offers, read by the browser's own reader of XML. */
async function contents(path, read) {
  const { page } = await watched();
  const found = await page.evaluate(([text, how]) => {
    const xml = new DOMParser().parseFromString(text, 'application/xml');
    const all = (name, within = xml) => [...within.getElementsByTagNameNS('*', name)];
    if (how === 'cmi5') return all('au', all('block')[0]).map((au) => ({ title: all('langstring', all('title', au)[0]).find((s) => s.getAttribute('lang') === 'en').textContent, page: all('url', au)[0].textContent }));
    const resources = Object.fromEntries(all('resource').map((r) => [r.getAttribute('identifier'), r.getAttribute('href')]));
    return all('item').map((item) => ({ title: all('title', item)[0].textContent, page: resources[item.getAttribute('identifierref')] }));
  }, [readFileSync(path, 'utf8'), read]);
  await page.close();
  return found;
}

/** Does a lesson: begins, keeps the best view, finishes. */
async function done(lesson, id) {
  await lesson.waitForSelector('#lesson-begin', { timeout: 30_000 });
  await lesson.click('#lesson-begin');
  await lessonStands(lesson);
  const [, level, side] = /(L\d) (left|right)/.exec(await lesson.textContent('#lesson-body'));
  const best = bestTrueAp(PATIENTS[id], level, side);
  await typeAngle(lesson, 'oblique', best.oblique.toFixed(1));
  await typeAngle(lesson, 'tilt', best.tilt.toFixed(1));
  await lesson.click('#keep-true_ap');
  await lesson.click('#finish');
  await lesson.waitForSelector('#lesson-receipt');
}

test('SCORM 2004: a lesson each, opened by the manifest, with a record each', async () => {
  const items = await contents(`${folders.scorm2004}/imsmanifest.xml`, 'scorm');
  assert.equal(items.length, LESSONS.length);
  for (const [i, { title, page: path }] of items.entries()) {
    const { page, errors } = await watched();
    await page.goto(`${sites[i].address}/host/${path}`);
    const lesson = await (await page.waitForSelector('iframe')).contentFrame();
    await lesson.waitForSelector('#lesson-begin', { timeout: 30_000 });
    assert.equal(await lesson.textContent('#lesson-heading'), title);
    await done(lesson, LESSONS[i]);
    await page.waitForFunction(() => model()?.suspend_data.includes('{'));
    const kept = await page.evaluate(() => model());
    assert.equal(kept.completion_status, 'completed');
    const row = graded(packages.folder, kept.suspend_data);
    assert.deepEqual([row.status, row.lesson], ['verified', LESSONS[i]]);
    assert.equal(kept.success_status, row.passed ? 'passed' : 'failed');
    assert.ok(await lesson.locator('#lesson-next').count() === 0, 'what comes next is the platform’s');
    assert.deepEqual(errors, []);
    await page.close();
  }
});

test('SCORM 2004: a platform’s own sequencing delivers one lesson after the other and by choice, and rolls both up', async () => {
  const { page, errors } = await watched();
  await page.goto(`${sites[0].address}/sequenced`);
  await page.waitForFunction(() => globalThis.ready);
  const [course, ...items] = await page.evaluate(() => tree());
  assert.equal(items.length, LESSONS.length);
  const frame = async () => (await page.waitForSelector('iframe')).contentFrame();
  /** Asks the engine, and waits for the lesson that it delivers. */
  const go = async (request, target) => {
    assert.equal(await page.evaluate(([r, t]) => navigate(r, t), [request, target]), true, `${request} ${target ?? ''}`);
    const lesson = await frame();
    await lesson.waitForSelector('#lesson-begin', { timeout: 30_000 });
    return lesson;
  };
  await done(await go('start'), LESSONS[0]);
  assert.deepEqual(await page.evaluate(() => delivered), items.slice(0, 1));
  await done(await go('continue'), LESSONS[1]);
  assert.deepEqual(await page.evaluate(() => delivered), items);
  // Back to the first by the table of contents: what was done there stands.
  await go('choice', items[0]);
  const found = await page.evaluate((ids) => ids.map((id) => tracked(id)), items);
  assert.deepEqual(found.map((one) => [one.completionStatus, one.successStatus]), items.map(() => ['completed', 'passed']));
  const whole = await page.evaluate((id) => tracked(id), course);
  assert.deepEqual([whole.completionStatus, whole.successStatus], ['completed', 'passed'], 'both make the course');
  assert.deepEqual(await page.evaluate(() => said), []);
  assert.deepEqual(errors, []);
  await page.close();
});

test('cmi5: two units of one registration, both open: a pass of one is none of the other', async () => {
  const units = await contents(`${folders.cmi5}/cmi5.xml`, 'cmi5');
  assert.equal(units.length, LESSONS.length);
  const hosts = [await cmi5Host('https://lms.example.org/au/1'), await cmi5Host('https://lms.example.org/au/2')];
  try {
    const pages = [];
    for (const [i, { page: path, title }] of units.entries()) {
      const { page } = await watched();
      await page.goto(`${sites[0].address}/cmi5/${path}?${hosts[i].launched()}`);
      await page.waitForSelector('#lesson-begin', { timeout: 30_000 });
      assert.equal(await page.textContent('#lesson-heading'), title);
      pages.push(page);
    }
    for (const [i, page] of pages.entries()) {
      await page.bringToFront();
      await done(page, LESSONS[i]);
      for (let tries = 0; tries < 60 && !hosts[i].verbs().includes('passed'); tries += 1) await page.waitForTimeout(100);
      assert.deepEqual(hosts[i].verbs(), ['initialized', 'completed', 'passed'], LESSONS[i]);
      const row = graded(packages.folder, hosts[i].receipts[0].body);
      assert.deepEqual([row.status, row.lesson], ['verified', LESSONS[i]]);
    }
    for (const page of pages) await page.close();
    // A client that is not ours, in each unit's place: of the same activity it says the same things, in the standard's categories.
    for (const host of hosts) assert.deepEqual(host.broken, []);
    for (const [i, host] of hosts.entries()) {
      const again = await cmi5Host(`https://lms.example.org/au/${i + 1}`);
      const of = (all) => all.filter((s) => /initialized|completed|passed/.test(s.verb.id)).map((s) => [s.verb.id, s.object.id, s.actor, s.context.registration, (s.context.contextActivities.category ?? []).map((c) => c.id).filter((id) => !id.startsWith('urn:downbeam:')).sort()]);
      const own = of(host.statements);
      const { page } = await watched();
      await page.goto(`${sites[0].address}/other?${again.launched()}`);
      await page.evaluate(async () => {
        const client = new (globalThis.Cmi5.default ?? globalThis.Cmi5)();
        await client.initialize();
        await client.complete();
        await client.pass({ scaled: 0.9, raw: 90, min: 0, max: 100 });
        await client.terminate();
      });
      assert.deepEqual(of(again.statements), own);
      assert.deepEqual(again.broken, []);
      await page.close();
      await again.close();
    }
    for (const host of hosts) assert.deepEqual(host.broken, []);
  } finally {
    for (const host of hosts) await host.close();
  }
});
