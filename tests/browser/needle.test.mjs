// The whole injection by keyboard alone: to full marks, and into each place where it should not end.
// Where to aim comes from a second room of the same engine, as a teacher would point; everything done is done through the page's keys.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { open, setUp } from './harness.mjs';
import { align, behindWall, depth, mark, marks, press, steerTo, total, turnTo, use } from './keyboard.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** Best views of a target, and a place on the oblique picture that earns full marks, from another room of the same engine. */
const pointedOut = (page, patient, level, side) =>
  page.evaluate(
    async ([name, at, on]) => {
      const { TeachingRoom } = await import('/pkg/downbeam.js');
      const room = new TeachingRoom(name, at, on);
      const tenths = ({ oblique, tilt }) => ({ oblique: Math.round(oblique * 10) / 10, tilt: Math.round(tilt * 10) / 10 });
      const best = Object.fromEntries(room.report().views.map((v) => [v.view, tenths(v.best)]));
      room.setOrientation(best.oblique.oblique, best.oblique.tilt);
      const area = room.procedure(0).area_mm;
      const [left, right] = [Math.min(...area.map((p) => p[0])), Math.max(...area.map((p) => p[0]))];
      const [low, high] = [Math.min(...area.map((p) => p[1])), Math.max(...area.map((p) => p[1]))];
      const middle = [0, 1].map((i) => area.reduce((sum, p) => sum + p[i], 0) / area.length);
      const fits = (u, v) => {
        room.act(0, { do: 'mark', u: Math.round(u * 100), v: Math.round(v * 100) });
        return room.score().steps.find((s) => s.id === 'target').score >= 1;
      };
      // Clear all around, so that a needle that strays a little still passes.
      const places = [];
      for (let u = Math.ceil(left); u <= right; u += 0.6)
        for (let v = Math.ceil(low); v <= high; v += 0.6) {
          const at = [Math.round(u * 5) / 5, Math.round(v * 5) / 5];
          const room_mm = [2.4, 1.6, 0.8, 0].find((r) => [[0, 0], [r, 0], [-r, 0], [0, r], [0, -r]].every(([a, b]) => fits(at[0] + a, at[1] + b)));
          if (room_mm !== undefined) places.push({ at, room_mm, off: Math.hypot(at[0] - middle[0], at[1] - middle[1]) });
        }
      places.sort((a, b) => b.room_mm - a.room_mm || a.off - b.off);
      // A straight needle from there must meet nothing: vessels lie where they lie in this patient.
      const clean = ([u, v]) => {
        room.newAttempt({});
        room.setOrientation(best.oblique.oblique, best.oblique.tilt);
        room.act(0, { do: 'mark', u: Math.round(100 * u), v: Math.round(100 * v) });
        let now = room.act(0, { do: 'place', gauge: '22', length_mm: 127 });
        for (let i = 0; i < 8 && now.needle.coaxial.angle_deg > 0.2; i++) {
          const [right, up] = now.needle.coaxial.hub_offset_mm.map((mm) => Math.round((-mm / (1.45 * 127)) * 573));
          now = room.act(0, { do: 'angle', right, up });
        }
        room.setOrientation(best.lateral.oblique, best.lateral.tilt);
        // Depths behind the posterior body line, mm, where a little to either side is good too.
        const good = [];
        for (let i = 0; i < 240; i++) {
          now = room.act(0, { do: 'advance', by: 5, spin: 100 });
          const { behind_wall_mm } = now.needle.lateral;
          if (behind_wall_mm < 0 || now.met.some((m) => m.harm || m.kind === 'bone')) break;
          if (behind_wall_mm > 8) continue;
          room.act(0, { do: 'inject', volume: 10 });
          const { pattern } = room.act(0, { do: 'name', pattern: 'muscular' }).injected.at(-1);
          if (pattern === 'perineural') good.push(behind_wall_mm);
        }
        return good.length > 3 ? good[Math.floor(good.length / 2)] : null;
      };
      let found = null;
      for (const { at } of places) {
        const behind_mm = clean(at);
        if (behind_mm !== null) {
          found = { target: at, behind_mm };
          break;
        }
      }
      room.free();
      return { best, ...found, places: places.length };
    },
    [patient, level, side],
  );

/** Views, mark, needle, hub over tip: as far as the skin. */
async function toTheSkin(page, { best, target }) {
  await turnTo(page, best.true_ap);
  await use(page, 'keep-true_ap');
  await turnTo(page, best.oblique);
  await use(page, 'keep-oblique');
  await mark(page, target);
  await use(page, 'place');
  await align(page);
}

for (const [level, side] of [['L4', 'left'], ['L5', 'right']]) {
  test(`${level} ${side} by keyboard alone, to full marks`, async () => {
    const { page, errors, close } = await open(site, { hash: `#injection=on&level=${level}&side=${side}` });
    const pointed = await pointedOut(page, 'average', level, side);
    assert.ok(pointed.target, `none of ${pointed.places} places is reached`);
    await toTheSkin(page, pointed);
    await steerTo(page, 45);
    // On in short steps, with a look from the side whenever it is deep.
    await turnTo(page, pointed.best.lateral);
    await use(page, 'keep-lateral');
    for (let i = 0; i < 30; i++) {
      const behind = await behindWall(page);
      if (behind < pointed.behind_mm + 0.3) break;
      await press(page, 'o');
      await steerTo(page, (await depth(page)) + (behind > pointed.behind_mm + 10 ? 8 : behind > pointed.behind_mm + 3 ? 2 : 0.5));
      await press(page, 'l');
    }
    await press(page, 'p');
    await use(page, 'aspirate');
    assert.match(await page.textContent('#aspirated'), /^Nothing comes back\. That proves nothing/);
    await use(page, 'inject-50');
    await use(page, 'inject-10');
    await use(page, 'pattern', 'ArrowDown');
    await use(page, 'name');
    assert.match(await page.textContent('#verdict'), /Named rightly.*the spread that is wanted/);
    await use(page, 'finish');
    const said = await marks(page);
    assert.ok((await total(page)) >= 0.99, JSON.stringify(said));
    assert.ok(await page.locator('#notice').isHidden());
    assert.deepEqual(errors, []);
    await close();
  });
}

/** For each pattern a straight way that ends there: mark, moves of the hub and depth, found in another room of the same engine. */
const waysTo = (page, patient, level, side) =>
  page.evaluate(
    async ([name, at, on]) => {
      const { TeachingRoom } = await import('/pkg/downbeam.js');
      const room = new TeachingRoom(name, at, on);
      const best = room.report().views.find((v) => v.view === 'true_ap').best;
      const tenth = (x) => Math.round(x * 10) / 10;
      const view = { oblique: tenth(best.oblique), tilt: tenth(best.tilt) };
      const ways = {};
      // Marks 4 by 8 mm apart, then between those, until there is a way to each of the eleven: veins are thin.
      const marks = [[0, 0], [2, 0], [0, 4], [2, 4]].flatMap(([right, up]) => Array.from({ length: 99 }, (_, i) => [4 * (i % 11) - 40 + right, 8 * Math.floor(i / 11) - 32 + up]));
      for (const [u, v] of marks) {
        if (Object.keys(ways).length === 11) break;
        room.newAttempt({});
        room.setOrientation(view.oblique, view.tilt);
        room.act(0, { do: 'mark', u: 100 * u, v: 100 * v });
        let now = room.act(0, { do: 'place', gauge: '22', length_mm: 127 });
        const turns = [];
        for (let i = 0; i < 8 && now.needle.coaxial.angle_deg > 0.3; i++) {
          const [right, up] = now.needle.coaxial.hub_offset_mm.map((mm) => Math.round((-mm / (1.45 * 127)) * 573));
          turns.push([right, up]);
          now = room.act(0, { do: 'angle', right, up });
        }
        for (let pushes = 1, depth = 0; pushes <= 25; pushes++) {
          now = room.act(0, { do: 'advance', by: 50, spin: 100 });
          if (now.needle.depth_mm - depth < 0.5) break;
          depth = now.needle.depth_mm;
          if (depth < 20) continue;
          room.act(0, { do: 'inject', volume: 10 });
          const { pattern } = room.act(0, { do: 'name', pattern: 'muscular' }).injected.at(-1);
          ways[pattern] ??= { view, at: [u, v], turns, pushes };
        }
      }
      room.free();
      return ways;
    },
    [patient, level, side],
  );

// What is said on the way in or on suction, where that place gives a sign before contrast does.
const BAD = {
  muscular: null, facet_joint: null, arterial: null, venous: null, mixed: null,
  intrathecal: /[Cc]lear fluid/, subdural: /[Cc]lear fluid/, intraneural: /pain down the leg/, intradiscal: /rubbery resistance/, peritoneal: /loss of resistance/,
};
/** Where suction may bring blood, or not. */
const VASCULAR = ['arterial', 'venous', 'mixed'];

test('an attempt that ends in each wrong place: its sign is told, its contrast named, and the marks say so', async () => {
  const { page, errors, close } = await open(site, { hash: '#injection=on&patient=small&level=L3&side=left' });
  const ways = await waysTo(page, 'small', 'L3', 'left');
  for (const [pattern, sign] of Object.entries(BAD)) {
    const { view, at, turns, pushes } = ways[pattern];
    if (!(await page.locator('#needle-again').isDisabled())) await use(page, 'needle-again');
    await turnTo(page, view);
    await mark(page, at);
    await use(page, 'place');
    await page.locator('#picture').focus();
    for (const turn of turns) {
      for (const [by, more, less] of [[turn[0], 'ArrowRight', 'ArrowLeft'], [turn[1], 'ArrowUp', 'ArrowDown']]) {
        await press(page, by > 0 ? more : less, Math.floor(Math.abs(by) / 5));
        await press(page, `Shift+${by > 0 ? more : less}`, Math.abs(by) % 5);
      }
    }
    await use(page, 'spin-100', 'Space');
    const heard = [];
    for (let i = 0; i < pushes; i++) {
      await press(page, 'Shift+F');
      heard.push(await page.textContent('#needle-said'));
    }
    await use(page, 'aspirate');
    heard.push(await page.textContent('#aspirated'));
    if (sign) assert.match(heard.join(' '), sign, pattern);
    else if (!VASCULAR.includes(pattern)) assert.match(heard.at(-1), /^Nothing comes back\./);
    // Suction and hub say the same.
    const [atHub, sucked] = [await page.locator('#needle-signs').innerText(), heard.at(-1)];
    for (const sign of ['Blood', 'Clear fluid']) assert.equal(atHub.includes(`${sign} at the hub`), sucked.startsWith(`${sign} comes back`), `${pattern}: ${atHub} ${sucked}`);
    await use(page, 'inject-10');
    const list = ['perineural', 'arterial', 'venous', 'mixed', 'intrathecal', 'subdural', 'intraneural', 'intradiscal', 'facet_joint', 'peritoneal', 'muscular'];
    // The one in muscle is first taken for the right place.
    if (pattern === 'muscular') {
      await use(page, 'pattern', 'ArrowDown');
      await use(page, 'name');
      assert.match(await page.textContent('#verdict'), /^Not along the root.*It was in muscle/);
      await use(page, 'inject-10');
    }
    await page.locator('#pattern').press('Home');
    for (let i = 0; i <= list.indexOf(pattern); i++) await page.locator('#pattern').press('ArrowDown');
    assert.equal(await page.inputValue('#pattern'), pattern);
    await use(page, 'name');
    const verdict = await page.textContent('#verdict');
    assert.match(verdict, /^Named rightly/, `${pattern}: ${verdict}`);
    assert.match(verdict, /Wrong place for an injection: draw back, reposition/);
    await use(page, 'finish');
    const said = await marks(page);
    assert.match(said.contrast, /went to the wrong place: reposition/, pattern);
    assert.ok(parseInt(said.contrast, 10) < 80, `${pattern}: ${said.contrast}`);
    // What was met stands in the marks. A vessel that is met and left costs nothing there; contrast in it does.
    if (sign) assert.match(said.contacts, /at \d+ mm: /, pattern);
    if (sign) assert.ok(parseInt(said.contacts, 10) < 100, `${pattern}: ${said.contacts}`);
    assert.ok((await total(page)) < 0.75, `${pattern}: ${await total(page)}`);
  }
  assert.deepEqual(errors, []);
  await close();
});
