import { execFile } from 'node:child_process';
import { stat, type FileHandle } from 'node:fs/promises';
import { promisify } from 'node:util';

const run = promisify(execFile);

/**
 * Gives a file the owner, group, permissions and extended attributes of another. An owner or group that
 * the system won't let us give is left: whoever asked looks at what came of it.
 */
export async function takeAttributes(
  handle: FileHandle,
  path: string,
  like: string,
): Promise<void> {
  const { uid, gid, mode } = await stat(like);
  await handle.chown(uid, gid).catch(() => undefined);
  await handle.chmod(mode & 0o777);
  // Node.js knows no extended attributes (tags, access lists); the system's own copying does.
  if (process.platform !== 'linux') return;
  try {
    const given = ['--attributes-only', '--preserve=mode,xattr', '--', like, path];
    await run('cp', given, { env: { ...process.env, LC_ALL: 'C' } });
  } catch (error) {
    // A smaller `cp` that knows of none keeps none; one that failed at them says so.
    if (String(error).includes('preserving')) throw error;
  }
}
