import type { FileHandle } from 'node:fs/promises';
import type { OpenWav } from '../../analysis/wav-file.js';
import { readLayout } from '../../analysis/wav-layout.js';
import { writeAtomic } from '../write-atomic.js';
import { copyBytes, writeBytes } from './copy-bytes.js';
import { cueChunks } from './cue-chunks.js';
import type { CueMark } from './cue-mark.js';
import { existingCues } from './existing-cues.js';
import { chunkHead, formHead } from './form-head.js';
import { refuseOriginal } from './refuse-original.js';

/**
 * Copies a WAV file with marks in it, block by block: all its chunks byte for byte and in their
 * order, but for cue points and their texts, which are put together with ours behind the others;
 * then whatever followed the last chunk. Sizes that were left open or promise more than there is
 * become those of what is there; RIFF stays RIFF unless the copy is too long for it, which makes it
 * RF64.
 * @param marks within the file, in any order
 * @throws UsageError if `target` is the original; OutputError if it cannot be written
 */
export async function writeCueCopy(
  wav: OpenWav,
  target: string,
  marks: readonly CueMark[],
): Promise<void> {
  await refuseOriginal(wav, target);
  const layout = await readLayout(wav);
  const existing = await existingCues(wav, layout.pieces);
  const kept = layout.pieces.filter((piece) => !existing.pieces.includes(piece));
  const added = cueChunks(existing, marks, wav.file);
  const head = formHead(wav.file, { ...layout, pieces: kept }, added.length);
  await writeAtomic(target, async (handle: FileHandle) => {
    await writeBytes(handle, head.bytes);
    for (const piece of kept) {
      await writeBytes(handle, chunkHead(piece, piece === layout.data && head.isLong));
      await copyBytes(wav.source, piece.body, piece.size, handle);
      await writeBytes(handle, new Uint8Array(piece.size % 2));
    }
    await writeBytes(handle, added);
    await copyBytes(wav.source, layout.end, wav.source.size - layout.end, handle);
  });
}
