// The teacher's and the author's page: a class checked as `downbeam grade` checks it, lessons through the form and back unchanged, both
// pages reachable in every look.

import assert from 'node:assert/strict';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { ROOT, axeClean, axeFinds, cargo, open, setUp, sideways } from './harness.mjs';

const LESSONS = join(ROOT, 'www/lessons');
let site;
let folder;

/** A folder `class` as a platform exports it, with one of everything that can be amiss, and what the native engine says of it. */
before(async () => {
  site = await setUp();
  folder = await mkdtemp(join(tmpdir(), 'class-'));
  const class_ = join(folder, 'class');
  await mkdir(join(class_, 'b'), { recursive: true });
  const lines = cargo(ROOT, '--example', 'class', '--', '14', 'few-pictures', '--honest').trim().split('\n');
  const changed = (i, change) => JSON.stringify(Object.assign(structuredClone(JSON.parse(lines[i])), change));
  await writeFile(join(class_, 'b/many.ndjson'), `${lines.slice(0, 6).join('\n')}\n\n${lines[6].slice(0, 200)}\n`);
  await writeFile(join(class_, 'altered.json'), changed(7, { claim: { ...JSON.parse(lines[7]).claim, total: 0.123 } }));
  await writeFile(join(class_, 'cut.json'), lines[8].slice(0, lines[8].length / 2));
  await writeFile(join(class_, 'engine.json'), changed(9, { engine: { version: '0.0.1', scoring: '0123456789abcdef' } }));
  await writeFile(join(class_, 'lesson.json'), changed(10, { lesson: { id: 'not-here', sha256: '0'.repeat(64) } }));
  await writeFile(join(class_, 'copy-a.json'), changed(11, { learner: 'zoë' }));
  await writeFile(join(class_, 'copy-b.json'), changed(11, { learner: '=bob' }));
  await writeFile(join(class_, 'B.json'), lines[12]);
  await writeFile(join(class_, 'bytes.json'), Buffer.from([0xff, 0xfe, 0x20]));
  await writeFile(join(class_, 'bytes.jsonl'), Buffer.concat([Buffer.from(`${lines[13]}\n`), Buffer.from([0xff, 0x0a])]));
  await writeFile(join(class_, 'endless.json'), `{"format":1,"learner":"${'x'.repeat(600_000)}"}`);
  await writeFile(join(class_, 'feedback.pdf'), 'no receipt');
  cargo(folder, '--', 'grade', 'class', '--lesson', LESSONS, '--ndjson', 'rows.ndjson', '--csv', 'rows.csv', '--bom');
});

after(async () => {
  await site.tearDown();
  await rm(folder, { recursive: true, force: true });
});

const ready = (page) => page.waitForFunction(() => document.documentElement.dataset.settled === 'yes', null, { timeout: 30_000 });

async function visit(path, more = {}) {
  const opened = await open(site, { path, ready: false, ...more });
  await ready(opened.page);
  return opened;
}

/** The teacher's page with the class in it. */
async function withClass(more, path = 'check.html') {
  const opened = await visit(path, more);
  await opened.page.setInputFiles('#folder', join(folder, 'class'));
  await opened.page.waitForSelector('#result:not([hidden])', { timeout: 60_000 });
  return opened;
}

async function saved(page, button) {
  const [file] = await Promise.all([page.waitForEvent('download'), page.click(button)]);
  return { name: file.suggestedFilename(), text: await readFile(await file.path(), 'utf8') };
}

// The class.

test('rows and counts are those that the command line prints, byte for byte', async () => {
  const { page, errors, close } = await withClass();
  const [json, csv] = [await saved(page, '#save-ndjson'), await saved(page, '#save-csv')];
  assert.equal(json.text, await readFile(join(folder, 'rows.ndjson'), 'utf8'));
  assert.equal(csv.text.replace(/^\uFEFF/, ''), (await readFile(join(folder, 'rows.csv'), 'utf8')).replace(/^\uFEFF/, ''));
  assert.deepEqual([json.name, csv.name], ['class.ndjson', 'class.csv']);
  const rows = json.text.trim().split('\n').map((line) => JSON.parse(line));
  const counts = await page.$$eval('.count', (all) => Object.fromEntries(all.map((c) => [c.dataset.status, Number(c.querySelector('dd strong').textContent)])));
  const counted = (status) => rows.filter((row) => row.status === status).length;
  assert.deepEqual(counts, { verified: counted('verified'), altered: 1, unknown_engine: 1, unknown_lesson: 1, unreadable: counted('unreadable'), copies: 2 });
  assert.equal(counts.verified + counts.unreadable + 3, rows.length);
  const shown = await page.$$eval('#rows tbody tr', (all) => all.map((row) => [row.dataset.status, row.querySelector('.of-source').textContent]));
  assert.deepEqual(shown, rows.map((row) => [row.status, row.line === null ? row.source : `${row.source}, line ${row.line}`]));
  const unread = await page.locator('#unread-list').textContent();
  for (const name of ['class/cut.json', 'class/bytes.json', 'class/bytes.jsonl, line 2', 'class/b/many.ndjson, line 8', 'class/endless.json']) assert.ok(unread.includes(name), `${name}: ${unread}`);
  assert.match(await page.locator('#left-out').textContent(), /1 file of another kind left out:class\/feedback\.pdf/);
  assert.deepEqual(errors, []);
  await close();
});

test('the class by step says what the rows say: how many in each quarter, the mean, and who is under the pass mark', async () => {
  const { page, close } = await withClass();
  const rows = (await readFile(join(folder, 'rows.ndjson'), 'utf8')).trim().split('\n').map((line) => JSON.parse(line)).filter((row) => row.status === 'verified');
  const passMark = JSON.parse(await readFile(join(LESSONS, 'few-pictures.json'), 'utf8')).pass_mark / 100;
  const drawn = await page.$$eval('.by-step tbody tr', (all) => all.map((row) => ({
    bar: row.querySelector('.bands').getAttribute('aria-label').match(/\d+(?= (?:under|\d+ to|75 % and))/g).map(Number),
    mean: row.children[2].textContent,
    quartiles: row.children[3].textContent,
    below: row.children[4].textContent,
  })));
  const steps = ['true_ap', 'oblique', 'target', 'down_the_beam', 'steering', 'depth', 'contacts', 'contrast', 'radiation'];
  assert.equal(drawn.length, steps.length);
  steps.forEach((step, i) => {
    const marks = rows.map((row) => row[step]);
    const bands = [0, 0, 0, 0];
    for (const m of marks) bands[Math.min(3, Math.floor(m * 4))] += 1;
    assert.deepEqual(drawn[i].bar, bands, step);
    assert.equal(drawn[i].mean, `${Math.round((100 * marks.reduce((a, b) => a + b)) / marks.length)} %`, step);
    // Quartiles as most programs have them: straight lines between the values in order.
    const inOrder = [...marks].sort((a, b) => a - b);
    const at = (share) => {
      const place = share * (inOrder.length - 1);
      const low = Math.floor(place);
      return inOrder[low] * (1 - (place - low)) + (inOrder[low + 1] ?? 0) * (place - low);
    };
    assert.equal(drawn[i].quartiles, [0.25, 0.5, 0.75].map((share) => `${Math.round(100 * at(share))} %`).join(' · '), step);
    const under = rows.filter((row) => row[step] < passMark).map((row) => row.learner);
    for (const learner of under) assert.ok(drawn[i].below.includes(learner), `${step}: ${learner}`);
    assert.match(drawn[i].below, under.length ? new RegExp(`^${under.length}: `) : /^nobody$/);
  });
  const numbers = await page.$$eval('.numbers tbody tr', (all) => all.map((row) => [...row.querySelectorAll('td')].slice(0, 4).map((cell) => Number(cell.textContent))));
  assert.deepEqual(numbers, drawn.map((d) => d.bar));
  // Of several receipts of a learner the best counts; here each has one.
  const tenths = Array(10).fill(0);
  for (const { total } of rows) tenths[Math.min(9, Math.floor(total * 10 + 1e-9))] += 1;
  assert.deepEqual(await page.$$eval('.histogram td', (all) => all.map((cell) => Number(cell.textContent))), tenths);
  assert.equal(await page.locator('.histogram td svg').count(), tenths.filter((n) => n > 0).length);
  await close();
});

test('a learner’s every try is shown, and its link replays it on the page for practice', async () => {
  const { page, errors, close } = await withClass();
  const row = (await readFile(join(folder, 'rows.ndjson'), 'utf8')).trim().split('\n').map((line) => JSON.parse(line)).find((r) => r.status === 'altered');
  await page.getByRole('button', { name: new RegExp(`^${row.learner}`) }).click();
  const view = page.locator('#one-learner');
  assert.match(await view.locator('h3').textContent(), new RegExp(`${row.learner}.*every try`));
  assert.equal(await page.evaluate(() => document.activeElement.id), 'one-learner-heading');
  const line = view.locator(`tr[data-row="${row.row}"]`);
  assert.match(await line.textContent(), /Altered/);
  assert.match(await line.textContent(), /is claimed as/);
  const link = line.locator('a[href]');
  const href = await link.getAttribute('href');
  const [replay] = await Promise.all([page.context().waitForEvent('page'), link.click()]);
  await replay.waitForFunction((n) => document.querySelector('#marks:not([hidden]) [data-total]') && document.querySelectorAll('#marks .marks-step').length > 5 && n > 0, row.actions, { timeout: 60_000 });
  const kept = await replay.evaluate(() => document.querySelector('#marks [data-total]').dataset.total);
  assert.equal(kept, row.total.toFixed(4), 'the marks are those of the row');
  await replay.close();
  // A link that is cut says so, and the page stays usable.
  const cut = await open(site, { path: `index.html${href.replace('index.html', '').slice(0, -40)}` });
  await cut.page.waitForFunction(() => !document.getElementById('notice').hidden, null, { timeout: 30_000 });
  assert.match(await cut.page.textContent('#notice-text'), /attempt/i);
  await cut.close();
  assert.deepEqual(errors, []);
  await close();
});

test('a class in German has its lesson and its steps in German', async () => {
  const { page, close } = await withClass({}, 'check.html?lang=de');
  const { title } = JSON.parse(await readFile(join(LESSONS, 'few-pictures.json'), 'utf8'));
  assert.deepEqual(await page.locator('.class h2').allTextContents(), [title.de]);
  const steps = await page.locator('.by-step th[scope=row]').allTextContents();
  const weakest = (await page.locator('#rows tbody .of-weakest').allTextContents()).filter(Boolean);
  assert.ok(weakest.length > 0);
  for (const text of weakest) assert.ok(steps.some((step) => text.startsWith(step)), `${text}: none of ${steps}`);
  assert.ok(steps.includes('Kontrastmittel') && !steps.includes('Contrast'));
  await close();
});

test('the table is narrowed and sorted, by keyboard alone', async () => {
  const { page, close } = await withClass();
  const column = (name) => page.$$eval(`#rows tbody .of-${name}`, (cells) => cells.map((cell) => cell.textContent));
  await page.focus('#filter-status');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  assert.equal(await page.inputValue('#filter-status'), 'altered');
  assert.equal(await page.locator('#rows tbody tr').count(), 1);
  assert.match(await page.locator('#rows tbody .of-note').textContent(), /claimed as 12\.30 %/);
  await page.keyboard.press('Home');
  await page.focus('#sort-total');
  await page.keyboard.press('Enter');
  const rising = (await column('total')).filter(Boolean).map(parseFloat);
  assert.deepEqual(rising, [...rising].sort((a, b) => a - b));
  assert.ok(new Set(rising).size > 2);
  assert.equal(await page.getAttribute('th.of-total', 'aria-sort'), 'ascending');
  await page.keyboard.press('Space');
  assert.deepEqual((await column('total')).filter(Boolean).map(parseFloat), [...rising].reverse());
  assert.equal(await page.getAttribute('th.of-total', 'aria-sort'), 'descending');
  await close();
});

test('a large class can be stopped and gone on with, and a lesson of one’s own is added by file or link', async () => {
  const { page, errors, close } = await visit('check.html');
  const one = (await readFile(join(folder, 'class/B.json'), 'utf8')).trim();
  const own = JSON.parse(await readFile(join(LESSONS, 'few-pictures.json'), 'utf8'));
  const lines = Array.from({ length: 1500 }, () => one).join('\n');
  await page.setInputFiles('#files', { name: 'large.ndjson', mimeType: 'text/plain', buffer: Buffer.from(lines) });
  await page.waitForFunction(() => document.getElementById('progress-bar').value > 0 && /Checked/.test(document.getElementById('progress-text').textContent));
  await page.click('#cancel');
  await page.waitForSelector('#go-on:not([hidden])');
  const heading = await page.locator('#counts-heading').textContent();
  const [, done, left] = heading.match(/(\d+) receipts? checked, (\d+) not yet/);
  assert.equal(Number(done) + Number(left), 1500);
  assert.ok(Number(done) > 0 && Number(left) > 0);
  await page.click('#go-on');
  await page.waitForFunction(() => document.getElementById('counts-heading').textContent === '1500 receipts', null, { timeout: 60_000 });
  assert.equal(await page.locator('#rows tbody tr').count(), 100);
  await page.click('#more-rows');
  assert.equal(await page.locator('#rows tbody tr').count(), 200);
  await page.click('#clear');
  await page.waitForSelector('#result', { state: 'hidden' });

  // A receipt on a lesson that is not known yet, then the lesson.
  own.id = 'my-own';
  own.title.en = 'Our own';
  own.pass_mark = 60;
  const fragment = await page.evaluate(async ([json]) => (await import('./pkg/lessons.js')).LessonDesk.toLink(json), [JSON.stringify(own)]);
  const receipt = await page.evaluate(async ([json]) => {
    const { LessonDesk } = await import('./pkg/lessons.js');
    return new LessonDesk(json, 'ana').receipt([]);
  }, [JSON.stringify(own)]);
  await page.setInputFiles('#files', { name: 'receipt.txt', mimeType: 'text/plain', buffer: Buffer.from(receipt) });
  await page.waitForSelector('#rows tbody tr[data-status=unknown_lesson]');
  await page.fill('#lesson-link', 'https://example.org/downbeam/#lesson=abc');
  await page.press('#lesson-link', 'Enter');
  await page.waitForSelector('#lesson-complaint:not([hidden])');
  await page.fill('#lesson-link', `https://example.org/downbeam/#${fragment}`);
  await page.click('#add-link');
  await page.waitForSelector('#rows tbody tr[data-status=verified]');
  assert.equal(await page.locator('#lesson-complaint').isVisible(), false);
  assert.match(await page.locator('#own-lessons').textContent(), /Our own/);
  await page.setInputFiles('#lesson-files', { name: 'broken.json', mimeType: 'application/json', buffer: Buffer.from('{"format":1}') });
  await page.waitForSelector('#lesson-complaint:not([hidden])');
  assert.match(await page.locator('#lesson-complaint').textContent(), /^broken\.json: missing field/);
  assert.deepEqual(errors, []);
  await close();
});

test('files that are dropped are taken, and a page without its engine or its lessons says so', async () => {
  const { page, close } = await visit('check.html');
  await page.evaluate((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'dropped.json', { type: 'application/json' }));
    document.getElementById('drop').dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
  }, await readFile(join(folder, 'class/B.json'), 'utf8'));
  await page.waitForSelector('#rows tbody tr[data-status=verified]');
  await close();
  const bare = await visit('check.html', { prepare: (p) => p.route('**/lessons/*.json', (route) => route.fulfill({ status: 404 })) });
  assert.match(await bare.page.locator('#notice-text').textContent(), /list of lessons/);
  await bare.close();
  for (const path of ['check.html', 'author.html']) {
    const broken = await open(site, { path, ready: false, prepare: (p) => p.route('**/lessons_bg.wasm', (route) => route.fulfill({ status: 404 })) });
    await broken.page.waitForSelector('#notice:not([hidden])');
    assert.match(await broken.page.locator('#notice-text').textContent(), /engine did not load/);
    await broken.close();
  }
});

// The author.

/** Waits until the engine has been asked about what stands in the form now. */
async function reviewed(page) {
  await page.waitForTimeout(20);
  await ready(page);
}

test('every lesson that ships goes through the form unchanged', async () => {
  const { page, errors, close } = await visit('author.html');
  await page.waitForFunction(() => document.documentElement.dataset.shelf === 'yes');
  const { lessons } = JSON.parse(await readFile(join(LESSONS, 'index.json'), 'utf8'));
  for (const id of lessons) {
    await page.selectOption('#shipped', id);
    await reviewed(page);
    const text = await readFile(join(LESSONS, `${id}.json`), 'utf8');
    assert.equal(await page.inputValue('#json'), text, `${id} as it came`);
    const hash = await page.locator('#hash').textContent();
    assert.match(hash, /^[0-9a-f]{64}$/);
    // Something is written and taken back, so that the whole lesson is written out of the fields.
    await page.fill('#text-title-en', 'Another title');
    await page.fill('#text-title-en', JSON.parse(text).title.en);
    await reviewed(page);
    assert.deepEqual(JSON.parse(await page.inputValue('#json')), JSON.parse(text), id);
    assert.equal(await page.locator('#hash').textContent(), hash, id);
    assert.match(await page.locator('#verdict').textContent(), /can be used/);
    const link = await page.inputValue('#link-out');
    const back = await page.evaluate(async (it) => {
      const { LessonDesk } = await import('./pkg/lessons.js');
      return LessonDesk.read(LessonDesk.fromLink(it), 'en').sha256;
    }, link);
    assert.equal(back, hash, `${id} through its link`);
    assert.equal(await page.getAttribute('#try', 'href'), link);
    assert.ok(link.startsWith(`${site.server.address}index.html#lesson=`));
  }
  assert.deepEqual(errors, []);
  await close();
});

test('every key can be set in the form', async () => {
  const { page, close } = await visit('author.html');
  await page.fill('#field-id', 'whole');
  await page.fill('#new-language', 'de');
  await page.press('#new-language', 'Enter');
  await page.fill('#text-title-de', 'Alles');
  await page.fill('#text-intro-de', 'Bitte alles.');
  await page.check('#field-mode-assessment');
  for (const step of ['name_parts', 'radiation']) await page.check(`#field-steps-${step}`);
  await page.uncheck('#field-steps-true_ap');
  await page.click('#add-part');
  await page.selectOption('.asked >> nth=0 >> select >> nth=1', 'below');
  await page.check('#field-patient-among-kind');
  await page.check('#field-patient-among-worn');
  await page.selectOption('#field-seed', 'learner');
  await page.check('#field-level-among-kind');
  await page.check('#field-level-among-L3');
  await page.selectOption('#field-side-one', 'right');
  await page.selectOption('#field-approach', 'infraneural');
  await page.selectOption('#field-medium', 'gel');
  await page.selectOption('#field-exposures', 'true');
  await page.fill('#field-pass_mark', '66');
  await page.fill('#field-par-exposures', '12');
  await page.click('#field-tolerances summary');
  await page.fill('#limit-coaxial_deg-full', '1,5');
  await page.fill('#limit-coaxial_deg-none', '9');
  await reviewed(page);
  const made = JSON.parse(await page.inputValue('#json'));
  assert.deepEqual(made, {
    format: 1, id: 'whole', title: { en: 'My lesson', de: 'Alles' }, intro: { ...made.intro, de: 'Bitte alles.' }, mode: 'assessment',
    steps: ['name_parts', 'oblique', 'radiation'], parts: [{ part: 'body', bone: 'below' }],
    patient: { any_of: ['average', 'worn'], seed_from: 'learner' }, level: { any_of: ['L4', 'L3'] }, side: 'right', approach: 'infraneural',
    medium: 'gel', exposures: true, tolerances: { coaxial_deg: { full: 1.5, none: 9 } }, par: { exposures: 12 }, pass_mark: 66,
  });
  assert.match(await page.locator('#verdict').textContent(), /can be used/);
  // What a code draws is what the engine draws for it, and another code draws another patient.
  const first = await page.locator('#gets').textContent();
  await page.fill('#code', 'sample 77');
  await reviewed(page);
  assert.notEqual(await page.locator('#gets').textContent(), first);
  const drawn = await page.evaluate(async (json) => {
    const { LessonDesk } = await import('./pkg/lessons.js');
    return new LessonDesk(json, 'sample 77').drawn();
  }, await page.inputValue('#json'));
  assert.match(await page.locator('#gets').textContent(), new RegExp(`${drawn.level} right, seed ${drawn.seed}\\.$`));
  await close();
});

test('what is wrong is said at its field, in the file too, and nothing that was typed is lost', async () => {
  const { page, errors, close } = await visit('author.html');
  const at = async (id) => page.evaluate((name) => {
    const input = document.getElementById(name);
    const said = (input.getAttribute('aria-describedby') ?? '').split(' ').map((line) => document.getElementById(line)).filter((line) => line?.matches('.complaint:not([hidden])'));
    return { invalid: input.getAttribute('aria-invalid'), said: said.map((line) => line.textContent).join(' ') };
  }, id);
  await page.fill('#field-id', 'Not An Id');
  await page.fill('#field-pass_mark', 'most');
  await reviewed(page);
  assert.deepEqual((await at('field-pass_mark')).invalid, 'true');
  assert.match((await at('field-pass_mark')).said, /Found string "most"/);
  await page.fill('#field-pass_mark', '0');
  await page.check('#field-steps-radiation');
  await page.fill('#text-title-en', '');
  await page.click('#field-tolerances summary');
  await page.fill('#limit-squared_deg-full', '9');
  await page.fill('#limit-squared_deg-none', '8');
  await reviewed(page);
  for (const [id, words] of [['field-id', /'Not An Id' is no id/], ['field-pass_mark', /Found 0: allowed are 1 to 100/], ['field-steps-radiation', /needs exposures/], ['text-title-en', /Found 0 characters/], ['limit-squared_deg-none', /full 9 and none 8/]]) {
    const { invalid, said } = await at(id);
    assert.match(said, words, id);
    assert.equal(invalid, 'true', id);
  }
  assert.equal(await page.locator('#copy').isDisabled(), true);
  assert.equal(await page.getAttribute('#try', 'href'), null);
  // From the list of what is wrong straight to the field, though it is folded away.
  await page.click('#field-tolerances summary');
  await page.locator('.to-field', { hasText: 'tolerances.squared_deg' }).press('Enter');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'limit-squared_deg-full');
  assert.equal(await page.inputValue('#field-id'), 'Not An Id');

  // The file: JSON that cannot be read leaves the form waiting, and the form's lesson can be had back.
  const whole = await page.inputValue('#json');
  await page.fill('#json', whole.slice(0, -3));
  await reviewed(page);
  assert.match(await page.locator('#json-problem').textContent(), /JSON ends too early/);
  assert.equal(await page.locator('#field-id').isDisabled(), true);
  await page.click('#again');
  await reviewed(page);
  assert.equal(await page.inputValue('#json'), whole);
  assert.equal(await page.locator('#field-id').isDisabled(), false);
  // A key and a value that are not known stay while the form is used.
  await page.fill('#json', whole.replace('"level": "L4"', '"level": "L9", "colour": 3'));
  await page.fill('#field-pass_mark', '70');
  await reviewed(page);
  const kept = JSON.parse(await page.inputValue('#json'));
  assert.deepEqual([kept.level, kept.colour, kept.pass_mark], ['L9', 3, 70]);
  assert.deepEqual(errors, []);
  await close();
});

test('work is kept between visits, brought back after a replacement, and a storage that throws is told', async () => {
  const { page, close } = await visit('author.html');
  await page.fill('#field-id', 'kept-lesson');
  await reviewed(page);
  await page.reload();
  await ready(page);
  assert.equal(await page.inputValue('#field-id'), 'kept-lesson');
  await page.waitForFunction(() => document.documentElement.dataset.shelf === 'yes');
  await page.selectOption('#shipped', 'true-ap');
  await reviewed(page);
  assert.equal(await page.inputValue('#field-id'), 'true-ap');
  await page.click('#before');
  await reviewed(page);
  assert.equal(await page.inputValue('#field-id'), 'kept-lesson');
  const file = await saved(page, '#save');
  assert.equal(file.name, 'kept-lesson.json');
  assert.equal(file.text, await page.inputValue('#json'));
  await page.setInputFiles('#lesson-file', { name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('not json') });
  await reviewed(page);
  assert.equal(await page.inputValue('#json'), 'not json');
  assert.match(await page.locator('#json-problem').textContent(), /This is no JSON/);
  await close();
  const poor = await visit('author.html', { prepare: (p) => p.addInitScript(() => Object.defineProperty(window, 'localStorage', { get: () => { throw new DOMException('denied', 'SecurityError'); } })) });
  await poor.page.fill('#field-id', 'unkept');
  await reviewed(poor.page);
  assert.match(await poor.page.locator('#notice-text').textContent(), /does not keep your work/);
  assert.deepEqual(poor.errors, []);
  await poor.close();
});

test('the picture is the room’s own of the drawn patient, and a room that does not load leaves the form alone', async () => {
  const { page, errors, close } = await visit('author.html');
  const drawn = () => page.waitForFunction(() => document.getElementById('preview-state').hidden && document.getElementById('preview-caption').textContent !== '', null, { timeout: 30_000 });
  await drawn();
  const same = await page.evaluate(async () => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const { LessonDesk } = await import('./pkg/lessons.js');
    const desk = new LessonDesk(document.getElementById('json').value, document.getElementById('code').value);
    const { patient, seed, changed, level, side } = desk.drawn();
    const own = new TeachingRoom(patient, level, side);
    own.beginPatient(patient, { seed, changed });
    while (own.shapeBone() < 1);
    own.setTarget(level, side);
    const { best } = own.report().views.find((v) => v.view === 'oblique');
    own.setOrientation(best.oblique, best.tilt);
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = 512;
    const pen = canvas.getContext('2d', { alpha: false });
    own.drawRadiograph(pen, true);
    const pixels = (context) => context.getImageData(0, 0, 512, 512).data;
    const [ours, theirs] = [pixels(document.getElementById('preview').getContext('2d')), pixels(pen)];
    return ours.every((value, i) => value === theirs[i]) && new Set(ours).size > 50;
  });
  assert.equal(same, true);
  await page.check('#preview-view-lateral');
  await page.waitForFunction(() => /lateral/.test(document.getElementById('preview-caption').textContent));
  assert.deepEqual(errors, []);
  await close();
  const broken = await visit('author.html', { prepare: (p) => p.route('**/downbeam_bg.wasm', (route) => route.fulfill({ status: 404 })) });
  await broken.page.waitForFunction(() => /There is no picture/.test(document.getElementById('preview-state').textContent));
  await broken.page.fill('#field-id', 'still-here');
  await reviewed(broken.page);
  assert.match(await broken.page.locator('#verdict').textContent(), /can be used/);
  await broken.close();
});

// Both pages.

test('axe-core finds nothing, and nothing goes sideways: dark, light, forced colours, a phone, text twice as large', async () => {
  const look = async (page, what) => {
    await axeClean(page, what);
    await page.setViewportSize({ width: 320, height: 640 });
    assert.deepEqual((await axeFinds(page)).violations, [], `${what}, on a phone`);
    assert.ok((await sideways(page)) <= 0, `${what}, on a phone`);
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.evaluate(() => (document.documentElement.style.fontSize = '200%'));
    assert.ok((await sideways(page)) <= 0, `${what}, text twice as large`);
    await page.evaluate(() => (document.documentElement.style.fontSize = ''));
  };
  const check = await visit('check.html');
  await look(check.page, 'before the class');
  await check.page.setInputFiles('#folder', join(folder, 'class'));
  await check.page.waitForSelector('#result:not([hidden])', { timeout: 60_000 });
  await check.page.click('.numbers summary');
  await look(check.page, 'the class');
  await check.close();
  const author = await visit('author.html');
  await look(author.page, 'a new lesson');
  await author.page.waitForFunction(() => document.documentElement.dataset.shelf === 'yes');
  await author.page.selectOption('#shipped', 'views-homework');
  await author.page.click('#add-part');
  await author.page.fill('#field-pass_mark', '0');
  await author.page.evaluate(() => (document.getElementById('field-tolerances').open = true));
  await reviewed(author.page);
  await look(author.page, 'a lesson with mistakes');
  await author.close();
});

test('a lesson is set and a class is checked by keyboard alone', async () => {
  const author = await visit('author.html');
  const { page } = author;
  await page.waitForFunction(() => document.documentElement.dataset.shelf === 'yes');
  await page.locator('#shipped').focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await reviewed(page);
  const type = async (id, text) => {
    await page.locator(id).press('ControlOrMeta+A');
    await page.keyboard.type(text);
  };
  await type('#field-id', 'by-keys');
  await type('#field-pass_mark', '77');
  await reviewed(page);
  const [file] = await Promise.all([page.waitForEvent('download'), page.locator('#save').press('Enter')]);
  const lesson = JSON.parse(await readFile(await file.path(), 'utf8'));
  assert.deepEqual([lesson.id, lesson.pass_mark], ['by-keys', 77]);
  const link = await page.inputValue('#link-out');
  await author.close();

  const check = await visit('check.html');
  const { page: desk } = check;
  await desk.locator('#lesson-link').focus();
  await desk.keyboard.insertText(link);
  await desk.locator('#add-link').press('Enter');
  await desk.waitForFunction(() => /own/.test(document.getElementById('lessons-state').textContent));
  const [chooser] = await Promise.all([desk.waitForEvent('filechooser'), desk.locator('#choose-files').press('Enter')]);
  await chooser.setFiles(['altered.json', 'B.json'].map((name) => join(folder, 'class', name)));
  await desk.waitForSelector('#rows tbody tr[data-status=verified]');
  assert.equal(await desk.locator('#rows tbody tr[data-status=altered]').count(), 1);
  const [csv] = await Promise.all([desk.waitForEvent('download'), desk.locator('#save-csv').press('Enter')]);
  assert.match(await readFile(await csv.path(), 'utf8'), /altered/);
  await check.close();
});

test('every control is reached by Tab, shows where it is, and is not under the caution line', async () => {
  for (const [path, wanted] of [
    ['check.html', ['theme', 'choose-files', 'choose-folder', 'clear', 'choose-lessons', 'lesson-link', 'add-link', 'choose-list', 'choose-names', 'save-csv', 'save-ndjson', 'print', 'filter-status', 'filter-lesson', 'sort-number', 'sort-source']],
    ['author.html', ['shipped', 'open-file', 'fresh', 'link-in', 'open-link', 'field-id', 'text-title-en', 'new-language', 'field-mode-practice', 'field-steps-oblique', 'add-part', 'field-patient-one', 'field-seed', 'field-approach', 'field-pass_mark', 'field-par-beam_s', 'link-out', 'copy', 'save', 'try', 'preview-view-oblique', 'json']],
  ]) {
    for (const viewport of [{ width: 1280, height: 720 }, { width: 320, height: 568 }]) {
      const { page, close } = path === 'check.html' ? await withClass({ options: { viewport } }) : await visit(path, { options: { viewport } });
      await page.evaluate(() => (document.activeElement.blur(), scrollTo(0, 0)));
      const reached = new Set();
      for (let i = 0; i < 110; i++) {
        await page.keyboard.press('Tab');
        const at = await page.evaluate(() => {
          const e = document.activeElement;
          if (e === document.body) return null;
          const shown = e.closest('.segment') ?? e;
          const box = shown.getBoundingClientRect();
          const caution = document.querySelector('.caution').getBoundingClientRect();
          return { id: e.id || e.className || e.textContent, covered: box.top >= caution.top - 1 || box.bottom <= 0, ring: getComputedStyle(shown).outlineStyle };
        });
        if (at === null) break;
        reached.add(at.id);
        assert.ok(!at.covered, `${path} ${viewport.width}: ${at.id} is covered`);
        assert.notEqual(at.ring, 'none', `${path}: ${at.id} shows no focus`);
      }
      for (const id of wanted) assert.ok(reached.has(id), `${path} ${viewport.width}: ${id} is not reached: ${[...reached]}`);
      await close();
    }
  }
});

test('the class prints: only the result, in black on white, all rows', async () => {
  const { page, close } = await withClass();
  await page.emulateMedia({ media: 'print' });
  for (const hidden of ['.hand-in', '.pages', '#save-csv', '.filters select']) assert.equal(await page.locator(hidden).first().isVisible(), false, hidden);
  for (const shown of ['.by-step', '#rows', '.proof', '.caution', '#counts']) assert.equal(await page.locator(shown).first().isVisible(), true, shown);
  assert.equal(await page.evaluate(() => getComputedStyle(document.body).color), 'rgb(0, 0, 0)');
  await close();
});
