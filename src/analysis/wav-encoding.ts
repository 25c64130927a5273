import type { SampleFormat } from './sample-format.js';
import { type WavFault, wavError } from './wav-error.js';

/** How a format chunk says the words are coded. */
export interface WavEncoding {
  readonly encoding: SampleFormat['encoding'];
  /** Bits of a word. */
  readonly bits: SampleFormat['bitDepth'];
  readonly validBits: number;
}

const TAG_PCM = 0x0001;
const TAG_FLOAT = 0x0003;
const TAG_EXTENSIBLE = 0xfffe;
/** Bytes 2 … 15 of the sub-formats that stand for a tag: xxxxxxxx-0000-0010-8000-00AA00389B71. */
const TAGGED_GUID_END = '000000001000800000aa00389b71';

/** Tags met in the wild that are refused by name. Source: the RIFF/WAVE registry (from memory). */
const NAME_OF_TAG: ReadonlyMap<number, string> = new Map([
  [0x0002, 'ADPCM'],
  [0x0006, 'A-law'],
  [0x0007, 'µ-law'],
  [0x0011, 'IMA ADPCM'],
  [0x0050, 'MPEG audio'],
  [0x0055, 'MPEG layer 3'],
]);

/**
 * Encoding and word length of a format chunk: PCM of 1 to 32 bits in whole bytes, float of 32 or
 * 64 bits. Fewer valid bits than the word has lie in its upper end, so the word is read whole.
 * @param view the chunk's content, at least 16 bytes
 * @param at byte of the content in the file
 */
export function encodingOf(path: string, view: DataView, at: number): WavEncoding {
  const written = view.getUint16(14, true);
  const extensible = view.getUint16(0, true) === TAG_EXTENSIBLE;
  const tag = extensible ? subFormatTag(path, view, at) : view.getUint16(0, true);
  if (tag !== TAG_PCM && tag !== TAG_FLOAT) {
    throw wavError(path, { ...badTag(tag), at: at + (extensible ? 24 : 0) });
  }
  const bits = wordBits(tag, written);
  // The extensible form says the word's bits here, the older one the sound's.
  if (bits === null || (extensible && bits !== written)) {
    throw wavError(path, { ...badBits(tag, written), at: at + 14 });
  }
  const said = extensible ? view.getUint16(18, true) : written;
  // Some writers leave the valid bits at 0, meaning all.
  const validBits = said === 0 ? bits : said;
  if (validBits > bits) throw wavError(path, { ...badValidBits(validBits, bits), at: at + 18 });
  return { encoding: tag === TAG_PCM ? 'pcm' : 'float', bits, validBits };
}

/** The tag a WAVE_FORMAT_EXTENSIBLE chunk stands for. */
function subFormatTag(path: string, view: DataView, at: number): number {
  if (view.byteLength < 40 || view.getUint16(16, true) < 22) {
    throw wavError(path, {
      code: 'bad-header',
      at: at + 16,
      found: `an extensible format chunk of ${view.byteLength} bytes`,
      expected: 'at least 40, its extension at least 22',
      remedy: 'export the file again',
    });
  }
  const bytes = Array.from({ length: 14 }, (_, index) => view.getUint8(26 + index));
  const end = bytes.map((byte) => byte.toString(16).padStart(2, '0')).join('');
  if (end !== TAGGED_GUID_END) {
    throw wavError(path, {
      ...badTag(view.getUint16(24, true)),
      at: at + 24,
      found: `sub-format …${end}`,
    });
  }
  return view.getUint16(24, true);
}

/** Bits of the word that holds this many; null if there is no such word. */
function wordBits(tag: number, bits: number): WavEncoding['bits'] | null {
  if (tag === TAG_FLOAT) return bits === 32 || bits === 64 ? bits : null;
  const bytes = Math.ceil(bits / 8);
  if (bytes === 1) return 8;
  if (bytes === 2) return 16;
  if (bytes === 3) return 24;
  return bytes === 4 ? 32 : null;
}

function badTag(tag: number): Omit<WavFault, 'at'> {
  const name = NAME_OF_TAG.get(tag);
  const code = `0x${tag.toString(16).padStart(4, '0')}`;
  return {
    code: 'bad-encoding',
    found: name === undefined ? `format tag ${code}` : `${name} (format tag ${code})`,
    expected: 'PCM (0x0001) or IEEE float (0x0003)',
    remedy: 'export the file as 24-bit PCM',
  };
}

function badBits(tag: number, bits: number): Omit<WavFault, 'at'> {
  return {
    code: 'bad-encoding',
    found: `${bits} bits a sample`,
    expected: tag === TAG_PCM ? 'PCM of 8, 16, 24 or 32 bits' : 'float of 32 or 64 bits',
    remedy: 'export the file as 24-bit PCM',
  };
}

function badValidBits(validBits: number, bits: number): Omit<WavFault, 'at'> {
  return {
    code: 'bad-header',
    found: `${validBits} valid bits`,
    expected: `at most ${bits}, which a word has`,
    remedy: 'export the file again',
  };
}
