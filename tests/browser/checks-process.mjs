// Several files of checks in one process with one browser, one file after the other: `node checks-process.mjs FILE…`. Each file is a suite,
// so that what it sets up before its checks it takes down before the next file begins.

import { after, describe } from 'node:test';

/** How long whatever is still open after the last check may keep the process. */
const LEFT_OPEN_MS = 5000;
process.env.CHECKS_ONE_BROWSER = 'yes';
const { closeBrowsers } = await import('./harness.mjs');
for (const file of process.argv.slice(2)) describe(file, async () => void (await import(`./${file}`)));
after(async () => {
  await closeBrowsers();
  // A check that failed may have left a server or a page open, which would keep the process.
  setTimeout(() => process.exit(), LEFT_OPEN_MS).unref();
});
