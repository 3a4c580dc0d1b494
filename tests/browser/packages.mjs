// What `downbeam pack` makes, made once for a file of tests and unpacked.

import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, extname, join } from 'node:path';
import { inflateRawSync } from 'node:zlib';
import { ROOT } from './harness.mjs';

/**
 * A folder for packages; `pack(form, name, ...lessons)` gives the path of one, made of what was built before. In a run of many files what
 * another file has packed of the same is copied.
 */
export function packer() {
  const folder = mkdtempSync(join(tmpdir(), 'downbeam-pack-'));
  return {
    folder,
    pack(form, name, ...lessons) {
      const out = join(folder, name);
      const chosen = lessons.flatMap((id) => ['--lesson', join(ROOT, 'www', 'lessons', `${id}.json`)]);
      const make = (path) => tool('pack', '--no-build', `--${form}`, ...chosen, ...(lessons.length > 1 ? ['--title', 'A course'] : []), '--out', path);
      const shared = madeOnce([form, ...lessons].join('+') + extname(out), make);
      if (shared) cpSync(shared, out, { recursive: true });
      else make(out);
      return out;
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/**
 * What `make(path)` makes, once for all processes of a run, by a text that says `what` it is: its path, which nobody may write to; null in a file alone, which has no folder for it.
 * Who comes while another process makes it waits for that one.
 */
export function madeOnce(what, make) {
  if (!process.env.CHECKS_PACKED) return null;
  // What names all lessons would be too long for a file's name.
  const name = createHash('sha256').update(what).digest('hex').slice(0, 32) + extname(what);
  const [path, making] = ['', '.making'].map((end) => join(process.env.CHECKS_PACKED, name + end));
  for (;;) {
    if (existsSync(path)) return path;
    try {
      mkdirSync(making);
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100);
    }
  }
  try {
    if (existsSync(path)) return path;
    // Whole or not at all.
    const part = join(making, name);
    make(part);
    renameSync(part, path);
    return path;
  } finally {
    rmSync(making, { recursive: true, force: true });
  }
}

/** What the host tool says of a receipt: its row. */
export function graded(folder, text) {
  writeFileSync(join(folder, 'receipt.json'), text);
  tool('grade', join(folder, 'receipt.json'), '--ndjson', join(folder, 'rows.ndjson'), '--force');
  return JSON.parse(readFileSync(join(folder, 'rows.ndjson'), 'utf8'));
}

/** The best true AP, degrees. A package has its engine in one file with the page, so a test cannot ask that one. */
export const bestTrueAp = (patient, level, side) =>
  JSON.parse(tool('view', '--patient', patient, '--level', level, '--side', side, '--best', '--view', 'ap', '--json')).orientation;

/** Runs the host tool and gives what it prints. */
function tool(...words) {
  const [command, ...first] = process.env.DOWNBEAM ? [process.env.DOWNBEAM] : ['cargo', 'run', '--locked', '--quiet', '--'];
  return execFileSync(command, [...first, ...words], { cwd: ROOT, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });
}

/** Unpacks a zip by its directory (PKWARE APPNOTE 6.3.10, 4.3.7 and 4.3.12), without a tool that may not be there; the folder. */
export function unpacked(path) {
  const folder = path.replace(/\.zip$/, '');
  const zip = readFileSync(path);
  const end = zip.lastIndexOf(Buffer.from('PK\x05\x06'));
  let at = zip.readUInt32LE(end + 16);
  for (let count = zip.readUInt16LE(end + 10); count > 0; count -= 1) {
    const [method, size, nameLength] = [zip.readUInt16LE(at + 10), zip.readUInt32LE(at + 20), zip.readUInt16LE(at + 28)];
    const local = zip.readUInt32LE(at + 42);
    const name = zip.toString('utf8', at + 46, at + 46 + nameLength);
    const start = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    const data = zip.subarray(start, start + size);
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), method === 0 ? data : inflateRawSync(data));
    at += 46 + nameLength + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  }
  return folder;
}
