// A program that cannot outlive the checks: it and all that it starts end with the Node process, however that one ends.

import { spawn } from 'node:child_process';

// A shell leads a process group of its own, and reads from a pipe that only the Node process holds open: when that one closes it, or is
// gone, the group is told to end, and made to.
const KEEPER = 'trap : TERM; "$@" & cat >/dev/null; kill -TERM 0; sleep 0.3; kill -KILL 0';

/** Starts a program; what it says on its standard error is left out unless CHECKS_SAY is set. Returns its standard output as a stream, and `end()`, which resolves once it and what it started are gone. */
export function kept(program, args, env = {}) {
  const shell = spawn('sh', ['-c', KEEPER, 'sh', program, ...args], { detached: true, stdio: ['pipe', 'pipe', process.env.CHECKS_SAY ? 'inherit' : 'ignore'], env: { ...process.env, ...env } });
  const gone = new Promise((done) => shell.once('exit', done));
  // The pipe breaks when the keeper is ended from outside; then there is nothing left to end.
  shell.stdin.on('error', () => {});
  return { stdout: shell.stdout, end: () => (shell.stdin.end(), gone) };
}
