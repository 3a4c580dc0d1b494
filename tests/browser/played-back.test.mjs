// An attempt played back: its moments are the engine's, its marks are lost where the engine's own score changes, and the page's attempt is not touched.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeFinds, open, setUp, settled, sideways } from './harness.mjs';
import { drawn, mark, turnTo, use } from './keyboard.mjs';

const START = '#injection=on&patient=average&level=L4&side=left';
/** A hand that keeps poor views, goes in beside its mark and straight on: marks are lost at many places. */
const POOR = {
  patient: 'average',
  case: { target: { level: 'L4', side: 'left' }, exposures: false },
  log: ['10 orient 60 -90', '20 keep true_ap', '60 orient 180 -20', '80 keep oblique', '120 mark -1540 -560', '140 place 22 127', '200 advance 300 0', '240 roll 1800', '260 advance 300 0', '300 advance 250 0', '360 orient 900 -20', '380 keep lateral', '400 aspirate', '440 inject 50', '500 name perineural', '560 finish'],
};
let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** Opens the page with an attempt in its address, which it plays. */
async function played(trace, options = {}) {
  const blank = await open(site, { path: 'bench.html', ready: false });
  const fragment = await blank.page.evaluate(async (attempt) => (await import('/base/attempt-link.js')).attemptFragment(attempt), trace);
  await blank.close();
  const opened = await open(site, { hash: fragment, ready: false, options });
  await opened.page.waitForSelector('#replay-line', { timeout: 60000 });
  return opened;
}
const valueText = (page) => page.getAttribute('#replay-line', 'aria-valuetext');

test('where a step’s marks were lost, the engine’s score of the log changes for the last time; reasons are the result’s own', async () => {
  const { page, errors, close } = await open(site, { hash: START });
  const found = await page.evaluate(async (trace) => {
    const { default: start, TeachingRoom } = await import('/pkg/downbeam.js');
    await start();
    const { trackOf } = await import('/replay/track.js');
    const room = new TeachingRoom('average', 'L4', 'left');
    const track = await trackOf(room, trace, { marks: () => room.score(), exposures: false, share: () => {}, gone: () => false });
    const scoreOf = (count) => (room.loadAttempt({ ...trace, log: trace.log.slice(0, count) }), room.score());
    const all = trace.log.map((_, i) => scoreOf(i + 1));
    const end = all.at(-1);
    room.loadAttempt(trace);
    const { met } = room.procedure(560);
    return { lost: track.lost, all, end, harms: met.filter((m) => m.harm), moments: track.moments.map(({ tick, line }) => `${tick} ${line}`) };
  }, POOR);
  assert.deepEqual(found.moments.slice(1), POOR.log);
  const same = (a, b) => JSON.stringify([a.score, a.reasons]) === JSON.stringify([b.score, b.reasons]);
  const steps = found.lost.filter((one) => one.step);
  // Every step with less than full marks has a place, but for one that was not done, free pictures, and contacts, which have a place each.
  const wanted = found.end.steps.filter((s) => s.score !== null && s.score < 1 && s.id !== 'radiation' && !(s.id === 'contacts' && found.harms.length));
  assert.ok(wanted.length >= 4, `only ${wanted.length} steps lack marks`);
  assert.deepEqual(steps.map(({ step }) => step.id).sort(), wanted.map((s) => s.id).sort());
  for (const { moment, step } of steps) {
    const at = found.all.map(({ steps: of }) => of.find((s) => s.id === step.id));
    const end = at.at(-1);
    assert.deepEqual(step, end);
    // `moment` counts from the beginning, so the score after it is `at[moment - 1]`.
    for (let k = moment - 1; k < at.length; k++) assert.ok(same(at[k], end), `${step.id} still changes after ${moment}`);
    if (moment > 1) assert.ok(!same(at[moment - 2], end), `${step.id} had its marks before ${moment}`);
  }
  const places = new Map(steps.map(({ moment, step }) => [step.id, POOR.log[moment - 1]]));
  assert.equal(places.get('true_ap'), '20 keep true_ap');
  assert.equal(found.lost.filter((one) => one.contact).length, found.harms.length);
  for (const { contact, moment } of found.lost.filter((one) => one.contact)) assert.match(POOR.log[moment - 1], new RegExp(`^${contact.tick} advance`));
  assert.deepEqual(errors, []);
  await close();
});

test('an address with an attempt plays it: time line by key and button, reasons as a list, nothing of the page’s attempt changed', async () => {
  const { page, errors, close } = await played(POOR);
  assert.match(await valueText(page), /^0:00, action 0 of 16: the beginning$/);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  assert.equal(await valueText(page), '0:01, action 2 of 16: true AP kept');
  assert.match(await page.textContent('.replay-here'), /^Here: True AP, \d+ of 100: /);
  await page.keyboard.press('End');
  assert.equal(await valueText(page), '0:28, action 16 of 16: finished');
  await page.keyboard.press('Home');
  const film = () => page.evaluate(() => document.querySelector('.replay-film canvas').toDataURL().length + document.querySelector('.replay-film canvas').toDataURL().slice(-400));
  const first = await film();
  await page.click('.replay-lost >> nth=1');
  assert.notEqual(await film(), first);
  assert.equal(await page.locator('.replay-lost[aria-current]').count() >= 1, true);
  const rows = await page.locator('.replay-lost').count();
  assert.equal(await page.locator('.replay-sign').count(), rows);
  await page.locator('#replay-play').press('Enter');
  const before = Number(await page.inputValue('#replay-line'));
  await page.waitForFunction((from) => Number(document.getElementById('replay-line').value) > from + 0.5, before);
  await page.locator('#replay-play').press('Enter');
  assert.equal(await page.textContent('#replay-play'), 'Play');
  assert.deepEqual((await axeFinds(page)).violations, []);
  await page.keyboard.press('Escape');
  await page.waitForSelector('#replay', { state: 'detached' });
  // What stands on the page is the attempt as it came.
  const download = page.waitForEvent('download');
  await page.evaluate(() => document.getElementById('attempt-save').click());
  const saved = JSON.parse(await (await import('node:fs/promises')).readFile(await (await download).path(), 'utf8'));
  assert.deepEqual(saved.log, POOR.log);
  assert.deepEqual(errors, []);
  await close();
});

test('another attempt at the case is laid beside it, one of another case is refused, and a broken file says why', async () => {
  const { page, errors, close } = await played(POOR);
  const give = (text) => page.setInputFiles('#replay-file', { name: 'other.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await give('{');
  await page.waitForFunction(() => /not JSON/.test(document.querySelector('#replay .complaint').textContent));
  await give(JSON.stringify({ ...POOR, case: { ...POOR.case, target: { level: 'L5', side: 'left' } } }));
  await page.waitForFunction(() => /another patient, level or side/.test(document.querySelector('#replay .complaint').textContent));
  await give('null');
  await page.waitForFunction(() => /another patient, level or side/.test(document.querySelector('#replay .complaint').textContent));
  await give(JSON.stringify({ ...POOR, log: ['10 orient 238 -20', '200 keep oblique', '300 mark -1540 -560', '400 place 22 127', '500 advance 400 0', '700 finish'] }));
  await page.waitForSelector('#replay-beside-off', { state: 'visible' });
  assert.equal(await page.isHidden('#replay .complaint'), true);
  // At the same place of both: the needle on the skin.
  await page.focus('#replay-line');
  await page.keyboard.press('Home');
  for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowRight');
  assert.match(await valueText(page), /needle set on the skin$/);
  assert.equal(await page.textContent('.replay-other'), 'The other: C-arm 23.8° to the patient’s left, 2° caudad; needle 0 mm deep.');
  await page.keyboard.press('End');
  assert.match(await page.textContent('.replay-other'), /needle 40 mm deep\.$/);
  await page.click('#replay-beside-off');
  assert.equal(await page.isHidden('.replay-other'), true);
  assert.deepEqual(errors, []);
  await close();
});

test('it is offered with the views so far and with the result, and not where it would show for nothing what an exposure costs', async () => {
  const { page, errors, close } = await open(site, { hash: `${START}&exposures=on` });
  await page.waitForSelector('#replay-history', { state: 'attached' });
  await turnTo(page, { oblique: 0, tilt: -2.1 });
  await page.click('#spot');
  await use(page, 'keep-true_ap');
  const hidden = (id) => page.evaluate((name) => document.getElementById(name).hidden, id);
  assert.equal(await hidden('replay-history'), true);
  await close();
  const free = await open(site, { hash: START });
  await free.page.waitForSelector('#replay-history', { state: 'attached' });
  await turnTo(free.page, { oblique: 0, tilt: -2.1 });
  await use(free.page, 'keep-true_ap');
  await turnTo(free.page, { oblique: 23.8, tilt: -2 });
  await use(free.page, 'keep-oblique');
  await mark(free.page, [-15.4, -5.6]);
  await drawn(free.page);
  assert.equal(await free.page.evaluate(() => document.getElementById('replay-history').hidden), false);
  await free.page.evaluate(() => document.getElementById('replay-history').click());
  await free.page.waitForSelector('#replay-line');
  await free.page.click('#replay-close');
  await settled(free.page);
  assert.deepEqual([...errors, ...free.errors], []);
  await free.close();
});

test('at 320 px it goes down, not sideways, and film, line and button are in sight at once', async () => {
  const { page, errors, close } = await played(POOR, { viewport: { width: 320, height: 640 } });
  assert.ok((await sideways(page)) <= 0);
  assert.ok(await page.evaluate(() => document.getElementById('replay').scrollWidth <= document.getElementById('replay').clientWidth + 1));
  for (const id of ['#replay-line', '#replay-play']) {
    const box = await page.locator(id).boundingBox();
    assert.ok(box.y + box.height <= 640, `${id} ends at ${box.y + box.height}`);
    assert.ok(box.height >= 24, id);
  }
  assert.deepEqual(errors, []);
  await close();
});

test('a receipt’s attempt brings its lesson: the marks that are shown are the lesson’s own, each with its reason', async () => {
  const blank = await open(site, { path: 'bench.html', ready: false });
  const { fragment, steps, gates } = await blank.page.evaluate(async () => {
    const { default: start, LessonDesk } = await import('/pkg/lessons.js');
    await start();
    const lesson = await (await fetch('/lessons/true-ap.json')).text();
    const desk = new LessonDesk(lesson, 'kim');
    const { patient, seed, changed, case: set } = desk.drawn();
    const log = ['10 orient 60 -90', '40 keep true_ap', '60 finish'];
    const { attemptFragment } = await import('/base/attempt-link.js');
    const { steps: all, gates: held } = desk.standing(log);
    return { fragment: await attemptFragment({ patient, seed, changed, case: set, log, of: { lesson, learner: 'kim' } }), steps: all, gates: held };
  });
  await blank.close();
  assert.deepEqual(steps.map((s) => s.id), ['true_ap']);
  const { page, errors, close } = await open(site, { hash: fragment, ready: false });
  await page.waitForSelector('#replay-line', { timeout: 60000 });
  const rows = await page.locator('.replay-lost').allInnerTexts();
  // One step is asked for, and it lacks marks; of a whole injection nine steps would be left undone.
  assert.ok(rows.length >= 1 && rows.length <= 1 + gates.filter((g) => !g.passed).length, rows.join('\n'));
  assert.match(rows[0], /True AP/);
  assert.doesNotMatch(await page.innerText('#replay'), /Contrast|Steering|Down the beam/);
  assert.deepEqual(errors, []);
  await close();
});

test('a long log is stood at anywhere as quickly as a short one: what is shown there is what a replay from its start gives', async () => {
  const { page, errors, close } = await open(site, { hash: START });
  const found = await page.evaluate(async (trace) => {
    const { default: start, TeachingRoom } = await import('/pkg/downbeam.js');
    await start();
    const room = new TeachingRoom('average', 'L4', 'left');
    const head = trace.log.slice(0, 6);
    // In and out by a millimetre, and round, for long.
    const more = Array.from({ length: 900 }, (_, i) => `${200 + i} ${['advance 10 0', 'roll 150', 'withdraw 8'][i % 3]}`);
    const long = { ...trace, log: [...head, ...more] };
    const report = () => JSON.stringify([room.procedure(5000), room.report().orientation, [...room.tableShift()]]);
    room.beginReplay(long);
    const spots = [0, 1, 15, 16, 17, 450, 899, 906, 3];
    const stood = spots.map((count) => (room.standAfter(count), report()));
    const replayed = spots.map((count) => (room.loadAttempt({ ...long, log: long.log.slice(0, count) }), report()));
    return { stood, replayed };
  }, POOR);
  assert.deepEqual(found.stood, found.replayed);
  assert.deepEqual(errors, []);
  await close();
});
