import type { SampleFormat } from './sample-format.js';
import { shownId, type WavFault } from './wav-error.js';

/** How the words of a sound chunk are coded. */
export interface AiffEncoding {
  readonly encoding: SampleFormat['encoding'];
  /** Bits of a word. */
  readonly bits: SampleFormat['bitDepth'];
  readonly validBits: number;
  readonly order: 'big' | 'little';
  /** Words of 8 bits are signed but for one kind. */
  readonly isSigned: boolean;
}

/** What a compression type that compresses nothing says of the words. */
interface Kind {
  readonly encoding: SampleFormat['encoding'];
  readonly order: AiffEncoding['order'];
  /** Where the type itself says it; else the sample size does. */
  readonly bits?: 24 | 32 | 64;
  readonly isSigned?: false;
}

const BIG: Kind = { encoding: 'pcm', order: 'big' };
const FLOAT_32: Kind = { encoding: 'float', order: 'big', bits: 32 };
const FLOAT_64: Kind = { encoding: 'float', order: 'big', bits: 64 };

/** Source: AIFF-C, draft of 1991, and the QuickTime file format's sound types (from memory). */
const KIND_OF_COMPRESSION: ReadonlyMap<string, Kind> = new Map([
  ['NONE', BIG],
  ['twos', BIG],
  ['sowt', { encoding: 'pcm', order: 'little' }],
  ['raw ', { encoding: 'pcm', order: 'big', isSigned: false }],
  ['in24', { ...BIG, bits: 24 }],
  ['in32', { ...BIG, bits: 32 }],
  ['fl32', FLOAT_32],
  ['FL32', FLOAT_32],
  ['fl64', FLOAT_64],
  ['FL64', FLOAT_64],
]);

/** Met in the wild and refused by name. Source: as above. */
const NAME_OF_COMPRESSION: ReadonlyMap<string, string> = new Map([
  ['ulaw', 'µ-law'],
  ['ULAW', 'µ-law'],
  ['alaw', 'A-law'],
  ['ALAW', 'A-law'],
  ['ima4', 'IMA ADPCM'],
  ['MAC3', 'a compression by 3'],
  ['MAC6', 'a compression by 6'],
]);

/**
 * Words of a compression type and sample size; fewer bits than a word of whole bytes has lie in its
 * upper end, so that the word is read whole.
 * @param sampleSize bits, as the common chunk says
 * @returns what is wrong where they cannot be read
 */
export function aiffEncoding(
  compression: string,
  sampleSize: number,
): AiffEncoding | Omit<WavFault, 'at'> {
  const kind = KIND_OF_COMPRESSION.get(compression);
  if (kind === undefined) return badCompression(compression);
  const { encoding, order, isSigned = true } = kind;
  if (kind.bits !== undefined) {
    return { encoding, order, isSigned, bits: kind.bits, validBits: kind.bits };
  }
  const bits = wordBits(sampleSize);
  if (bits === null || (!isSigned && bits !== 8)) return badBits(sampleSize, isSigned);
  return { encoding, order, isSigned, bits, validBits: sampleSize };
}

function wordBits(sampleSize: number): 8 | 16 | 24 | 32 | null {
  if (sampleSize < 1 || sampleSize > 32) return null;
  if (sampleSize <= 8) return 8;
  if (sampleSize <= 16) return 16;
  return sampleSize <= 24 ? 24 : 32;
}

function badCompression(compression: string): Omit<WavFault, 'at'> {
  const name = NAME_OF_COMPRESSION.get(compression);
  const id = shownId(compression);
  return {
    code: 'bad-encoding',
    found: name === undefined ? `compression ${id}` : `${name} (compression ${id})`,
    expected: 'PCM ("NONE", "twos", "sowt", "raw ", "in24", "in32") or float ("fl32", "fl64")',
    remedy: 'export the file as 24-bit PCM',
  };
}

function badBits(sampleSize: number, isSigned: boolean): Omit<WavFault, 'at'> {
  return {
    code: 'bad-encoding',
    found: `${sampleSize} bits a sample`,
    expected: isSigned ? '1 to 32' : '8 of this kind',
    remedy: 'export the file as 24-bit PCM',
  };
}
