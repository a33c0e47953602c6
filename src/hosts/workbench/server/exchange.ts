import { spawn } from 'node:child_process';
import { getSystemErrorName } from 'node:util';

/** Linux's renameat2 by processor: Node.js has no function for it, so Perl, which most systems bring, calls it. */
const RENAMEAT2: Readonly<Partial<Record<NodeJS.Architecture, number>>> = { x64: 316, arm64: 276 };

/** Paths count from the working folder (-100), and the two names are exchanged (2); ends with the error's number. */
const SCRIPT = 'exit(syscall($ARGV[0] + 0, -100, $ARGV[1], -100, $ARGV[2], 2) == 0 ? 0 : $! + 0)';

/** What an old system, or a disk that can't exchange, answers. */
const UNABLE = ['EINVAL', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP'];

/**
 * Lets two names of one folder change places in one step, so that neither is ever missing and what stood
 * there is not lost. False where this system can't; throws, with the system's code, where it failed.
 */
export async function exchangeNames(one: string, other: string): Promise<boolean> {
  const call = process.platform === 'linux' ? RENAMEAT2[process.arch] : undefined;
  if (call === undefined) return false;
  const ended = await ending('perl', ['-e', SCRIPT, String(call), one, other]);
  if (ended === 0) return true;
  if (ended === 'not there') return false;
  const code = getSystemErrorName(-ended);
  if (UNABLE.includes(code)) return false;
  throw Object.assign(new Error(`the two names could not change places (${code})`), { code });
}

/** How a program ended; it runs apart from the terminal, so that Ctrl+C does not stop it half-way. */
function ending(program: string, given: readonly string[]): Promise<number | 'not there'> {
  return new Promise((resolve, reject) => {
    const run = spawn(program, given, { stdio: 'ignore', detached: true });
    run.once('error', () => {
      resolve('not there');
    });
    run.once('exit', (code, signal) => {
      if (code !== null) resolve(code);
      else reject(new Error(`${program} was stopped (${String(signal)})`));
    });
  });
}
