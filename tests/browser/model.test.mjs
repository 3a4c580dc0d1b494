// The page about the model: every number is the engine's, every figure is drawn, every link leads somewhere, and the text can be read
// without the engine.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { axeFinds, only, open, ROOT, setUp, sideways, useTheme } from './harness.mjs';

let site;
let model;

before(async () => {
  site = await setUp();
  model = JSON.parse(await readFile(join(ROOT, 'www/model.json'), 'utf8'));
});
after(() => site.tearDown());

/** Most of the page does not need the films, which take seconds to draw. */
const withoutFilms = { prepare: (page) => page.route('**/pkg/*.wasm', (route) => route.fulfill({ status: 404 })) };

async function visit(more = {}) {
  const opened = await open(site, { path: 'model.html', ready: false, ...more });
  await opened.page.waitForFunction(() => document.documentElement.dataset.settled === 'yes', null, { timeout: 120_000 });
  return opened;
}

test('every figure is drawn, every placeholder filled, and the engine agrees with its file', async () => {
  const { page, errors, close } = await visit();
  const found = await page.evaluate(() => {
    const blank = (canvas) => {
      const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
      const greys = new Set();
      for (let i = 0; i < data.length; i += 4 * 97) greys.add(data[i]);
      return greys.size < 20;
    };
    return {
      figures: document.querySelectorAll('figure').length,
      undrawn: [...document.querySelectorAll('figure')].filter((f) => f.dataset.drawn !== 'yes' || f.querySelector('.figure-state').textContent !== '').map((f) => f.id),
      films: document.querySelectorAll('[data-film]').length,
      blank: [...document.querySelectorAll('[data-film] canvas:first-child')].filter(blank).length,
      charts: [...document.querySelectorAll('svg.chart')].map((svg) => svg.querySelectorAll('.plot-mark').length),
      tables: [...document.querySelectorAll('.plot-numbers table')].map((t) => t.rows.length),
      unfilled: [...document.querySelectorAll('[data-model]')].filter((e) => /…|–$|undefined|\[object|NaN/.test(e.textContent)).map((e) => e.dataset.model),
      captions: [...document.querySelectorAll('.film-says')].map((e) => e.textContent).filter((text) => text === '' || /[{}]|NaN|undefined/.test(text)),
      emptyRows: [...document.querySelectorAll('tr[data-bone], tr[data-each]')].filter((row) => row.querySelectorAll('td.filled').length !== 5).length,
      emptyBodies: [...document.querySelectorAll('tbody[data-rows]')].filter((body) => body.rows.length === 0 || /undefined|\[object|NaN/.test(body.textContent)).map((body) => body.dataset.rows),
      agrees: document.getElementById('engine-check').textContent === document.getElementById('words').dataset.agrees,
    };
  });
  assert.ok(found.figures >= 18 && found.films >= 18, JSON.stringify(found));
  assert.ok(found.charts.every((marks) => marks >= 4), 'charts have marks');
  assert.ok(found.tables.every((rows) => rows >= 5), 'charts have tables');
  for (const key of ['undrawn', 'unfilled', 'captions', 'emptyBodies']) assert.deepEqual(found[key], [], key);
  assert.equal(found.blank, 0);
  assert.equal(found.emptyRows, 0);
  assert.ok(found.agrees);
  assert.deepEqual(errors, []);

  // The numbers shown are those of the file and of the report.
  const row = (bone, of) => page.locator(`tr[data-bone="${bone}"][data-of="${of}"] td`).allTextContents();
  for (const [bone, of] of [['pedicle_width', 'measured'], ['anterior_height', 'asked'], ['wedge', 'measured']]) {
    const wanted = model.bones.rows.find((r) => r.name === bone)[of].map((v) => v.toFixed(1).replace('-', '−').replace('−0.0', '0.0'));
    assert.deepEqual(await row(bone, of), wanted, `${bone} ${of}`);
  }
  assert.equal(await page.locator('#version code').first().textContent(), model.engine.fingerprint);
  const l4 = model.views.find((v) => v.patient === 'average' && v.level === 'L4' && v.side === 'left');
  assert.match(await page.locator('#fig-dog .film-says').first().textContent(), new RegExp(`^Oblique ${l4.oblique[0].toFixed(1)}°, tilt −?${Math.abs(l4.oblique[1]).toFixed(1)}°`));
  assert.match(await page.locator('#fig-steep .film-says').textContent(), new RegExp(`^Oblique ${l4.steep_oblique[0].toFixed(1)}°`));
  // The curve of the articular process crosses zero at the best view that the file has.
  const curve = await page.locator('#fig-facet-curve details table tbody tr').evaluateAll((rows) => rows.map((r) => [...r.cells].map((c) => Number(c.textContent.replace('−', '-')))));
  const after = curve.findIndex(([, value]) => value <= 0);
  const [[x0, y0], [x1, y1]] = [curve[after - 1], curve[after]];
  assert.ok(Math.abs(x0 + ((x1 - x0) * y0) / (y0 - y1) - l4.oblique[0]) < 0.2);
  await close();
});

test('links within the page lead somewhere, ids are unique, and what is cited is listed and what is listed is cited', async () => {
  const { page, close } = await visit(withoutFilms);
  const found = await page.evaluate(() => {
    const ids = [...document.querySelectorAll('[id]')].map((e) => e.id);
    const hrefs = [...document.querySelectorAll('a[href^="#"]')].map((a) => a.getAttribute('href').slice(1));
    return {
      twice: ids.filter((id, i) => ids.indexOf(id) !== i),
      nowhere: hrefs.filter((h) => !ids.includes(h)),
      cited: [...new Set(hrefs.filter((h) => h.startsWith('src-')))].sort(),
      listed: [...document.querySelectorAll('.sources li')].map((li) => li.id).sort(),
      contents: [...document.querySelectorAll('.contents a')].map((a) => a.getAttribute('href').slice(1)),
      sections: [...document.querySelectorAll('main > section')].map((s) => s.id),
      other: [...document.querySelectorAll('a[href]')].map((a) => a.getAttribute('href')).filter((h) => !h.startsWith('#')),
      criteria: [...document.querySelectorAll('[id^="criterion-"]')].map((e) => e.id.replace('criterion-', '')).sort(),
    };
  });
  assert.deepEqual(found.twice, []);
  assert.deepEqual(found.nowhere, []);
  assert.ok(found.listed.length > 50);
  assert.deepEqual(found.cited, found.listed);
  assert.deepEqual(found.contents, found.sections);
  assert.deepEqual(found.criteria, model.marks.criteria.map((c) => c.id).sort(), 'each criterion has its anchor');
  for (const path of new Set(found.other)) assert.equal((await page.request.get(site.server.address + path)).status(), 200, path);
  for (const other of ['index.html', 'check.html', 'author.html']) assert.match(await readFile(join(ROOT, 'www', other), 'utf8'), /href="model\.html"/, other);
  await close();
});

const LOOKS = [
  ['dark, 1280', {}],
  ['light, 1280', {}, 'light'],
  ['dark, 320', { viewport: { width: 320, height: 640 } }],
  ['light, 320', { viewport: { width: 320, height: 640 } }, 'light'],
  ['forced colours', { forcedColors: 'active', reducedMotion: 'reduce' }],
];

for (const [name, options, theme] of LOOKS) {
  test(`axe-core finds nothing, and nothing goes sideways: ${name}`, async () => {
    const { page, close } = await visit(name === 'dark, 1280' ? { options } : { ...withoutFilms, options });
    if (theme) await useTheme(page, theme);
    await page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));
    const { violations, passes } = await axeFinds(page);
    assert.ok(passes.length > 20, 'axe looked at the page');
    assert.deepEqual(violations, []);
    assert.ok((await sideways(page)) <= 0);
    await close();
  });
}

test('without the engine, and without its file, the text is there and each figure says what is missing', { skip: only('chromium', 'a page without scripts') }, async () => {
  const bare = await visit(withoutFilms);
  const states = (kind) => bare.page.locator(`figure[data-needs="${kind}"] > .figure-state`).allTextContents();
  assert.ok((await states('engine')).length > 10 && (await states('engine')).every((text) => /engine did not load/.test(text)));
  assert.ok((await states('numbers')).every((text) => text === ''), 'charts of the file are drawn');
  assert.equal(await bare.page.locator('tr[data-bone="pedicle_width"][data-of="measured"] td').count(), 5);
  assert.match(await bare.page.locator('#cautions').textContent(), /Particulate steroid/);
  await bare.close();
  const none = await visit({ prepare: (p) => p.route('**/model.json', (route) => route.fulfill({ status: 404 })) });
  assert.ok((await none.page.locator('figure[data-needs="numbers"] > .figure-state').allTextContents()).every((text) => /could not be loaded/.test(text)));
  assert.equal(await none.page.locator('#fig-dog').getAttribute('data-drawn'), 'yes');
  assert.match(await none.page.locator('#engine-check').textContent(), /nothing was checked/);
  await none.close();
  const still = await open(site, { path: 'model.html', ready: false, options: { javaScriptEnabled: false } });
  assert.match(await still.page.locator('main').textContent(), /Murthy and others/);
  assert.ok(await still.page.locator('noscript p').isVisible());
  await still.close();
});

test('Tab reaches contents, theme, tables and figures, and shows where it is', async () => {
  const { page, close } = await visit({ ...withoutFilms, options: { viewport: { width: 320, height: 568 } } });
  const reached = new Set();
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const e = document.activeElement;
      return { what: e.id || e.className || e.textContent, ring: getComputedStyle(e).outlineStyle, box: e.getBoundingClientRect().top };
    });
    reached.add(at.what);
    assert.notEqual(at.ring, 'none', `${at.what} shows no focus`);
  }
  for (const wanted of ['skip', 'theme', 'wide', 'cite', 'Sources']) assert.ok(reached.has(wanted), `${wanted} is not reached: ${[...reached]}`);
  await close();
});

test('it prints in black on white, whole', async () => {
  const { page, close } = await visit(withoutFilms);
  await page.emulateMedia({ media: 'print' });
  assert.equal(await page.evaluate(() => getComputedStyle(document.body).color), 'rgb(0, 0, 0)');
  for (const hidden of ['.pages', '.contents', '.plot-numbers']) assert.equal(await page.locator(hidden).first().isVisible(), false, hidden);
  for (const shown of ['#cautions', '#fig-dog', '.sources']) assert.equal(await page.locator(shown).isVisible(), true, shown);
  await close();
});
