// The picture in words: the sentences against the engine's own numbers, what is held back where the learner judges, and when it speaks.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { changesOf, factsOf, needleFactsOf, sentencesOf } from '../../www/help/describe.js';
import { help } from '../../www/words/help.js';
import { open, setUp, settled, typeAngle, openSheet } from './harness.mjs';
import { drawn, mark, press, turnTo, use } from './keyboard.mjs';

const words = help.describe;
let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** A report of the engine's shape, with the pedicles 50 mm apart and everything else where a case puts it. */
function report({ level = 'L4', side = 'left', oblique = 0, spinous = 0, squared = 0, gap = 0, facet = 0, below = 4, lateral = 0 } = {}) {
  const at = (name, of, on, u, v) => ({ name, level: of, side: on, patient_mm: [0, 0, 0], detector_mm: [u, v] });
  return {
    level, side, orientation: { oblique, tilt: 0, image_rotation: 0 },
    criteria: [
      { id: 'spinous_centred', value: spinous, score: Math.abs(spinous) <= 3 ? 1 : 0 },
      { id: 'squared', value: squared, score: Math.abs(squared) <= 2 ? 1 : 0 },
      { id: 'facet_under_pedicle', value: facet, score: 0 },
      { id: 'lateral', value: lateral, score: 0 },
    ],
    measures: { upper_rim_gap_mm: gap, lower_plate_deg: 0, facet_below_pedicle_mm: below, posterior_wall_mm: lateral, crests_apart_mm: [0, 0] },
    landmarks: [
      at('pedicle_centre', 'L4', 'left', -25, 10), at('pedicle_centre', 'L4', 'right', 25, 10), at('superior_facet', 'L5', 'left', -30, -15),
      at('upper_plate_centre', 'L4', null, 0, 20), at('lower_plate_centre', 'L4', null, 0, -20), at('upper_plate_centre', 'L5', null, 0, -30), at('lower_plate_centre', 'L5', null, 0, -70),
      at('lower_plate_front', 'L4', null, 0, -20), at('lower_plate_back', 'L4', null, 0, -20), at('crest_top', 'S1', 'left', -80, -25), at('crest_top', 'S1', 'right', 80, -50),
    ],
  };
}
/** Waits until the section says something, or no longer says it, and gives the whole of it. The page writes it when it has stood still. */
async function body(page, pattern, { gone = false } = {}) {
  await page.waitForFunction(([source, without]) => new RegExp(source).test(document.getElementById('description-body').textContent) !== without, [pattern.source, gone]);
  return page.textContent('#description-body');
}
const sentencesFor = (r, options) => Object.fromEntries(sentencesOf(factsOf(r, options), words));

test('the place of each part in words', () => {
  const t = sentencesFor(report({ spinous: 26.4, squared: -6.2, gap: 6.4, facet: 8 }));
  assert.equal(t.spinous, 'The spinous process of L4 stands 26 percent of the pedicles’ spacing to the patient’s left of midway between them.');
  assert.equal(t.upper, 'The L4 upper end plate opens as two lines, 6 degrees, 6 mm apart.');
  assert.equal(t.lower, 'The L4 lower end plate is a single line.');
  assert.equal(t.process, 'The lateral edge of the superior articular process of L5 stands under the middle third of the L4 pedicle, the tip 4 mm below it.');
  assert.equal(t.joint, 'The L4–L5 facet joint lies 5 mm left and 25 mm down from the pedicle’s centre.');
  assert.equal(t.pedicle, 'The left L4 pedicle lies 25 mm left and 10 mm up from the picture’s middle.');
  assert.equal(t.crest, 'The left iliac crest reaches the height of the disc between L4 and L5.');
  assert.match(sentencesFor(report({ spinous: -2 })).spinous, /stands midway/);
  // Lateral is the patient's left on the left, and the right on the right.
  assert.match(sentencesFor(report({ facet: 30 })).process, /under the lateral third/);
  assert.match(sentencesFor(report({ facet: -30 })).process, /under the medial third/);
  assert.match(sentencesFor({ ...report({ facet: 30 }), side: 'right' }).process, /under the medial third/);
  assert.match(sentencesFor(report({ facet: 120, below: -3 })).process, /stands 1\.2 pedicle widths lateral of the middle of the L4 pedicle, the tip over the pedicle by 3 mm/);
});

test('from the side other things are told than from behind', () => {
  const t = sentencesFor(report({ oblique: 90, squared: 5, gap: 40, lateral: 3.2 }));
  assert.equal(t.spinous, undefined);
  assert.equal(t.process, undefined);
  assert.equal(t.upper, 'The L4 upper end plate opens as two lines, 5 degrees apart.');
  assert.equal(t.lateral, 'Left and right L4 pedicles lie 3 mm apart, the edges of the posterior wall 3 mm.');
});

test('where the learner judges: what the eye sees, in its grain, and no word of degrees, tolerance or marks', () => {
  const t = sentencesFor(report({ spinous: 26.4, squared: -6.2, gap: 6.4, facet: 8 }), { judged: true });
  assert.match(t.spinous, /stands 25 percent/);
  assert.equal(t.upper, 'The L4 upper end plate opens as two lines, 6 mm apart.');
  // Midway is then what looks so, not what has full marks: 3.6 % is off to the check, and 2.4 % good; the grain knows of neither.
  assert.match(sentencesFor(report({ spinous: 2.4 }), { judged: true }).spinous, /midway/);
  assert.match(sentencesFor(report({ spinous: 2.6 }), { judged: true }).spinous, /stands 5 percent/);
  assert.doesNotMatch(Object.values(t).join(' '), /degree|full marks|tolerance|of 100|towards/);
  assert.deepEqual(Object.keys(sentencesFor(report(), { naming: true })), ['naming']);
  assert.doesNotMatch(Object.values(sentencesFor(report(), { naming: true })).join(' '), /\d/);
});

test('a message when something looks otherwise, none for a number, none for another case', () => {
  const before = factsOf(report({ spinous: 26, squared: 6, gap: 6 }));
  assert.deepEqual(changesOf(before, factsOf(report({ spinous: 20, squared: 5, gap: 5 })), words), []);
  assert.deepEqual(changesOf(before, factsOf(report({ spinous: 1, squared: 6, gap: 6 })), words), ['The spinous process of L4 stands midway between the pedicles.']);
  assert.equal(changesOf(before, factsOf(report({ spinous: -9, squared: 0, gap: 0 })), words).length, 2);
  assert.deepEqual(changesOf(before, factsOf({ ...report(), level: 'L3' }), words), []);
  assert.deepEqual(changesOf(null, before, words), []);
});

test('the needle: places in whole millimetres; what it met only where it may be told', () => {
  const needle = { device: { gauge: '22' }, depth_mm: 41.6, hub_mm: [-18, 12.4], tip_mm: [-20, 12], on_bone: true };
  const seen = { mark_mm: [-22, 8], needle, met: [{ kind: 'bone', sign: 'hard' }] };
  assert.deepEqual(needleFactsOf(report(), seen, true), { mark: [3, -2], placed: { gauge: '22', depth_mm: 42 }, hub: [2, 0], tip: [5, 2], bone: true, contact: seen.met[0] });
  assert.equal(needleFactsOf(report(), seen, false).contact, null);
  assert.equal(needleFactsOf(report(), null, true), null);
});

test('on the page: the section says what the engine’s report says, a key reads it out, and turning to true AP is said once it stands', async () => {
  const { page, errors, close } = await open(site, { hash: '#level=L4&side=left&oblique=-9&tilt=12' });
  await page.waitForSelector('#description-said', { state: 'attached' });
  await body(page, /spinous process/);
  await page.click('#description summary');
  // At once: it is never seen open without its sentences.
  const [shown, engine] = [
    await page.textContent('#description-body'),
    await page.evaluate(async () => {
      const { TeachingRoom } = await import('./pkg/downbeam.js');
      const room = new TeachingRoom('average', 'L4', 'left');
      room.setOrientation(-9, 12);
      const { criteria } = room.report();
      room.free();
      return Object.fromEntries(criteria.map((c) => [c.id, c.value]));
    }),
  ];
  assert.equal(await page.textContent('#description-said'), '', 'nothing is said that was not asked and has not changed');
  assert.match(shown, new RegExp(`spinous process of L4 stands ${Math.round(Math.abs(engine.spinous_centred))} percent of the pedicles’ spacing to the patient’s left`));
  assert.match(shown, new RegExp(`upper end plate opens as two lines, ${Math.round(Math.abs(engine.squared))} degrees`));
  await page.locator('#picture').focus();
  await press(page, 'r');
  await page.waitForFunction(() => /The spinous process of L4 stands/.test(document.getElementById('description-said').textContent));
  await press(page, 'ArrowLeft', 9);
  await page.waitForFunction(() => /^The spinous process of L4 stands midway between the pedicles\./.test(document.getElementById('description-said').textContent));
  await body(page, /stands midway/);
  await page.uncheck('#description-says');
  await typeAngle(page, 'oblique', -20);
  await page.waitForTimeout(700);
  assert.match(await page.textContent('#description-said'), /midway/, 'switched off, nothing more is said');
  assert.deepEqual(errors, []);
  await close();
});

test('on the page: by exposure the last picture is told and not where the C-arm stands; in self-test no degrees until asked', async () => {
  const { page, close } = await open(site, { hash: '#level=L4&side=left&oblique=-9&tilt=12&exposures=on' });
  await page.click('#description summary');
  await page.waitForSelector('#description-says');
  await body(page, /There is no picture yet/);
  await page.click('#spot');
  const shot = await body(page, /spinous process of L4 stands \d+ percent/);
  assert.doesNotMatch(shot, /two lines, \d+ degrees/);
  await typeAngle(page, 'oblique', 0);
  const spinous = (text) => text.match(/The spinous process of L4 stands[^.]*\./)[0];
  assert.equal(spinous(await body(page, /The C-arm has moved since/)), spinous(shot), 'the picture is the same');
  await page.check('#source-live');
  await body(page, /two lines, \d+ degrees/);
  await page.check('#self-test');
  assert.doesNotMatch(await body(page, /Told as the eye sees it/), /two lines, \d+ degrees/);
  await page.click('#check');
  await body(page, /two lines, \d+ degrees/);
  await close();
});

test('on the page: the needle is told with its readings, in self-test by its places alone', async () => {
  const { page, close } = await open(site, { hash: '#injection=on&level=L4&side=left' });
  await page.waitForSelector('#description-said', { state: 'attached' });
  await turnTo(page, { oblique: 23.8, tilt: -2 });
  await mark(page, [-15.4, -5.6]);
  await use(page, 'place');
  await press(page, 'f', 4);
  await page.click('#description summary');
  await drawn(page);
  await settled(page);
  const shown = await body(page, /4 mm deep/);
  assert.match(shown, /The mark stands .* from the pedicle’s centre\./);
  assert.match(shown, /° off the beam, hub/);
  await openSheet(page, 'needle');
  await page.locator('#help-test').check({ force: true });
  assert.match(await body(page, /off the beam/, { gone: true }), /The hub stands/);
  await close();
});
