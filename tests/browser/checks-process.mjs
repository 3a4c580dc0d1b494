// Several files of checks in one process with one browser, one file after the other: `node checks-process.mjs FILE…`. Each file is a suite,
// so that what it sets up before its checks it takes down before the next file begins.

import { after, describe } from 'node:test';

process.env.CHECKS_ONE_BROWSER = 'yes';
const { closeBrowsers } = await import('./harness.mjs');
for (const file of process.argv.slice(2)) describe(file, async () => void (await import(`./${file}`)));
after(closeBrowsers);
