// Lessons in SCORM hosts: scorm-again (npm, MIT) with the limits of SCORM 1.2 (ADL, Run-Time Environment 1.2, 2001) and SCORM 2004 4th
// edition (ADL, Run-Time Environment, 2009) held in front of it.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { connected, lessonSite, MODULES, resultOf } from './hosts.mjs';
import { scormHost } from './scorm-host.mjs';

let browser;
let site;
let attempt;
before(async () => {
  ({ attempt, browser, site } = await lessonSite([
    ['/scorm-again/', `${MODULES}scorm-again/dist/`],
    ['/lesson/lesson.json', async () => ({ body: '{"id":"few-pictures"}' })],
    ['/lesson/', async (_, form) => connected(form)],
    ['/host/', async (_, form) => scormHost(form, `/lesson/${form}`)],
  ]));
});
after(async () => (await browser.close(), await site.close()));

/** A host with the lesson open in it. The host's storage lives as long as the page; `misbehave` before the lesson is there. */
async function opened(form, { page = null, misbehave = {} } = {}) {
  page ??= await browser.newPage();
  await page.route('**/lesson/scorm*', async (route) => (await page.evaluate((m) => Object.assign(globalThis.misbehave, m), misbehave), route.continue()));
  await page.goto(`${site.address}/host/${form}`);
  const lesson = page.frame({ url: /\/lesson\// });
  await lesson.waitForSelector('html[data-connected]');
  return {
    page,
    lesson,
    keep: (lines) => lesson.evaluate((l) => delivery.keep(l), lines),
    finish: (result) => lesson.evaluate((r) => delivery.finish(r), result),
    resume: () => lesson.evaluate(() => delivery.resume()),
    leave: () => lesson.evaluate(() => delivery.leave()),
    notices: () => lesson.evaluate(() => notices),
    model: () => page.evaluate(() => model()),
    close: () => page.evaluate(() => document.getElementById('lesson').remove()),
    misbehave: (how) => page.evaluate((m) => Object.assign(globalThis.misbehave, m), how),
  };
}

/** What the host was last told of a value. */
const lastValue = async ({ page }, key) => (await page.evaluate(() => calls)).findLast((call) => call.includes(` ${key} `)).split(' ').at(-1);

for (const form of ['scorm12', 'scorm2004']) {
  test(`${form}: an attempt is left, comes back whole, and is handed in`, async () => {
    const first = await opened(form);
    assert.equal(await first.lesson.evaluate(() => delivery.name), form);
    assert.equal(await first.lesson.evaluate(() => delivery.lesson), '{"id":"few-pictures"}');
    assert.ok(await first.lesson.evaluate(() => delivery.keepsProgress));
    assert.equal(await first.resume(), null);
    await first.keep(attempt.slice(0, 40));
    await first.keep(attempt.slice(0, 60));
    await first.close();
    const left = await first.model();
    assert.equal((left.core ?? left).exit, 'suspend');
    assert.equal(form === 'scorm12' ? left.core.lesson_status : left.completion_status, 'incomplete');

    const second = await opened(form, { page: first.page });
    assert.deepEqual(await second.resume(), attempt.slice(0, 60));
    const said = await second.finish(resultOf(attempt));
    assert.deepEqual(said, { accepted: true, said: null });
    const model = await second.model();
    if (form === 'scorm12') {
      assert.equal(model.core.lesson_status, 'passed');
      assert.equal(model.core.score.raw, '85');
      assert.match(await lastValue(second, 'cmi.core.session_time'), /^\d{2,4}:\d\d:\d\d\.\d\d$/);
      assert.ok(model.suspend_data.length <= 4096);
    } else {
      assert.deepEqual([model.success_status, model.completion_status, Number(model.score.scaled), Number(model.progress_measure)], ['passed', 'completed', 0.85, 1]);
      assert.match(await lastValue(second, 'cmi.session_time'), /^PT(\d+H)?(\d+M)?(\d+(\.\d{1,2})?S)?$/);
    }
    assert.equal(JSON.parse(model.suspend_data).log.length, attempt.length, 'the receipt, whole');
    const interactions = Object.values(model.interactions.childArray ?? model.interactions);
    assert.deepEqual(interactions.filter((i) => i?.id).map((i) => [i.id, Number(i.result)]), [['true_ap', 0.9], ['oblique', 0.8]]);

    await second.keep(attempt.slice(0, 10));
    await second.leave();
    const both = (await second.model()).suspend_data;
    assert.match(both, /^db1\.10\..* \{"format":1,/, 'a new attempt beside the receipt of the last one');
    assert.deepEqual(await second.finish(resultOf(attempt, { score: 0.5, passed: false })), { accepted: true, said: 'The learning platform keeps your earlier result.' });
    const after = await second.model();
    assert.equal(form === 'scorm12' ? after.core.lesson_status : after.success_status, 'passed');
    assert.equal(JSON.parse(after.suspend_data).claim.total, 0.85);
    assert.deepEqual(await second.notices(), []);
    assert.deepEqual(await second.page.evaluate(() => refused), []);
    await second.close();
    const calls = await second.page.evaluate(() => calls);
    assert.match(calls.at(-1), form === 'scorm12' ? /^LMSFinish/ : /^Terminate/);
    await second.page.close();
  });

  test(`${form}: a host that begins a new attempt after any end but "suspend" loses nothing to one who only looks`, async () => {
    const first = await opened(form);
    await first.keep(attempt.slice(0, 60));
    await first.close();
    // Opened three times to look: nothing is kept, nothing is resumed.
    for (let look = 0; look < 3; look += 1) await (await opened(form, { page: first.page })).close();
    const second = await opened(form, { page: first.page });
    assert.equal(await first.page.evaluate(() => attempts), 1);
    assert.deepEqual(await second.resume(), attempt.slice(0, 60));
    assert.ok((await second.finish(resultOf(attempt))).accepted);
    await second.close();
    await (await opened(form, { page: first.page })).close();
    const third = await opened(form, { page: first.page });
    assert.equal((await third.finish(resultOf(attempt, { score: 0.2, passed: false }))).said, 'The learning platform keeps your earlier result.');
    const model = await third.model();
    assert.equal(form === 'scorm12' ? model.core.lesson_status : model.success_status, 'passed');
    assert.equal(await first.page.evaluate(() => attempts), 1);
    await first.page.close();
  });

  test(`${form}: two tabs of one learner: the fail of one does not replace the pass of the other`, async () => {
    const context = await browser.newContext();
    const one = await opened(form, { page: await context.newPage() });
    const two = await opened(form, { page: await context.newPage() });
    await two.keep(attempt.slice(0, 10));
    assert.ok((await one.finish(resultOf(attempt))).accepted);
    assert.equal((await two.finish(resultOf(attempt, { score: 0.2, passed: false }))).said, 'The learning platform keeps your earlier result.');
    await one.close();
    // The last that the host hears is from the tab with the fail.
    await two.close();
    const model = await two.model();
    assert.equal(form === 'scorm12' ? model.core.lesson_status : model.success_status, 'passed');
    assert.equal(Number((model.core ?? model).score.raw), 85);
    assert.equal(JSON.parse(model.suspend_data).claim.total, 0.85);
    await context.close();
  });

  test(`${form}: a value that the host cannot give is told, and a fail is not written over what may be a pass`, async () => {
    const first = await opened(form);
    assert.ok((await first.finish(resultOf(attempt))).accepted);
    await first.close();
    const blind = await opened(form, { page: first.page, misbehave: { [form === 'scorm12' ? 'LMSGetValue' : 'GetValue']: 'throw' } });
    assert.match((await blind.notices())[0], /could not give back/);
    const { accepted, said } = await blind.finish(resultOf(attempt, { score: 0.2, passed: false }));
    assert.ok(!accepted);
    assert.match(said, /not written over it/);
    await blind.close();
    const model = await blind.model();
    assert.equal(form === 'scorm12' ? model.core.lesson_status : model.success_status, 'passed');
    await first.page.close();
  });

  test(`${form}: a host that answers "false" or throws loses nothing, and the learner is told`, async () => {
    const commit = form === 'scorm12' ? 'LMSCommit' : 'Commit';
    const set = form === 'scorm12' ? 'LMSSetValue' : 'SetValue';
    const host = await opened(form);
    for (const broken of [{ [commit]: 'false' }, { [commit]: 'throw' }, { [set]: 'throw' }]) {
      await host.misbehave(broken);
      await host.keep(attempt.slice(0, 30));
      await host.leave();
      assert.match((await host.notices()).at(-1), /does not answer/);
      const handed = host.finish(resultOf(attempt, { score: 0.4, passed: false }));
      await host.page.waitForTimeout(400);
      await host.misbehave({ [commit]: null, [set]: null });
      assert.deepEqual(await handed, { accepted: true, said: null });
      assert.match((await host.notices()).at(-1), /has taken everything/);
      const model = await host.model();
      assert.equal(Number((model.core ?? model).score.raw), 40);
    }
    await host.misbehave({ [commit]: 'false' });
    const { accepted, said } = await host.finish(resultOf(attempt));
    assert.ok(!accepted);
    assert.match(said, /has not confirmed the result yet/);
    await host.misbehave({ [commit]: null });
    await host.page.waitForFunction(() => JSON.stringify(model()).includes('"passed"'), null, { timeout: 15_000 });
    await host.page.close();
  });

  test(`${form}: a host that cannot be opened, and one whose record cannot be read`, async () => {
    const [start, get] = form === 'scorm12' ? ['LMSInitialize', 'LMSGetValue'] : ['Initialize', 'GetValue'];
    const shut = await opened(form, { misbehave: { [start]: 'false' } });
    assert.ok(!(await shut.lesson.evaluate(() => delivery.keepsProgress)));
    assert.match((await shut.notices())[0], /did not open its record/);
    await shut.misbehave({ [start]: null });
    assert.ok((await shut.finish(resultOf(attempt))).accepted, 'opened at last');
    await shut.page.close();

    const first = await opened(form);
    await first.keep(attempt.slice(0, 60));
    await first.close();
    const kept = (await first.model()).suspend_data;
    const blind = await opened(form, { page: first.page, misbehave: { [get]: 'throw' } });
    assert.equal(await blind.resume(), null);
    assert.match((await blind.notices()).at(-1), /could not give back/);
    await blind.keep(attempt.slice(0, 5));
    await blind.close();
    assert.equal((await blind.model()).suspend_data, kept, 'what was kept is not written over');
    await blind.page.close();
  });
}

test('scorm12: a log too long for 4,096 characters is kept as far as it goes, and the learner is told', async () => {
  const host = await opened('scorm12');
  const long = Array.from({ length: 3000 }, (_, i) => `${20 * i} orient ${(i * 37) % 1800} ${(i * 91) % 400}`);
  await host.keep(long);
  await host.leave();
  await host.keep([...long, '99999 orient 1 1']);
  await host.leave();
  const notes = (await host.notices()).filter((said) => /keeps 4,096 characters/.test(said));
  assert.equal(notes.length, 1, 'once, though the numbers change');
  assert.match(notes[0], /from action \d+ of 3000/);
  await host.close();
  assert.deepEqual(await host.page.evaluate(() => refused), []);
  const again = await opened('scorm12', { page: host.page });
  const back = await again.resume();
  assert.ok(back.length > 500, `${back.length} actions`);
  assert.deepEqual(back, long.slice(0, back.length));
  assert.ok((await again.notices()).some((said) => said.includes(`first ${back.length} actions of your attempt only: the last ${3001 - back.length} are missing`)), 'the next time it is said what is missing');
  const { accepted } = await again.finish(resultOf(long));
  assert.ok(accepted);
  assert.match((await again.notices()).at(-1), /receipt does not fit/);
  assert.equal((await again.model()).core.score.raw, '85');
  await again.page.close();
});

test('outside of any host the page says so and works by itself', async () => {
  const page = await browser.newPage();
  await page.goto(`${site.address}/lesson/scorm12`);
  await page.waitForSelector('html[data-connected=page]');
  assert.match((await page.evaluate(() => notices))[0], /opened outside a learning platform/);
  assert.equal(await page.evaluate(() => delivery.lesson), '{"id":"few-pictures"}');
  await page.close();
});
