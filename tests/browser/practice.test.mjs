// Practice: a day's round by keyboard, mouse and touch, what is kept of it, and a round in a class with ten learners.

import assert from 'node:assert/strict';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { axeClean, cargo, only, open, setUp, sideways } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const ready = (page) => page.waitForFunction(() => document.documentElement.dataset.settled === 'yes', null, { timeout: 30_000 });

async function visit(path = 'practice.html', more = {}) {
  const opened = await open(site, { path, ready: false, ...more });
  await ready(opened.page);
  return opened;
}

/** The film of the question is there. */
const filmThere = (page) => page.waitForSelector('#film[data-ready="yes"]', { timeout: 30_000 });
const answersKept = (page) => page.evaluate(() => JSON.parse(localStorage.getItem('downbeam.practice') ?? '{"answers":[]}').answers);
/** What the canvas shows is a picture: many greys. */
const greys = (page) => page.evaluate(() => {
  const canvas = document.getElementById('radiograph');
  return new Set(canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data).size;
});

/** Answers questions until the result is there; `answer(page)` gives one answer, `next(page)` goes on. */
async function round(page, answer, next) {
  const marks = [];
  while (await page.locator('#asking').isVisible()) {
    await filmThere(page);
    assert.ok((await greys(page)) > 40, 'a film');
    await answer(page);
    await page.waitForSelector('#next:not([hidden])');
    const right = await page.locator('.answer[data-mark="right"]').count();
    assert.equal(right, 1, 'one answer is true');
    const wrong = await page.locator('.answer[data-mark="wrong"]').count();
    assert.equal(await page.locator('.verdict').getAttribute('data-right'), String(wrong === 0));
    assert.ok((await page.locator('#reason p').count()) >= 2, 'verdict and margin');
    await page.waitForFunction(() => document.querySelectorAll('#overlay .ink').length > 0, null, { timeout: 30_000 });
    marks.push(wrong === 0);
    await next(page);
  }
  return marks;
}

test('a day’s round by keyboard alone, kept and taken up again', async () => {
  const { page, errors, close } = await visit('practice.html', { options: { reducedMotion: 'reduce' } });
  assert.match(await page.locator('#due').textContent(), /Nothing is due/);
  await page.locator('#begin').focus();
  await page.keyboard.press('Enter');
  let i = 0;
  const marks = await round(page, async () => page.keyboard.press(String(1 + (i++ % 4))), async () => page.keyboard.press('Enter'));
  assert.equal(marks.length, 9);
  const right = marks.filter(Boolean).length;
  assert.equal(await page.locator('#result-heading').textContent(), `${right} of 9 right.`);
  const kept = await answersKept(page);
  assert.deepEqual(kept.map((a) => a.right), marks);
  assert.equal(new Set(kept.map((a) => a.kind)).size, 9, 'every kind once');
  // The curves count the same answers, each in its skill.
  const charts = await page.$$eval('.chart', (all) => all.map((c) => c.getAttribute('aria-label').match(/sum of (\d+)/)[1]).map(Number));
  assert.equal(charts.reduce((a, b) => a + b, 0), 9);
  const rows = await page.$$eval('.curve tbody tr', (all) => all.map((row) => row.children[1].textContent));
  assert.equal(rows.filter((text) => text === 'right').length, right);
  await page.reload();
  await ready(page);
  assert.match(await page.locator('#begun').textContent(), /^9 of 106 decisions begun/);
  assert.deepEqual(errors, []);
  await close();
});

test('by mouse the film moves to the truth and back, and contrast has its later film', async () => {
  const { page, errors, close } = await visit();
  await page.click('#begin');
  let contrast = 0;
  let moved = 0;
  const angles = () => page.locator('#film-name').textContent();
  await round(
    page,
    async () => {
      if (await page.locator('#moment').isVisible()) {
        contrast += 1;
        const before = await page.locator('#radiograph').screenshot();
        await page.click('#moment');
        const later = await page.locator('#radiograph').screenshot();
        assert.equal(await page.locator('#moment').getAttribute('aria-pressed'), 'true');
        await page.click('#moment');
        // Into a disc or the sac nothing need have moved; into a vessel it has. Either way the first film comes again.
        assert.ok(before.equals(await page.locator('#radiograph').screenshot()), 'the first film again');
        assert.ok(later.length > 1000);
      }
      await page.locator('.answer').nth(1).click();
    },
    async () => {
      await page.waitForSelector('#film[data-moving="no"]', { timeout: 30_000 });
      const truth = await angles();
      await page.click('#back');
      const asked = await angles();
      await page.click('#back');
      assert.equal(await angles(), truth);
      moved += truth === asked ? 0 : 1;
      assert.ok((await page.locator('#overlay .ink').count()) > 0, 'the reason is on the film');
      await page.click('#next');
    },
  );
  assert.ok(contrast >= 1 && moved >= 3, `${contrast} ${moved}`);
  assert.deepEqual(errors, []);
  await close();
});

test('by touch on a phone, and at 320 px nothing to scroll sideways', async () => {
  const { page, errors, close } = await visit('practice.html', { options: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, reducedMotion: 'reduce' } });
  await page.tap('#begin');
  await filmThere(page);
  const box = await page.locator('#film').boundingBox();
  assert.ok(box.width > 300 && Math.abs(box.width - box.height) < 1, JSON.stringify(box));
  const inSight = async () => {
    const [film, next] = await Promise.all(['#film', '#next'].map((id) => page.locator(id).boundingBox()));
    assert.ok(film.y >= 0 && next.y + next.height <= 844 && next.y >= film.y + film.height, `${JSON.stringify(film)} ${JSON.stringify(next)}`);
    await page.tap('#next');
  };
  const marks = await round(page, async () => page.locator('.answer').nth(2).tap(), inSight);
  assert.equal(marks.length, 9);
  for (const target of await page.locator('.answer, #begin').all()) {
    if (await target.isVisible()) assert.ok((await target.boundingBox()).height >= 44);
  }
  assert.deepEqual(errors, []);
  await close();
  const small = await visit('practice.html', { options: { viewport: { width: 320, height: 700 } } });
  assert.ok((await sideways(small.page)) <= 0);
  await small.page.click('#begin');
  await filmThere(small.page);
  assert.ok((await sideways(small.page)) <= 0, 'with a question');
  await small.page.locator('.answer').first().click();
  assert.ok((await sideways(small.page)) <= 0, 'with its reason');
  await small.close();
});

test('axe finds nothing before, in and after a question, on the teacher’s page, and in forced colours', { skip: only('chromium', 'axe in every look') }, async () => {
  const { page, close } = await visit('practice.html', { options: { reducedMotion: 'reduce' } });
  await axeClean(page, 'before a round');
  await page.click('#begin');
  await filmThere(page);
  await axeClean(page, 'a question');
  await page.locator('#described-part summary').click();
  await page.locator('.answer').first().click();
  await axeClean(page, 'its reason');
  await page.click('#next');
  await round(page, async () => page.keyboard.press('1'), async () => page.click('#next'));
  for (const summary of await page.locator('.curve summary').all()) await summary.click();
  await axeClean(page, 'after a round');
  await close();
  const teacher = await visit('class-round.html');
  await axeClean(teacher.page, 'the teacher’s page');
  await teacher.page.click('#open-round');
  await filmThere(teacher.page);
  await axeClean(teacher.page, 'with a round');
  await teacher.close();
});

test('a question has a form in words wherever the eye is not asked, and one that has none can be left out uncounted', async () => {
  const { page, close } = await visit('practice.html', { options: { reducedMotion: 'reduce' } });
  await page.click('#begin');
  let left = 0;
  let described = 0;
  while (await page.locator('#asking').isVisible()) {
    await filmThere(page);
    await page.locator('#described-part summary').click();
    const out = page.locator('#described button');
    if (await out.count()) {
      left += 1;
      await out.click();
    } else {
      described += (await page.locator('#described').textContent()).length > 20 ? 1 : 0;
      await page.locator('.answer').first().click();
    }
    await page.click('#next');
  }
  assert.ok(left >= 1 && left <= 2 && left + described === 9, `${left} ${described}`);
  assert.equal((await answersKept(page)).length, 9 - left);
  await close();
});

test('answers go out as a file and come in again; what cannot be read is told and never written over', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'practice-'));
  const one = await visit('practice.html', { options: { reducedMotion: 'reduce' } });
  await one.page.click('#begin');
  await round(one.page, async () => one.page.keyboard.press('1'), async () => one.page.keyboard.press('Enter'));
  const [download] = await Promise.all([one.page.waitForEvent('download'), one.page.click('#keep-save')]);
  const text = await readFile(await download.path(), 'utf8');
  assert.equal(JSON.parse(text).answers.length, 9);
  await one.close();
  await writeFile(join(folder, 'good.json'), text);
  await writeFile(join(folder, 'bad.json'), text.replace('practice-1', 'practice-7'));
  const two = await visit();
  await two.page.setInputFiles('#keep-file', join(folder, 'good.json'));
  await two.page.waitForFunction(() => document.getElementById('keep-said').textContent !== '');
  assert.equal(await two.page.locator('#keep-said').textContent(), '9 answers added.');
  assert.match(await two.page.locator('#begun').textContent(), /^9 of 106/);
  await two.page.setInputFiles('#keep-file', join(folder, 'bad.json'));
  await two.page.waitForFunction(() => /format/.test(document.getElementById('keep-said').textContent));
  await two.close();
  // A teacher puts the files of a class side by side.
  await writeFile(join(folder, 'one.json'), text);
  const group = await visit('class-round.html');
  await group.page.setInputFiles('#curve-files', [join(folder, 'good.json'), join(folder, 'one.json'), join(folder, 'bad.json')]);
  await group.page.waitForSelector('#curves-shown:not([hidden])');
  assert.deepEqual(await group.page.locator('#curves-table tbody th').allTextContents(), ['good.json', 'one.json']);
  const cells = await group.page.locator('#curves-table tbody tr').first().locator('td').allTextContents();
  assert.match(cells.shift(), /not checked/);
  assert.equal(cells.map((cell) => Number(cell.match(/\d+/)[0])).reduce((a, b) => a + b, 0), 9);
  assert.match(await group.page.locator('#curves-bad').textContent(), /bad\.json: .*format/);
  await group.close();
  const broken = await visit('practice.html', { options: { reducedMotion: 'reduce' }, prepare: (page) => page.addInitScript(() => localStorage.getItem('downbeam.practice') || localStorage.setItem('downbeam.practice', '{"format":"of tomorrow"')) });
  assert.match(await broken.page.locator('#notice-text').textContent(), /cannot be read/);
  await broken.page.click('#begin');
  await filmThere(broken.page);
  await broken.page.keyboard.press('1');
  await broken.page.waitForSelector('.verdict');
  assert.equal(await broken.page.evaluate(() => localStorage.getItem('downbeam.practice')), '{"format":"of tomorrow"');
  await broken.close();
  await rm(folder, { recursive: true, force: true });
});

test('practice is handed in as a receipt: asked again on the class’s page, on the page for receipts and by the command line', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'practice-receipt-'));
  const learner = await visit('practice.html', { options: { reducedMotion: 'reduce' } });
  await learner.page.click('#keep-receipt');
  assert.match(await learner.page.textContent('#keep-said'), /code first/);
  await learner.page.fill('#keep-code', 'Müller 7');
  await learner.page.keyboard.press('Enter');
  assert.match(await learner.page.textContent('#keep-said'), /no answer yet/);
  await learner.page.click('#begin');
  let i = 0;
  const marks = await round(learner.page, async () => learner.page.keyboard.press(String(1 + (i++ % 4))), async () => learner.page.keyboard.press('Enter'));
  const [file] = await Promise.all([learner.page.waitForEvent('download'), learner.page.click('#keep-receipt')]);
  assert.equal(file.suggestedFilename(), 'downbeam-practice-Müller-7.json');
  const text = await readFile(await file.path(), 'utf8');
  const receipt = JSON.parse(text);
  assert.deepEqual([receipt.learner, receipt.claim], ['Müller 7', { answers: 9, right: marks.filter(Boolean).length }]);
  assert.deepEqual(learner.errors, []);
  await learner.close();

  // A cheat: another's receipt under the own code; and one whose wrong answers are said to be right.
  const wrong = receipt.answers.findIndex((answer) => !answer.right);
  assert.ok(wrong >= 0, 'who presses 1, 2, 3, 4 in turn has some wrong');
  const better = structuredClone(receipt);
  better.answers[wrong].right = true;
  better.claim.right += 1;
  await writeFile(join(folder, 'a.json'), text);
  await writeFile(join(folder, 'copy.json'), JSON.stringify({ ...receipt, learner: 'bo' }));
  await writeFile(join(folder, 'better.json'), JSON.stringify({ ...better, learner: 'cem' }));
  const files = ['a.json', 'copy.json', 'better.json'].map((name) => join(folder, name));
  const rowsOf = (page) => page.$$eval('#curves-table tbody tr', (all) => Object.fromEntries(all.map((row) => [row.querySelector('th').textContent, [row.dataset.status, row.querySelector('td').textContent]])));
  for (const [path, input] of [['class-round.html', '#curve-files'], ['check.html', '#files']]) {
    const { page, errors, close } = await visit(path);
    await page.setInputFiles(input, files);
    await page.waitForFunction(() => document.querySelectorAll('#curves-table tbody tr').length === 3, null, { timeout: 60_000 });
    const rows = await rowsOf(page);
    assert.deepEqual(Object.values(rows).map(([status]) => status).sort(), ['altered', 'verified', 'verified'], path);
    assert.match(rows.bo[1], /shares 9 films with/, path);
    assert.match(rows.cem[1], new RegExp(`altered: answer ${wrong + 1} is said to be right and is wrong`), path);
    const counts = await page.locator('#curves-table tbody tr').first().locator('td').allTextContents();
    assert.equal(counts.slice(1).map((cell) => Number(cell.match(/^\d+/)?.[0] ?? 0)).reduce((a, b) => a + b, 0), 9, path);
    await axeClean(page, `curves of a class on ${path}`);
    assert.deepEqual(errors, [], path);
    await close();
  }
  const said = cargo(folder, '--', 'grade', ...files, '--curves', 'curves.csv');
  assert.match(said, /verified +Müller 7 /);
  assert.match(said, /altered +cem .*is said to be right and is wrong/);
  const table = (await readFile(join(folder, 'curves.csv'), 'utf8')).trim().split(/\r?\n/);
  assert.equal(table.length, 1 + 3 * 4);
  await rm(folder, { recursive: true, force: true });
});

test('in German and Spanish no English is left on the page', async () => {
  for (const [tag, heading, question] of [['de', 'Tagesrunde', /^Frage 1 von 9/], ['es', 'Ronda diaria', /^Pregunta 1 de 9/]]) {
    const { page, errors, close } = await visit(`practice.html?lang=${tag}`, { options: { reducedMotion: 'reduce' } });
    assert.equal(await page.locator('h1').textContent(), heading);
    await page.click('#begin');
    await filmThere(page);
    assert.match(await page.locator('#where').textContent(), question);
    await page.keyboard.press('1');
    await page.waitForSelector('.verdict');
    const english = /\b(the|which|needle|patient’s|right\.|Not so)\b/;
    assert.doesNotMatch(await page.locator('#asking').textContent(), english);
    assert.deepEqual(errors, []);
    await close();
  }
});

test('a module that does not load is told in one sentence', async () => {
  const { page, close } = await visit('practice.html', { prepare: (p) => p.route('**/practice_bg.wasm', (route) => route.abort()) });
  assert.match(await page.locator('#notice-text').textContent(), /did not load/);
  await close();
});

test('a class round: ten learners answer, codes come back, counts stand over the film, then the truth; figures go out', async () => {
  const teacher = await visit('class-round.html', { options: { reducedMotion: 'reduce' } });
  const { page } = teacher;
  await page.fill('#seed', '48213');
  await page.selectOption('#count', '8');
  await page.selectOption('#stage', '1');
  await page.click('#open-round');
  await filmThere(page);
  const link = await page.inputValue('#link');
  assert.match(link, /practice\.html#round=3\.48213\.1\.8$/);
  assert.ok((await page.locator('#picture-path').getAttribute('d')).length > 2000, 'a picture code');
  // One learner by hand, on a phone.
  const learner = await open(site, { path: 'practice.html', hash: '#round=3.48213.1.8', ready: false, options: { viewport: { width: 390, height: 844 }, hasTouch: true, reducedMotion: 'reduce' } });
  await ready(learner.page);
  await learner.page.click('#class-begin');
  const mine = [];
  for (let i = 0; i < 8; i += 1) {
    await learner.page.waitForFunction((n) => document.getElementById('where').textContent.startsWith(`Question ${n} of 8`), i + 1);
    await filmThere(learner.page);
    assert.equal(await learner.page.locator('.answer[data-mark]').count(), 0, 'no truth is told');
    mine.push(i % 4);
    await learner.page.locator('.answer').nth(i % 4).click();
    // Loaded again halfway, it goes on where it was.
    if (i === 3) {
      await learner.page.reload();
      await ready(learner.page);
      await learner.page.click('#class-begin');
    }
  }
  await learner.page.waitForFunction(() => document.getElementById('asking').hidden);
  const code = await learner.page.locator('#class-code').textContent();
  assert.match(code, /^[0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4}$/);
  assert.deepEqual(learner.errors, []);
  await learner.close();
  // Nine more as their pages would write them: the first three know it all, the next three half, the last three nothing.
  const { codes, key } = await page.evaluate(async () => {
    const module = await import(new URL('pkg/practice.js', location.href).href);
    await module.default();
    const desk = new module.ClassDesk('3.48213.1.8');
    const room = new module.PracticeRoom();
    const answers = [];
    for (let i = 0; i < 8; i += 1) {
      desk.begin(room, i);
      answers.push(room.answerReport(255).answer);
    }
    const of = (n) => Uint8Array.from(answers, (a, i) => (n < 3 || (n < 6 && i % 2 === 0) ? a : (a + 1 + (n % 3)) % 4));
    return { codes: Array.from({ length: 9 }, (_, n) => desk.code(n + 1, of(n))), key: answers };
  });
  await page.fill('#codes', `${codes.slice(0, 8).join('\n')}\n${code.toLowerCase().replaceAll('-', ' ')}\nAAAA-BBBB-CCCC`);
  await page.click('#take');
  assert.match(await page.locator('#taken').textContent(), /^9 learners/);
  assert.match(await page.locator('#refused').textContent(), /slip in it, or is of another round/);
  const folder = await mkdtemp(join(tmpdir(), 'round-'));
  await writeFile(join(folder, 'late.txt'), `${codes[8]}\n${codes[0]}\n`);
  await page.setInputFiles('#codes-file', join(folder, 'late.txt'));
  await page.waitForFunction(() => /^10 /.test(document.getElementById('taken').textContent));
  let arrows = 0;
  for (let i = 0; i < 8; i += 1) {
    await filmThere(page);
    const tallies = await page.$$eval('.tally-text', (all) => all.map((t) => Number(t.textContent.match(/\d+/)[0])));
    assert.equal(tallies.reduce((a, b) => a + b, 0), 10, `question ${i + 1}`);
    const sure = 3 + (i % 2 === 0 ? 3 : 0) + (mine[i] === key[i] ? 1 : 0);
    assert.equal(tallies[key[i]], sure, `question ${i + 1}`);
    arrows += await page.locator('.class-arrows path.ink').count();
    assert.equal(await page.locator('.answer[data-mark]').count(), 0);
    await page.click('#turn');
    await page.waitForSelector('.answer[data-mark="right"]');
    assert.equal(Number(await page.locator('.answer[data-mark="right"]').getAttribute('data-choice')), key[i]);
    assert.match(await page.locator('.tally-text').nth(key[i]).textContent(), /true/);
    if (i < 7) await page.click('#next');
  }
  assert.ok(arrows >= 2, 'directions are shown as arrows');
  // Folded, so that the projector tells nothing before the film does.
  await page.click('#figures summary');
  const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save-figures')]);
  const rows = (await readFile(await download.path(), 'utf8')).trim().split(/\r?\n/).map((line) => line.split(','));
  assert.deepEqual(rows[0], ['round', 'question', 'kind', 'place', 'stage', 'answered', 'right', 'difficulty', 'discrimination']);
  assert.equal(rows.length, 1 + 8 + 8);
  rows.slice(1, 9).forEach((row, i) => {
    assert.equal(row[0], '3.48213.1.8');
    const right = 3 + (i % 2 === 0 ? 3 : 0) + (mine[i] === key[i] ? 1 : 0);
    assert.deepEqual([row[1], row[5], row[6], row[7]], [String(i + 1), '10', String(right), (right / 10).toFixed(3)]);
    assert.ok(Number(row[8]) > 0.3, `question ${i + 1} tells strong from weak: ${row[8]}`);
  });
  assert.deepEqual(teacher.errors, []);
  assert.ok((await sideways(page)) <= 0);
  await teacher.close();
  await rm(folder, { recursive: true, force: true });
});

test('a link that names no round says what is allowed, and the page of practice is reached from the menu', async () => {
  const wrong = await open(site, { path: 'practice.html', hash: '#round=9.9', ready: false });
  await ready(wrong.page);
  assert.match(await wrong.page.locator('#notice-text').textContent(), /names no round: .*3\.SEED\.STAGE\.COUNT/);
  await wrong.close();
  const { page, close } = await open(site);
  await page.click('#menu-button');
  await page.click('#menu-list a[href="practice.html"]');
  await ready(page);
  assert.equal(await page.locator('h1').textContent(), 'Daily round');
  await close();
});
