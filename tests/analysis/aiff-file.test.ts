import { truncate } from 'node:fs/promises';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readExtended } from '../../src/analysis/aiff-extended.js';
import { withSound } from '../../src/analysis/open-sound.js';
import { type AiffOptions, aiffBytes, aiffChunk, bigEndian } from '../support/aiff-writer.js';
import { readSound, refusalOf, soundPath } from '../support/read-sound.js';
import { ascii, wordBytes } from '../support/wav-writer.js';

const FRAMES = 500;
const WORDS = Array.from({ length: 2 * FRAMES }, (_, word) => ((word * 7919) % 200) - 100);
const FLOATS = WORDS.map((word) => word / 256);

/** Little-endian words with the bytes of each turned round. */
function turned(words: ArrayLike<number>, encoding: 'pcm' | 'float', bits: number): Uint8Array {
  const step = Math.ceil(bits / 8);
  const bytes = wordBytes(words, encoding, bits);
  return bytes.map((_, at) => bytes[at - (at % step) + step - 1 - (at % step)] ?? 0);
}

/** 8 bits are signed, where WAV has 128 added. */
const SIGNED = Uint8Array.from(WORDS, (word) => word & 0xff);

describe('words come out as a WAV file has them', () => {
  // Source of the compression types: AIFF-C, draft of 1991, and QuickTime's sound types (from memory).
  test.each([
    ['no compression type', undefined, 8, SIGNED, 'pcm', 8],
    ['no compression type', undefined, 16, turned(WORDS, 'pcm', 16), 'pcm', 16],
    ['no compression type', undefined, 24, turned(WORDS, 'pcm', 24), 'pcm', 24],
    ['no compression type', undefined, 32, turned(WORDS, 'pcm', 32), 'pcm', 32],
    ['NONE', 'NONE', 24, turned(WORDS, 'pcm', 24), 'pcm', 24],
    ['twos', 'twos', 16, turned(WORDS, 'pcm', 16), 'pcm', 16],
    ['sowt', 'sowt', 16, wordBytes(WORDS, 'pcm', 16), 'pcm', 16],
    ['sowt', 'sowt', 24, wordBytes(WORDS, 'pcm', 24), 'pcm', 24],
    ['sowt', 'sowt', 8, SIGNED, 'pcm', 8],
    ['raw', 'raw ', 8, wordBytes(WORDS, 'pcm', 8), 'pcm', 8],
    ['in24', 'in24', 24, turned(WORDS, 'pcm', 24), 'pcm', 24],
    ['in32', 'in32', 32, turned(WORDS, 'pcm', 32), 'pcm', 32],
    ['fl32', 'fl32', 32, turned(FLOATS, 'float', 32), 'float', 32],
    ['FL32', 'FL32', 32, turned(FLOATS, 'float', 32), 'float', 32],
    ['fl64', 'fl64', 64, turned(FLOATS, 'float', 64), 'float', 64],
    ['FL64', 'FL64', 64, turned(FLOATS, 'float', 64), 'float', 64],
  ] as const)('%s, %s, %i bits', async (_, compression, sampleSize, sound, encoding, bits) => {
    const kind = compression === undefined ? {} : { compression };
    const path = await soundPath(aiffBytes({ ...kind, sampleSize, sound, frames: FRAMES }));
    const { file, bytes } = await readSound(path);
    expect(file).toMatchObject({
      container: compression === undefined ? 'AIFF' : 'AIFF-C',
      format: { encoding, bitDepth: bits, channels: 2, sampleRate: 44_100 },
      frames: FRAMES,
      truncated: false,
    });
    expect(bytes).toEqual(wordBytes(encoding === 'float' ? FLOATS : WORDS, encoding, bits));
  });

  test.each([
    [5, 8],
    [12, 16],
    [20, 24],
    [25, 32],
  ])('%i bits lie at the upper end of words of %i', async (sampleSize, bits) => {
    const upper = WORDS.slice(0, 40).map((word) => (word % 16) * 2 ** (bits - sampleSize));
    const big =
      bits === 8 ? Uint8Array.from(upper, (word) => word & 0xff) : turned(upper, 'pcm', bits);
    const { file, bytes } = await readSound(await soundPath(aiffBytes({ sampleSize, sound: big })));
    expect(file).toMatchObject({ format: { bitDepth: bits }, validBits: sampleSize, frames: 20 });
    expect(bytes).toEqual(wordBytes(upper, 'pcm', bits));
  });
});

const SOUND = turned(WORDS, 'pcm', 24);
const PLAIN: AiffOptions = { sampleSize: 24, sound: SOUND, sampleRate: 96_000 };
const RAW = wordBytes(WORDS, 'pcm', 24);

describe('chunks', () => {
  test.each<[string, Partial<AiffOptions>]>([
    ['an odd one before the others', { first: [aiffChunk('NAME', ascii('odd'))] }],
    ['the common chunk last', { commonLast: true, last: [aiffChunk('ANNO', ascii('no'))] }],
    ['the sound a few bytes into its chunk', { offset: 6 }],
    [
      'an AIFF-C with its version',
      { compression: 'NONE', first: [aiffChunk('FVER', bigEndian(0xa2805140, 4))] },
    ],
    ['one channel', { channels: 1, frames: 2 * FRAMES }],
  ])('%s: not a byte of the sound is missed', async (_, options) => {
    const path = await soundPath(aiffBytes({ ...PLAIN, ...options }));
    const { file, bytes } = await readSound(path);
    expect(file.truncated).toBe(false);
    expect(file.format.sampleRate).toBe(96_000);
    expect(bytes).toEqual(RAW);
  });

  test.each<[string, Partial<AiffOptions>, number, boolean]>([
    ['fewer frames than bytes: the frames that are said', { frames: 100 }, 100, false],
    ['more frames than bytes: those that are there', { frames: 501 }, 500, true],
    ['no number of frames: those that are there', { frames: 0 }, 500, true],
    ['2^32 − 1 frames', { frames: 0xffffffff }, 500, true],
    ['a size of 0', { soundSize: 0 }, 500, false],
    ['a size of 0 and no frames, as a pipe leaves it', { soundSize: 0, frames: 0 }, 500, true],
    ['a size of 2^32 − 1', { soundSize: 0xffffffff, frames: 0 }, 500, true],
    ['a size beyond the file', { soundSize: 0xfffffff0 }, 500, false],
    ['a size that is too small', { soundSize: 8 + 6 * 10 }, 10, true],
  ])('%s', async (_, options, frames, truncated) => {
    const path = await soundPath(aiffBytes({ ...PLAIN, frames: FRAMES, ...options }));
    const { file, bytes } = await readSound(path);
    expect(file).toMatchObject({ frames, truncated });
    expect(bytes).toEqual(RAW.subarray(0, 6 * frames));
  });
});

test('any range in blocks of any size gives the same frames', async () => {
  const path = await soundPath(aiffBytes(PLAIN));
  const ends = fc.tuple(fc.nat(FRAMES), fc.nat(FRAMES));
  await withSound(path, async ({ source }) => {
    await fc.assert(
      fc.asyncProperty(ends, fc.integer({ min: 1, max: 4000 }), async (pair, blockBytes) => {
        const [firstFrame, endFrame] = [Math.min(...pair), Math.max(...pair)];
        const found: number[] = [];
        for await (const block of source.read({ firstFrame, endFrame, blockBytes })) {
          expect(block.length % 6).toBe(0);
          found.push(...block);
        }
        expect(found).toEqual([...RAW.subarray(6 * firstFrame, 6 * endFrame)]);
      }),
      { numRuns: 40 },
    );
  });
});

test('a file that shrinks while it is read is an InputError that names the byte', async () => {
  const path = await soundPath(aiffBytes(PLAIN));
  const reading = withSound(path, async ({ source }) => {
    for await (const _ of source.read({ blockBytes: 300 })) await truncate(path, 1000);
  });
  await expect(reading).rejects.toMatchObject({
    code: 'changed-while-read',
    message: expect.stringContaining('byte 1000'),
  });
});

test('a sample that is no number is told by its frame and byte', async () => {
  const sound = turned([0, 0, 0, Number.NaN], 'float', 32);
  const path = await soundPath(aiffBytes({ compression: 'fl32', sampleSize: 32, sound }));
  await withSound(path, async ({ source }) => {
    expect(source.refuse(1)).toMatchObject({
      code: 'bad-sample',
      message: expect.stringContaining(`byte ${12 + 32 + 16 + 8} (frame 1)`),
    });
  });
});

// Source: 44 100 Hz as AIFF 1.3 has it in its example, 40 0E AC 44 …; 1 and 22 254.5454… Hz are
// the format by hand (IEEE 754 double extended), from memory.
test.each([
  ['400eac44000000000000', 44_100],
  ['400ebb80000000000000', 48_000],
  ['400fbb80000000000000', 96_000],
  ['3fff8000000000000000', 1],
  ['c0008000000000000000', -2],
  ['400daddd1745d1745d17', 244_800 / 11],
  ['00000000000000000000', 0],
  ['7fff8000000000000000', Number.POSITIVE_INFINITY],
  ['7fffc000000000000000', Number.NaN],
])('the 80-bit number %s is %f', (hexadecimal, expected) => {
  const bytes = Uint8Array.from(Buffer.from(hexadecimal, 'hex'));
  expect(readExtended(new DataView(bytes.buffer), 0)).toBe(expected);
});

describe('what is refused says where and why', () => {
  const common = (options: Partial<AiffOptions>) => aiffBytes({ ...PLAIN, ...options });
  const withRate = (rate: string) => {
    const bytes = common({});
    bytes.set(Buffer.from(rate, 'hex'), 28);
    return bytes;
  };

  test.each<[string, Uint8Array, string]>([
    ['an empty file', new Uint8Array(0), 'not-wav'],
    ['another form', joinedForm('8SVX'), 'not-aiff'],
    ['a head alone', ascii('FORM'), 'not-aiff'],
    ['nothing but a head', joinedForm('AIFF'), 'no-format'],
    ['no common chunk', common({}).subarray(0, 12), 'no-format'],
    ['no sound chunk', common({}).subarray(0, 38), 'no-data'],
    ['an empty sound chunk', common({ sound: new Uint8Array(0), frames: 0 }), 'no-data'],
    ['an offset beyond the sound', common({ offset: 5000, soundSize: 400 }), 'no-data'],
    ['an AIFF-C without its compression type', plainAsAifc(), 'bad-header'],
    ['A-law', common({ compression: 'alaw' }), 'bad-encoding'],
    ['a compression of control characters', common({ compression: '\x1b[2J' }), 'bad-encoding'],
    ['raw of 16 bits', common({ compression: 'raw ', sampleSize: 16 }), 'bad-encoding'],
    ['0 bits', common({ sampleSize: 0, frames: 1 }), 'bad-encoding'],
    ['33 bits', common({ sampleSize: 33 }), 'bad-encoding'],
    ['65535 bits', common({ sampleSize: 65_535 }), 'bad-encoding'],
    ['no channel', common({ channels: 0, frames: 1 }), 'bad-channels'],
    ['6 channels', common({ channels: 6 }), 'bad-channels'],
    ['65535 channels', common({ channels: 65_535 }), 'bad-channels'],
    ['7999 Hz', common({ sampleRate: 7999 }), 'bad-rate'],
    ['192001 Hz', common({ sampleRate: 192_001 }), 'bad-rate'],
    ['a rate of no number', withRate('7fffc000000000000000'), 'bad-rate'],
    ['an infinite rate', withRate('7fff8000000000000000'), 'bad-rate'],
    ['a negative rate', withRate('c00eac44000000000000'), 'bad-rate'],
    ['a rate with a fraction', withRate('400daddd1745d1745d17'), 'bad-rate'],
    ['nothing but chunk heads', headsAlone(), 'bad-header'],
  ])('%s', async (_, bytes, code) => {
    const error = await refusalOf(await soundPath(bytes));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(/: byte \d+: found .*, expected .*; .+/);
    expect(error.message).not.toContain('\x1b');
  });

  function joinedForm(form: string): Uint8Array {
    return Uint8Array.from([...ascii('FORM'), 0, 0, 0, 4, ...ascii(form)]);
  }

  function plainAsAifc(): Uint8Array {
    const bytes = common({});
    bytes.set(ascii('AIFC'), 8);
    return bytes;
  }

  function headsAlone(): Uint8Array {
    const chunks = Array.from({ length: 5000 }, () => [...aiffChunk('JUNK', new Uint8Array(0))]);
    return Uint8Array.from([...joinedForm('AIFF'), ...chunks.flat()]);
  }
});
