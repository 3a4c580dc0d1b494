// Runs checks in a process of their own: what `checks.mjs` and `browsers.mjs` share.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** How long the last words of a process may take. */
const LAST_WORDS_MS = 2000;
const folder = fileURLToPath(new URL('.', import.meta.url));

// What `downbeam pack` makes is made once for all processes (`packages.mjs`), and goes with this one.
const packed = mkdtempSync(join(tmpdir(), 'downbeam-packed-'));
process.on('exit', () => rmSync(packed, { recursive: true, force: true }));

/** Runs node with arguments in this folder. What it printed, its code, and whether it was ended after `most_ms`. */
export function run(args, { most_ms, env = {} }) {
  const child = spawn(process.execPath, args, { cwd: folder, env: { ...process.env, CHECKS_PACKED: packed, ...env }, stdio: ['ignore', 'pipe', 'pipe'] });
  // Apart, so that nothing comes between the lines of a report.
  const [said, complained] = [child.stdout, child.stderr].map((stream) => {
    const texts = [];
    stream.setEncoding('utf8').on('data', (text) => texts.push(text));
    return texts;
  });
  const late = setTimeout(() => child.kill(), most_ms);
  // A browser that outlives the process may hold its pipes open: what it says later belongs to no check.
  child.on('exit', () => setTimeout(() => [child.stdout, child.stderr].forEach((stream) => stream.destroy()), LAST_WORDS_MS));
  // Closed, not only ended: then all that it printed has arrived.
  return new Promise((done) => child.on('close', (code, signal) => {
    clearTimeout(late);
    done({ code, said: [...said, ...complained].join(''), ended: signal !== null });
  }));
}
