import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { FrameRange } from '../../src/analysis/frame-source.js';
import { withSound } from '../../src/analysis/open-sound.js';
import type { SoundFile } from '../../src/analysis/sound-file.js';
import { InputError } from '../../src/errors.js';
import { temporaryFolder } from './temporary-folder.js';
import { joined } from './wav-writer.js';

/** A file of these bytes in a folder of its own. */
export async function soundPath(bytes: Uint8Array, name = 'side'): Promise<string> {
  const path = join(await temporaryFolder(), name);
  await writeFile(path, bytes);
  return path;
}

/** What its head says, and the frames of a range as they are handed on. */
export async function readSound(
  path: string,
  range?: FrameRange,
): Promise<{ file: SoundFile; bytes: Uint8Array }> {
  return await withSound(path, async ({ file, source }) => {
    const blocks: Uint8Array[] = [];
    for await (const block of source.read(range)) blocks.push(Uint8Array.from(block));
    return { file, bytes: joined(blocks) };
  });
}

/** Why a file is refused. */
export async function refusalOf(path: string): Promise<InputError> {
  const error = await readSound(path).catch((cause: unknown) => cause);
  if (error instanceof InputError) return error;
  throw new Error('not refused', { cause: error });
}
