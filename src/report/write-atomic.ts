import { closeSync, openSync, type Stats, unlinkSync } from 'node:fs';
import { type FileHandle, open, rename, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { OutputError } from '../errors.js';
import { linkTarget } from './link-target.js';
import { safeText } from './safe-text.js';
import { isSystemError, reasonText } from './write-failure.js';

const PERMISSIONS = 0o7777;

/** Temporary files that are not yet in their places. */
const inFlight = new Set<string>();
let lastNumber = 0;

/** A text as UTF-8, or bytes, put in place as a whole; see writeAtomic. */
export async function writeFileAtomic(path: string, data: string | Uint8Array): Promise<void> {
  await writeAtomic(path, (handle) => handle.writeFile(data));
}

/**
 * Writes a file so that its name always stands for the old content or for the whole of the new:
 * into a hidden file beside it, which is flushed and then takes the name. What is replaced hands on
 * its permissions and, where that is allowed, its owner. A link is followed and stays a link: who
 * made one wants the result where it points. What is no file, such as a pipe or a device, cannot be
 * replaced and is written to directly.
 * @param write whatever it throws that is no failure of the system goes through unchanged
 * @throws OutputError with path, reason and what was kept
 */
export async function writeAtomic(
  path: string,
  write: (handle: FileHandle) => Promise<void>,
): Promise<void> {
  let old: Stats | null = null;
  try {
    old = await statsOf(path);
    if (old === null || old.isFile()) await replace(await linkTarget(path), old, write);
    else await writeDirectly(path, write);
  } catch (error) {
    if (!isSystemError(error)) throw error;
    const kept = old?.isFile() ? 'the file that was there is untouched' : 'nothing was written';
    const message = `${safeText(path)}: cannot be written, ${reasonText(error)}; ${kept}`;
    throw new OutputError(message, { cause: error });
  }
}

/** Removes, at once, what is not yet in its place; for a process that is about to end. */
export function abandonWrites(): void {
  for (const path of inFlight) discard(path);
}

/** null for a name that stands for nothing yet. */
async function statsOf(path: string): Promise<Stats | null> {
  return stat(path).catch((error: unknown) => {
    if (isSystemError(error) && error.code === 'ENOENT') return null;
    throw error;
  });
}

async function replace(
  target: string,
  old: Stats | null,
  write: (handle: FileHandle) => Promise<void>,
): Promise<void> {
  const temporary = createBeside(target);
  try {
    const handle = await open(temporary, 'r+');
    try {
      await write(handle);
      if (old !== null) await inherit(handle, old);
      // Without this a power failure may leave the new name on an empty file.
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(temporary, target);
    inFlight.delete(temporary);
  } catch (error) {
    discard(temporary);
    throw error;
  }
}

/**
 * A new empty file in the folder of another. Synchronous, so that an interrupt never finds a file
 * that is there and not yet in the list.
 */
function createBeside(target: string): string {
  for (;;) {
    lastNumber += 1;
    const path = join(dirname(target), `.furrow-${process.pid}-${lastNumber}.tmp`);
    try {
      closeSync(openSync(path, 'wx'));
    } catch (error) {
      // Left behind by a process of the same number that was killed, or another thread's.
      if (isSystemError(error) && error.code === 'EEXIST') continue;
      throw error;
    }
    inFlight.add(path);
    return path;
  }
}

async function inherit(handle: FileHandle, { uid, gid, mode }: Stats): Promise<void> {
  const now = await handle.stat();
  // Only a privileged user may give a file away; for everyone else it becomes their own.
  if (now.uid !== uid || now.gid !== gid) await handle.chown(uid, gid).catch(() => {});
  await handle.chmod(mode & PERMISSIONS);
}

function discard(temporary: string): void {
  inFlight.delete(temporary);
  try {
    unlinkSync(temporary);
  } catch {
    // It has taken its name already, or is gone: there is nothing to remove.
  }
}

async function writeDirectly(
  path: string,
  write: (handle: FileHandle) => Promise<void>,
): Promise<void> {
  const handle = await open(path, 'w');
  try {
    await write(handle);
  } finally {
    await handle.close();
  }
}
