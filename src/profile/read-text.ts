import { constants } from 'node:fs';
import { open, stat } from 'node:fs/promises';

/**
 * The text of a regular file, as UTF-8; what grows meanwhile is read as long as it was. A pipe is
 * never waited for: who waits in an open cannot be interrupted.
 * @param most bytes
 * @throws an Error whose message is the reason, or the system's
 */
export async function readText(path: string, most: number): Promise<string> {
  // Opening a device can act on it, so look first.
  refuseUnfit(await stat(path), most);
  const handle = await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    const facts = await handle.stat();
    refuseUnfit(facts, most);
    const bytes = Buffer.alloc(facts.size);
    let filled = 0;
    for (let count = 1; count > 0 && filled < bytes.length; filled += count) {
      count = (await handle.read(bytes, filled, bytes.length - filled, filled)).bytesRead;
    }
    return bytes.toString('utf8', 0, filled);
  } finally {
    await handle.close();
  }
}

interface Facts {
  readonly size: number;
  isFile(): boolean;
  isDirectory(): boolean;
}

function refuseUnfit(facts: Facts, most: number): void {
  if (facts.isDirectory()) throw new Error('it is a folder');
  if (!facts.isFile()) throw new Error('it is a pipe or a device');
  if (facts.size > most) throw new Error(`it is larger than ${most} bytes`);
}
