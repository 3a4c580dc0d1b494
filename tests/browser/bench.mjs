// Times in each browser, from the page and from bench.html: `npm run bench [-- FRAMES [BROWSER…]]`. Prints a table a browser and one line of
// JSON. In Chromium also what a slow network and a slow machine do: first picture at 1.6 Mbit/s and 150 ms a way, and pictures while
// dragging on a phone-size page with the processor four and six times slower (both through the DevTools protocol).

import { BROWSERS, launch, open, serve, settled } from './harness.mjs';
import { packer } from './packages.mjs';

const frames = Number(process.argv[2] ?? 240);
const kinds = process.argv.length > 3 ? process.argv.slice(3) : BROWSERS;
// Bits a second as bytes; the latency is a request's way there and back, as DevTools has it.
const SLOW_NETWORK = { offline: false, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8, latency: 150 };
/** How many times slower the processor is made. */
const SLOWER = [4, 6];
const DRAG_s = 4;

const firstPicture = (page) => page.evaluate(() => performance.getEntriesByName('downbeam:first-picture')[0].startTime);
const at = (list, share) => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(share * list.length))];

for (const kind of kinds) {
  const server = await serve();
  const browser = await launch({ kind, direct: true });
  const site = { server, browser };
  try {
    const firsts = [];
    for (let i = 0; i < 3; i++) {
      const { page, close } = await open(site, { ownPace: true });
      firsts.push(await firstPicture(page));
      await close();
    }
    const page = await browser.newPage();
    await page.goto(`${server.address}bench.html?frames=${frames}`);
    await page.waitForFunction(() => Boolean(globalThis.downbeamBench));
    const result = await page.evaluate(() => globalThis.downbeamBench);
    if (result.failed) throw new Error(result.failed);
    await page.close();
    const found = { browser: `${kind} ${browser.version()}`, first_picture_ms: at(firsts, 0.5), ...result };
    if (kind === 'chromium') Object.assign(found, { slow_network: await slowNetwork(browser), slow_processor: await slowProcessors(site) });
    print(found);
  } finally {
    await browser.close();
    await server.close();
  }
}

/** First picture over a slow line, ms, of files as they lie, as a web host packs them, and of a packed site; with how many bytes came before it. */
async function slowNetwork(browser) {
  const found = {};
  const packages = packer();
  for (const [name, folder, gzip] of [['plain', 'www', false], ['gzip', 'www', true], ['site', packages.pack('site', 'site'), true]]) {
    const server = await serve(folder, { gzip });
    const { page, close } = await open({ server, browser }, {
      ownPace: true,
      ready: false,
      prepare: async (p) => {
        const session = await p.context().newCDPSession(p);
        await session.send('Network.enable');
        await session.send('Network.emulateNetworkConditions', SLOW_NETWORK);
      },
    });
    await page.waitForFunction(() => performance.getEntriesByName('downbeam:first-picture').length > 0, null, { timeout: 120_000 });
    const before = await page.evaluate(() => {
      const end = performance.getEntriesByName('downbeam:first-picture')[0].startTime;
      const files = performance.getEntriesByType('resource').filter((r) => r.responseEnd <= end);
      return { ms: end, requests: files.length + 1, kB: [...files, performance.getEntriesByType('navigation')[0]].reduce((sum, r) => sum + r.transferSize, 0) / 1000 };
    });
    found[name] = before;
    await close();
    await server.close();
  }
  packages.remove();
  return found;
}

/** Runs in the page before all else: notes when a picture is put on the film's canvas. */
function notePictures() {
  globalThis.pictures_ms = [];
  for (const name of ['putImageData', 'drawImage']) {
    const real = CanvasRenderingContext2D.prototype[name];
    CanvasRenderingContext2D.prototype[name] = function (...all) {
      if (this.canvas.id === 'radiograph') globalThis.pictures_ms.push(performance.now());
      return real.apply(this, all);
    };
  }
}

/** `slowProcessor` for each of `SLOWER`. */
async function slowProcessors(site) {
  const found = [];
  for (const rate of SLOWER) found.push({ rate, ...(await slowProcessor(site, rate)) });
  return found;
}

/** Times between pictures while a finger drags on a phone-size page on a machine `rate` times slower, ms. */
async function slowProcessor(site, rate) {
  const { page, close } = await open(site, { ownPace: true, options: { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2 }, prepare: (p) => p.addInitScript(notePictures) });
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate });
  const film = await page.locator('#picture').boundingBox();
  const [x, y] = [film.x + film.width / 2, film.y + film.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.evaluate(() => void (globalThis.pictures_ms.length = 0));
  // As a hand does it: sixty times a second, whether the page has kept up or not.
  const sent = [];
  for (const end = Date.now() + DRAG_s * 1000; Date.now() < end; await new Promise((resolve) => setTimeout(resolve, 1000 / 60))) {
    const turn = (Date.now() / 1000) * Math.PI;
    sent.push(session.send('Input.dispatchMouseEvent', { type: 'mouseMoved', x: x + 60 * Math.sin(turn), y: y + 30 * Math.cos(turn), button: 'left', buttons: 1 }));
  }
  const pictures_ms = await page.evaluate(() => globalThis.pictures_ms);
  const between = pictures_ms.slice(1).map((ms, i) => ms - pictures_ms[i]);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  await Promise.all(sent);
  await page.mouse.up();
  await settled(page);
  await close();
  return { median_ms: at(between, 0.5), p95_ms: at(between, 0.95), a_second: pictures_ms.length / DRAG_s };
}

function print({ browser, first_picture_ms, slow_network, slow_processor, ...result }) {
  console.log(`${browser}, ${result.frames} frames, engine memory ${result.engine_memory_MB.toFixed(0)} MB`);
  console.log(`${'first picture'.padEnd(13)} ${first_picture_ms.toFixed(0)} ms after navigation, the middle one of three`);
  for (const [name, { median_ms, p95_ms }] of Object.entries(result.figures)) {
    console.log(`${name.padEnd(13)} median ${median_ms.toFixed(2).padStart(7)} ms   95th percentile ${p95_ms.toFixed(2).padStart(7)} ms`);
  }
  for (const [name, { ms, requests, kB }] of Object.entries(slow_network ?? {})) console.log(`slow network  ${ms.toFixed(0)} ms to the first picture, ${requests} requests, ${kB.toFixed(0)} kB (${name})`);
  for (const { rate, a_second, median_ms, p95_ms } of slow_processor ?? []) console.log(`${rate} times slower ${a_second.toFixed(1)} pictures a second while dragging, median ${median_ms.toFixed(0)} ms, 95th percentile ${p95_ms.toFixed(0)} ms`);
  console.log(JSON.stringify({ browser, first_picture_ms, ...result, slow_network, slow_processor }));
}
