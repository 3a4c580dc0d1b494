// Files that a browser has put into a folder, for browsers whose driver does not tell of them.

import { readdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';

const UNFINISHED = /\.(wkdownload|part)$/;

/** The next file that arrives in a folder, as Playwright's download; it is moved out, so that the next one may have its name. */
export async function nextDownload(folder, timeout_ms = 30_000) {
  const before = new Set(readdirSync(folder));
  for (const end = Date.now() + timeout_ms; Date.now() < end; await new Promise((next) => setTimeout(next, 25))) {
    const name = readdirSync(folder).find((file) => !before.has(file) && !UNFINISHED.test(file) && statSync(join(folder, file)).size > 0);
    if (!name || readdirSync(folder).some((file) => UNFINISHED.test(file))) continue;
    const path = join(folder, '..', `${Date.now()}-${name}`);
    renameSync(join(folder, name), path);
    return { suggestedFilename: () => name, path: async () => path };
  }
  throw new Error('no download came');
}
