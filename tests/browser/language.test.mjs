// The page in another language: how it is chosen, what it says, what it does when a language is not to be had. That every message exists in
// English, and nothing else in the others, the build says (src/bin/downbeam/texts.rs).

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeClean, open, setUp, settled, typeAngle } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const AP = '#level=L4&side=left&patient=average';

test('by the address, with sides, numbers and findings in the language', async () => {
  const { page, errors, close } = await open(site, { path: '?lang=de', hash: AP });
  assert.equal(await page.getAttribute('html', 'lang'), 'de');
  await typeAngle(page, 'oblique', 12.5);
  await typeAngle(page, 'tilt', 3);
  await settled(page);
  assert.match(await page.textContent('#turns'), /12,5° zur linken Seite der Person/);
  const advice = (await page.locator('#checks .advice').allTextContents()).join(' ');
  assert.match(advice, /Den Empfänger um \d+ Grad zur rechten Seite der Person drehen\./);
  assert.doesNotMatch(await page.locator('main').innerText(), /\b(undefined|the|degrees|left|right)\b/);
  assert.match(await page.textContent('#total-value'), /^\d+ von 100$/);
  assert.deepEqual(errors, []);
  await close();
});

test('by the browser’s language, and by the menu, whose choice stays', async () => {
  const { page, errors, close } = await open(site, { options: { locale: 'es-MX' } });
  assert.equal(await page.getAttribute('html', 'lang'), 'es');
  assert.match(await page.textContent('#caution'), /nunca planifique/);
  await page.click('#menu-button');
  assert.match(await page.textContent('#language-note'), /Traducción automática/);
  assert.deepEqual(await page.locator('#language option').allTextContents(), ['English', 'Deutsch', 'Español']);
  const inEnglish = () => page.waitForFunction(() => document.documentElement.lang === 'en' && document.documentElement.dataset.settled === 'yes');
  await page.selectOption('#language', 'en');
  await inEnglish();
  assert.equal(new URL(page.url()).searchParams.get('lang'), 'en');
  assert.equal(await page.locator('#language-note').evaluate((note) => note.hidden), true);
  await page.goto(site.server.address);
  await inEnglish();
  assert.deepEqual(errors, []);
  await close();
});

test('a language that nobody speaks here, and one that does not load, leave the page in English', async () => {
  const strange = await open(site, { path: '?lang=fr' });
  assert.equal(await strange.page.getAttribute('html', 'lang'), 'en');
  assert.equal(await strange.page.locator('#notice').isVisible(), false);
  await strange.close();
  const { page, close } = await open(site, { path: '?lang=de', prepare: (p) => p.route('**/texts/de/all.js', (route) => route.abort()) });
  assert.equal(await page.getAttribute('html', 'lang'), 'en');
  assert.match(await page.textContent('#notice-text'), /“de” could not be loaded; it goes on in English/);
  await close();
});

test('what the page says of a criterion in English is what the engine says', async () => {
  const { page, close } = await open(site);
  const wrong = await page.evaluate(async () => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const { view } = await import('./words/view-page.js');
    const room = new TeachingRoom('curved', 'L4', 'left');
    const [differ, found] = [[], {}];
    for (const level of ['L1', 'L4', 'L5', 'S1']) {
      for (const side of ['left', 'right']) {
        room.setTarget(level, side);
        const best = room.report().views.map((v) => [v.best.oblique, v.best.tilt]);
        const orbit = [-100, -35, -8, -0.4, 0, 9, 28, 60, 100].flatMap((o) => [-30, -4, 0.6, 17].map((t) => [o, t]));
        for (const [o, t] of [...orbit, ...best.filter(([a, b]) => Math.abs(a) <= 110 && Math.abs(b) <= 50)]) {
          room.setOrientation(o, t);
          for (const c of room.report().criteria) {
            found[c.finding] = (found[c.finding] ?? 0) + 1;
            if (view.checks.sentence(c) !== c.sentence) differ.push(`${view.checks.sentence(c)} / ${c.sentence}`);
            if (view.checks.criterion(c) !== c.name) differ.push(`${view.checks.criterion(c)} / ${c.name}`);
          }
        }
      }
    }
    return { differ, found };
  });
  assert.deepEqual(wrong.differ, []);
  for (const finding of ['good', 'move', 'stuck']) assert.ok(wrong.found[finding] > 0, `${finding} was met`);
  await close();
});

test('steps, parts and patients are named in English as the engine names them', async () => {
  const { page, close } = await open(site);
  const differ = await page.evaluate(async () => {
    const [engine, { view }] = await Promise.all([import('./pkg/downbeam.js'), import('./words/view-page.js')]);
    const patients = engine.TeachingRoom.patients().filter((p) => view.case.patientSentence(p) !== p.sentence || view.case.patientSentence({ ...p, sentence: '' }) === '');
    const lessons = await import('./pkg/lessons.js');
    await lessons.default();
    const offered = lessons.LessonDesk.choices();
    const steps = offered.steps.filter((s) => view.step(s) !== s.name || view.step({ id: s.id, name: '' }) === '');
    return [...patients, ...steps];
  });
  assert.deepEqual(differ, []);
  await close();
});

for (const lang of ['de', 'es']) {
  test(`${lang}: nothing runs over the edge on a phone, and axe-core finds nothing`, async () => {
    const { page, close } = await open(site, { path: `?lang=${lang}`, hash: `${AP}&injection=on`, options: { viewport: { width: 320, height: 640 } } });
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= 320));
    await axeClean(page, lang);
    await close();
  });
}
