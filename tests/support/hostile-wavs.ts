import type { InputErrorCode } from '../../src/errors.js';
import { ascii, chunk, formatChunk, joined, longSizesChunk, riff, wavBytes } from './wav-writer.js';

/** A file that lies, breaks off or is none, and what furrow is to say of it. */
export interface HostileWav {
  /** What is wrong with it; also fit as a file name. */
  readonly name: string;
  readonly bytes: Uint8Array;
  /** The code of its InputError, or the frames that are there although it breaks off. */
  readonly expected: InputErrorCode | { readonly truncatedTo: number };
}

const OPEN = 0xffffffff;
const NOTHING = new Uint8Array(0);
/** Ten frames of 16-bit stereo, no two bytes alike. */
const SOUND = Uint8Array.from({ length: 40 }, (_, index) => 0x81 + index);
const FMT = formatChunk();
const DATA = chunk('data', SOUND);
const LIST = chunk('LIST', ascii('INFOIART\x04\0\0\0none'));

const bytesBehind = (head: Uint8Array, sound: Uint8Array) => joined([head, sound]);
const truncatedTo = (frames: number) => ({ truncatedTo: frames });

/** Every file is small: what it claims to be is not. */
export const HOSTILE_WAVS: readonly HostileWav[] = [
  { name: 'empty', bytes: NOTHING, expected: 'not-wav' },
  { name: 'one byte', bytes: ascii('R'), expected: 'not-wav' },
  { name: 'outer head only', bytes: ascii('RIFF\xff\xff\xff\xff'), expected: 'not-wav' },
  { name: 'text', bytes: ascii('the side starts with a fade in\n'), expected: 'not-wav' },
  { name: 'terminal escapes for an id', bytes: ascii('\x1b[2J then some'), expected: 'not-wav' },
  { name: 'big endian', bytes: riff([FMT, DATA], 'RIFX'), expected: 'not-wav' },
  { name: 'another form', bytes: riff([FMT, DATA], 'RIFF', 'AVI '), expected: 'not-wav' },

  { name: 'no chunk', bytes: riff([]), expected: 'no-format' },
  { name: 'no format', bytes: riff([DATA]), expected: 'no-format' },
  {
    name: 'format behind an open data',
    bytes: riff([chunk('data', SOUND, OPEN), FMT]),
    expected: 'no-format',
  },
  {
    name: 'chunk longer than the file',
    bytes: riff([chunk('bext', SOUND, 0xfffffffe), FMT, DATA]),
    expected: 'no-format',
  },
  {
    name: 'chunk open',
    bytes: riff([chunk('junk', SOUND, OPEN), FMT, DATA]),
    expected: 'no-format',
  },
  { name: 'half a chunk head', bytes: joined([riff([FMT]), ascii('data')]), expected: 'no-data' },
  { name: 'no data', bytes: riff([FMT, LIST]), expected: 'no-data' },
  { name: 'data of nothing', bytes: riff([FMT, chunk('data', NOTHING)]), expected: 'no-data' },
  {
    name: 'data of nothing before a list',
    bytes: riff([FMT, chunk('data', NOTHING), LIST]),
    expected: 'no-data',
  },
  {
    name: 'data of nothing before an odd chunk and a list',
    bytes: riff([FMT, chunk('data', NOTHING), chunk('bext', ascii('odd')), LIST]),
    expected: 'no-data',
  },
  {
    name: 'RF64 of 2^64 - 1 before a list',
    bytes: riff([longSizesChunk(2n ** 64n - 1n), FMT, chunk('data', NOTHING, OPEN), LIST], 'RF64'),
    expected: 'no-data',
  },
  {
    name: 'open data of nothing',
    bytes: riff([FMT, chunk('data', NOTHING, OPEN)]),
    expected: 'no-data',
  },
  {
    name: 'data under a frame',
    bytes: riff([FMT, chunk('data', SOUND.subarray(0, 3))]),
    expected: 'no-data',
  },
  {
    name: 'nothing but heads',
    bytes: riff(Array.from({ length: 5000 }, () => chunk('junk', NOTHING))),
    expected: 'bad-header',
  },

  {
    name: 'format of nothing',
    bytes: riff([chunk('fmt ', NOTHING), DATA]),
    expected: 'bad-header',
  },
  {
    name: 'format of 14 bytes',
    bytes: riff([chunk('fmt ', FMT.subarray(8, 22)), DATA]),
    expected: 'bad-header',
  },
  {
    name: 'block align 0',
    bytes: riff([formatChunk({ blockAlign: 0 }), DATA]),
    expected: 'bad-header',
  },
  {
    name: 'block align 65535',
    bytes: riff([formatChunk({ blockAlign: 65_535 }), DATA]),
    expected: 'bad-header',
  },
  {
    name: 'block align of one channel',
    bytes: riff([formatChunk({ blockAlign: 2 }), DATA]),
    expected: 'bad-header',
  },
  {
    name: '24 bits in words of 32',
    bytes: riff([formatChunk({ bitDepth: 24, blockAlign: 8 }), DATA]),
    expected: 'bad-header',
  },
  {
    name: 'more valid bits than bits',
    bytes: riff([formatChunk({ extensible: true, validBits: 17 }), DATA]),
    expected: 'bad-header',
  },
  {
    name: 'extensible cut short',
    bytes: riff([chunk('fmt ', formatChunk({ extensible: true }).subarray(8, 30)), DATA]),
    expected: 'bad-header',
  },
  {
    name: 'extensible without its extension',
    bytes: riff([withByte(formatChunk({ extensible: true }), 24, 0), DATA]),
    expected: 'bad-header',
  },
  {
    name: 'RF64 without ds64',
    bytes: riff([FMT, chunk('data', SOUND, OPEN)], 'RF64'),
    expected: 'bad-header',
  },
  {
    name: 'RF64 with ds64 behind the data',
    bytes: riff([FMT, chunk('data', SOUND, OPEN), longSizesChunk(40n)], 'RF64'),
    expected: 'bad-header',
  },
  {
    name: 'ds64 cut short',
    bytes: riff([chunk('ds64', SOUND.subarray(0, 20)), FMT, DATA], 'RF64'),
    expected: 'bad-header',
  },

  {
    name: 'mu-law',
    bytes: riff([formatChunk({ tag: 7, bitDepth: 8 }), DATA]),
    expected: 'bad-encoding',
  },
  { name: 'format tag 0', bytes: riff([formatChunk({ tag: 0 }), DATA]), expected: 'bad-encoding' },
  {
    name: 'extensible of MPEG',
    bytes: riff([formatChunk({ tag: 0x55, extensible: true }), DATA]),
    expected: 'bad-encoding',
  },
  {
    name: 'sub-format of no known kind',
    bytes: riff([withByte(formatChunk({ extensible: true }), 47, 0x72), DATA]),
    expected: 'bad-encoding',
  },
  { name: '0 bits', bytes: riff([formatChunk({ bitDepth: 0 }), DATA]), expected: 'bad-encoding' },
  {
    name: '65535 bits',
    bytes: riff([formatChunk({ bitDepth: 65_535 }), DATA]),
    expected: 'bad-encoding',
  },
  {
    name: 'PCM of 64 bits',
    bytes: riff([formatChunk({ bitDepth: 64 }), DATA]),
    expected: 'bad-encoding',
  },
  {
    name: 'float of 16 bits',
    bytes: riff([formatChunk({ encoding: 'float' }), DATA]),
    expected: 'bad-encoding',
  },
  {
    name: 'extensible words of 20 bits',
    bytes: riff([formatChunk({ extensible: true, bitDepth: 20 }), DATA]),
    expected: 'bad-encoding',
  },
  {
    name: 'no channel',
    bytes: riff([formatChunk({ channels: 0 }), DATA]),
    expected: 'bad-channels',
  },
  {
    name: '6 channels',
    bytes: riff([formatChunk({ channels: 6 }), DATA]),
    expected: 'bad-channels',
  },
  {
    name: '65535 channels',
    bytes: riff([formatChunk({ channels: 65_535 }), DATA]),
    expected: 'bad-channels',
  },
  { name: '0 Hz', bytes: riff([formatChunk({ sampleRate: 0 }), DATA]), expected: 'bad-rate' },
  { name: '7999 Hz', bytes: riff([formatChunk({ sampleRate: 7999 }), DATA]), expected: 'bad-rate' },
  {
    name: '192001 Hz',
    bytes: riff([formatChunk({ sampleRate: 192_001 }), DATA]),
    expected: 'bad-rate',
  },
  {
    name: '4294967295 Hz',
    bytes: riff([formatChunk({ sampleRate: 0xffffffff }), DATA]),
    expected: 'bad-rate',
  },

  { name: 'data size 0', bytes: riff([FMT, chunk('data', SOUND, 0)]), expected: truncatedTo(10) },
  {
    name: 'data size 0, then silence',
    bytes: riff([FMT, chunk('data', new Uint8Array(40), 0)]),
    expected: truncatedTo(10),
  },
  {
    name: 'data size open',
    bytes: riff([FMT, chunk('data', SOUND, OPEN)]),
    expected: truncatedTo(10),
  },
  {
    name: 'data size open, frame cut',
    bytes: riff([FMT, chunk('data', SOUND.subarray(0, 38), OPEN)]),
    expected: truncatedTo(9),
  },
  {
    name: 'data size just under open',
    bytes: riff([FMT, chunk('data', SOUND, 0xfffffffe)]),
    expected: truncatedTo(10),
  },
  {
    name: 'data one byte short',
    bytes: riff([FMT, chunk('data', SOUND, 41)]),
    expected: truncatedTo(10),
  },
  {
    name: 'last frame cut',
    bytes: bytesBehind(riff([FMT, chunk('data', NOTHING, 40)]), SOUND.subarray(0, 37)),
    expected: truncatedTo(9),
  },
  {
    name: 'data of no whole number of frames',
    bytes: riff([FMT, chunk('data', SOUND.subarray(0, 38))]),
    expected: truncatedTo(9),
  },
  {
    name: 'format behind data, data cut',
    bytes: riff([chunk('data', SOUND.subarray(0, 38)), FMT]),
    expected: truncatedTo(9),
  },
  {
    name: 'RIFF with a ds64',
    bytes: riff([longSizesChunk(8n), FMT, chunk('data', SOUND, OPEN)]),
    expected: truncatedTo(10),
  },
  {
    name: 'RF64 left open',
    bytes: riff([longSizesChunk(0n), FMT, chunk('data', SOUND, OPEN)], 'RF64'),
    expected: truncatedTo(10),
  },
  {
    name: 'RF64 of 2^64 - 1',
    bytes: riff([longSizesChunk(2n ** 64n - 1n), FMT, chunk('data', SOUND, OPEN)], 'RF64'),
    expected: truncatedTo(10),
  },
  {
    name: 'RF64 of 2^64 - 2',
    bytes: riff([longSizesChunk(2n ** 64n - 2n), FMT, chunk('data', SOUND, OPEN)], 'RF64'),
    expected: truncatedTo(10),
  },
  {
    name: 'RF64 of 2^53 + 1',
    bytes: riff([longSizesChunk(2n ** 53n + 1n), FMT, chunk('data', SOUND, OPEN)], 'RF64'),
    expected: truncatedTo(10),
  },
  {
    name: 'BW64 one frame short',
    bytes: riff([longSizesChunk(44n), FMT, chunk('data', SOUND, OPEN)], 'BW64'),
    expected: truncatedTo(10),
  },
  {
    name: 'ds64 with a table that lies',
    bytes: riff([withByte(longSizesChunk(44n), 35, 0xff), FMT, chunk('data', SOUND, OPEN)], 'RF64'),
    expected: truncatedTo(10),
  },

  {
    name: 'not a number',
    bytes: wavBytes({ encoding: 'float', bitDepth: 32, words: [0, 0.5, 0, Number.NaN] }),
    expected: 'bad-sample',
  },
  {
    name: 'infinite',
    bytes: wavBytes({
      encoding: 'float',
      bitDepth: 64,
      words: [0, 0.5, Number.NEGATIVE_INFINITY, 0],
    }),
    expected: 'bad-sample',
  },
  {
    name: 'float beyond reason',
    bytes: wavBytes({ encoding: 'float', bitDepth: 64, words: [0, 0.5, 0, 1e300] }),
    expected: 'bad-sample',
  },
];

/** A copy with one byte changed. */
function withByte(bytes: Uint8Array, at: number, value: number): Uint8Array {
  const changed = Uint8Array.from(bytes);
  changed[at] = value;
  return changed;
}
