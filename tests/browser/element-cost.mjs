// What elements cost: memory by patients and elements, and time to hand a patient from one to another, as in docs/element.md. `node element-cost.mjs`.

import { launch, serve } from './harness.mjs';
import { allReady } from './element-site.mjs';

const CASES = [
  ['one element', ['average']],
  ['eight elements, one patient', Array(8).fill('average')],
  ['two patients', ['average', 'small']],
  ['four patients', ['average', 'small', 'large', 'worn']],
];

const pages = Object.fromEntries(CASES.map(([, patients], i) => [`/case-${i}.html`, page(patients)]));
const site = await serve('www', { pages });
const browser = await launch();
console.log('| page | patients in memory | engine memory, MB |\n| --- | --- | --- |');
for (const [i, [name]] of CASES.entries()) {
  const tab = await opened(i);
  const usage = await tab.evaluate(() => customElements.get('downbeam-view').usage());
  console.log(`| ${name} | ${usage.patients.length} | ${(usage.memory_bytes / 1e6).toFixed(0)} |`);
  await tab.close();
}
const tab = await opened(0);
const times = await tab.evaluate(timesOfTurns);
console.log(`\nA shared patient turned to another element's level, side and angles: ${times.aim_ms.toFixed(2)} ms; the picture and the report after it: ${times.draw_ms.toFixed(1)} ms (medians of 100).`);
await browser.close();
await site.close();

async function opened(i) {
  const tab = await browser.newPage();
  await tab.goto(`${site.address}case-${i}.html`);
  await tab.waitForFunction(() => customElements.get('downbeam-view'));
  await allReady(tab);
  return tab;
}

/** Runs in the page: the element's own hand-over, and what is drawn after it. */
async function timesOfTurns() {
  const { aim } = await import('./element/patients.js');
  const { TeachingRoom } = await import('./pkg/downbeam.js');
  const stand = { room: new TeachingRoom('average', 'L4', 'left'), aimed: 'L4 left' };
  const film = document.createElement('canvas').getContext('2d');
  const times = { aim_ms: [], draw_ms: [] };
  for (let n = 0; n < 100; n++) {
    const state = { level: n % 2 ? 'L4' : 'L3', side: n % 3 ? 'left' : 'right', oblique_deg: n % 30, tilt_deg: n % 7, rotation_deg: 0 };
    const start = performance.now();
    aim(stand, state);
    const aimed = performance.now();
    stand.room.drawRadiograph(film, true);
    stand.room.report();
    times.aim_ms.push(aimed - start);
    times.draw_ms.push(performance.now() - aimed);
  }
  return Object.fromEntries(Object.entries(times).map(([key, list]) => [key, list.sort((a, b) => a - b)[list.length / 2]]));
}

function page(patients) {
  const elements = patients.map((patient) => `<downbeam-view patient="${patient}" loading="eager"></downbeam-view>`);
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>Cost</title><script type="module" src="element/downbeam-view.js"></script>${elements.join('')}</html>`;
}
