// What `downbeam pack` makes, opened in Chromium as its receiver would.

import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { launch, settled, typeAngle } from './harness.mjs';
import { origin } from './hosts.mjs';
import { packer } from './packages.mjs';

let browser;
let packages;
before(async () => {
  packages = packer();
  browser = await launch();
});
after(async () => (await browser.close(), packages.remove()));

/** A page that collects what went wrong in it. */
async function watched() {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  const errors = [];
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(String(error)));
  return { page, errors };
}

test('one file: the page from file://, with its engine, and nothing fetched', async () => {
  const file = packages.pack('single', 'one.html');
  const { page, errors } = await watched();
  await page.goto(pathToFileURL(file).href);
  await settled(page);
  await typeAngle(page, 'oblique', 5);
  assert.match(await page.textContent('#total-value'), /of 100/);
  assert.equal(await page.evaluate(() => getComputedStyle(document.querySelector('.film')).display !== 'inline'), true, 'styles apply');
  assert.ok(await page.evaluate(async () => (await (await fetch('lessons/index.json')).json()) !== null));
  const asked = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name.slice(0, 60)));
  assert.deepEqual(asked.filter((url) => !url.startsWith('data:') && !url.startsWith('blob:')), [], 'the file alone');
  assert.deepEqual(errors, []);
  await page.close();
});

test('a site works without a network once it was opened, and says when there is a new version', async () => {
  const folder = packages.pack('site', 'site');
  const site = await origin([['/', folder]]);
  const { page, errors } = await watched();
  await page.goto(`${site.address}/index.html`);
  await settled(page);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.waitForFunction(async () => (await caches.keys()).some((name) => /^downbeam-[0-9a-f]{16}$/.test(name)));
  await page.context().setOffline(true);
  await page.goto(`${site.address}/`);
  await settled(page);
  assert.match(await page.textContent('#total-value'), /of 100/);
  await page.context().setOffline(false);
  assert.deepEqual(errors, []);
  // Another version of the same site.
  const worker = `${folder}/service-worker.js`;
  writeFileSync(worker, readFileSync(worker, 'utf8').replace(/VERSION = '.{4}/, "VERSION = '0000"));
  await page.reload();
  await page.waitForFunction(() => /new version/.test(document.getElementById('notice-text').textContent));
  await page.close();
  await site.close();
});

test('the page for frames is the page without its surroundings', async () => {
  const folder = packages.pack('site', 'framed');
  const [index, player] = ['index.html', 'player.html'].map((name) => readFileSync(`${folder}/${name}`, 'utf8'));
  const body = (html) => html.slice(html.indexOf('<body>')).split('\n').filter((line) => !/<li><a href="[a-z]+\.html"/.test(line));
  assert.deepEqual(body(player), body(index));
  assert.doesNotMatch(player, /href="[a-z]+\.html"/, 'no way out of the frame to pages that a package does not hold');
  const site = await origin([['/', folder]]);
  const { page, errors } = await watched();
  await page.goto(`${site.address}/player.html#level=L3&side=right`);
  await settled(page);
  assert.ok(await page.locator('.top').isHidden());
  assert.ok(await page.locator('.caution').isVisible());
  assert.deepEqual(await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length), 0);
  assert.deepEqual(errors, []);
  await page.close();
  await site.close();
});
