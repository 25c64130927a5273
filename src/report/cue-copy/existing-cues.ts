import { wavError } from '../../analysis/wav-error.js';
import type { OpenWav } from '../../analysis/wav-file.js';
import type { WavPiece } from '../../analysis/wav-layout.js';
import { readBytes } from '../../analysis/wav-source.js';
import { chunkBytes, type InnerChunk, innerChunks } from './chunk-bytes.js';

/** The marks that a file has already. */
export interface ExistingCues {
  /** The chunks that they lie in. */
  readonly pieces: readonly WavPiece[];
  /** Cue points, CUE_BYTES each. */
  readonly points: readonly Uint8Array[];
  /** Labels of points, whole chunks. */
  readonly labels: readonly Uint8Array[];
  /** What else the lists of associated data hold, whole chunks. */
  readonly texts: readonly Uint8Array[];
  /** The names, which are numbers, that points and texts have. */
  readonly names: ReadonlySet<number>;
}

/** Of one cue point: name, position, chunk, chunk start, block start, sample offset. */
export const CUE_BYTES = 24;
/** Marks are texts; what is longer is something else, or a lie. */
const MOST_BYTES = 2 ** 24;

/**
 * Reads all `cue ` chunks and all lists of associated data, `LIST` of type `adtl`. A number of
 * points that is more than the chunk holds is not believed.
 * Source: Multimedia Programming Interface and Data Specifications 1.0, Microsoft and IBM, 1991
 * (from memory).
 */
export async function existingCues(
  wav: OpenWav,
  pieces: readonly WavPiece[],
): Promise<ExistingCues> {
  const found: WavPiece[] = [];
  const points: Uint8Array[] = [];
  const texts: InnerChunk[] = [];
  for (const piece of pieces) {
    if (piece.id === 'cue ') points.push(...pointsIn(await contentOf(wav, piece)));
    else if (await isTextList(wav, piece)) {
      texts.push(...innerChunks((await contentOf(wav, piece)).subarray(4)));
    } else continue;
    found.push(piece);
  }
  const named = [...points, ...texts.map(({ content }) => content)];
  return {
    pieces: found,
    points,
    labels: texts.filter(({ id }) => id === 'labl').map(asBytes),
    texts: texts.filter(({ id }) => id !== 'labl').map(asBytes),
    names: new Set(named.filter(({ length }) => length >= 4).map(nameOf)),
  };
}

function asBytes({ id, content }: InnerChunk): Uint8Array {
  return chunkBytes(id, content);
}

function pointsIn(content: Uint8Array): Uint8Array[] {
  const said = content.length < 4 ? 0 : nameOf(content);
  const count = Math.min(said, Math.floor((content.length - 4) / CUE_BYTES));
  return Array.from({ length: count }, (_, point) => {
    const at = 4 + point * CUE_BYTES;
    return content.subarray(at, at + CUE_BYTES);
  });
}

async function isTextList({ source }: OpenWav, { id, body, size }: WavPiece): Promise<boolean> {
  if (id !== 'LIST' || size < 4) return false;
  return Buffer.from(await readBytes(source, body, 4)).toString('latin1') === 'adtl';
}

async function contentOf({ source }: OpenWav, { id, body, size }: WavPiece): Promise<Uint8Array> {
  if (size <= MOST_BYTES) return await readBytes(source, body, size);
  throw wavError(source.path, {
    code: 'bad-header',
    at: body,
    found: `a "${id}" chunk of ${size} bytes`,
    expected: `marks of at most ${MOST_BYTES}`,
    remedy: 'take the marks out, or export the file again',
  });
}

/** The number that a cue point and its texts begin with; also a cue chunk's number of points. */
function nameOf(bytes: Uint8Array): number {
  return new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true);
}
