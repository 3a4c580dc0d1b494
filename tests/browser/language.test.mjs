// The page in another language: how it is chosen, what it says, what it does when a language is not to be had. That every message exists in
// English, and nothing else in the others, the build says (src/bin/downbeam/texts.rs).

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { after, before, test } from 'node:test';
import { axeClean, open, setUp, settled, typeAngle } from './harness.mjs';
import { drawn, mark, press, turnTo, use } from './keyboard.mjs';
import { STATES, overruns, reach } from './looks.mjs';

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
  assert.match(await page.textContent('#film-angles'), /12,5° zur linken Seite der Person/);
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

test('cautions, patterns and what the needle meets are told in English as the engine tells them', async () => {
  const { marks } = JSON.parse(await readFile(new URL('../../www/model.json', import.meta.url), 'utf8'));
  const { page, close } = await open(site);
  const said = await page.evaluate(async ({ cautions, patterns, contacts }) => {
    const { remarks } = await import('./words/remark.js');
    return {
      cautions: Object.fromEntries(Object.keys(cautions).map((name) => [name, remarks.caution(name)])),
      patterns: patterns.map(({ name }) => remarks.pattern(name)),
      signs: contacts.map(({ kind }) => remarks.contact({ kind, level: null, depth_mm: 0 })),
    };
  }, marks);
  const straight = (text) => text.replaceAll('’', "'");
  for (const [name, text] of Object.entries(marks.cautions)) assert.equal(straight(said.cautions[name]), text);
  marks.contacts.forEach(({ kind, sign }, i) => assert.match(said.signs[i].toLowerCase(), new RegExp(`^${kind} at 0 mm: ${sign}\\.$`)));
  // The model page has a pattern's sign as a clause, the page a sentence that ends in it.
  marks.patterns.forEach(({ sign }, i) => assert.ok(straight(said.patterns[i]).endsWith(` ${sign}.`), said.patterns[i]));
  await close();
});

// Words that only English has, among those that a scored injection shows.
const ENGLISH = /\b(undefined|the|degrees|left|right|mark|with|and|not|bone|skin|needle)\b/i;

const HINTS = { en: 'Set up the true AP view and keep it.', de: 'Die echte AP einstellen und merken.', es: 'Ajuste la AP verdadera y guárdela.' };
for (const [lang, hint] of Object.entries(HINTS)) {
  test(`${lang}: an injection from the first mark to the result, in one language, and no text out of its box`, async () => {
    const { page, errors, close } = await open(site, { path: `?lang=${lang}`, hash: `${AP}&injection=on&exposures=on` });
    await page.check('#latch');
    await page.click('#fluoroscopy');
    await turnTo(page, { oblique: 23.8, tilt: -2 });
    await use(page, 'keep-oblique');
    await mark(page, [-10, -5]);
    await press(page, 'h');
    assert.equal(await page.textContent('#needle-hint-text'), hint);
    await use(page, 'place');
    await press(page, 'f', 30);
    await use(page, 'aspirate');
    await use(page, 'inject-10');
    await use(page, 'pattern', 'ArrowDown');
    await use(page, 'name');
    await page.evaluate(() => { document.querySelectorAll('main details').forEach((details) => (details.open = true)); document.querySelectorAll('.stage-body').forEach((body) => (body.hidden = false)); });
    await drawn(page);
    const inWork = await page.locator('main').innerText();
    assert.deepEqual(await overruns(page), []);
    await page.setViewportSize({ width: 1280, height: 800 });
    await use(page, 'finish');
    await drawn(page);
    const done = await page.locator('main').innerText();
    assert.deepEqual(await overruns(page), []);
    if (lang !== 'en') for (const text of [inWork, done]) assert.doesNotMatch(text, ENGLISH);
    const reasons = await page.locator('#marks .marks-reason').allTextContents();
    assert.ok(reasons.length >= 8 && reasons.every((text) => text.length > 10), `${reasons}`);
    assert.equal(await page.locator('main [lang]').count(), 0, 'no part of the page is marked as being in another language');
    assert.deepEqual(errors, []);
    await close();
  });
}

for (const lang of ['de', 'es']) {
  test(`${lang}: no text runs out of its box in menu, keys, comparison, lessons and a teacher’s page`, async () => {
    for (const state of STATES.filter(({ name }) => ['menu', 'keys', 'compared', 'lessons', 'author'].includes(name))) {
      const { page, close } = await reach(site, { ...state, path: `${state.path ?? ''}?lang=${lang}` });
      assert.deepEqual(await overruns(page), [], state.name);
      await close();
    }
  });
}

for (const lang of ['de', 'es']) {
  test(`${lang}: nothing runs over the edge on a phone, and axe-core finds nothing`, async () => {
    const { page, close } = await open(site, { path: `?lang=${lang}`, hash: `${AP}&injection=on`, options: { viewport: { width: 320, height: 640 } } });
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= 320));
    await axeClean(page, lang);
    await close();
  });
}
