import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import decoder from 'wav-decoder';
import { convertSamples, SAMPLE_LIMIT } from '../../src/analysis/convert-samples.js';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import { wavBytes, wordBytes } from '../support/wav-writer.js';

type Encoding = Pick<SampleFormat, 'encoding' | 'bitDepth'>;

const PCM_BITS = [8, 16, 24, 32] as const;

function converted(words: readonly number[], encoding: Encoding, channels: 1 | 2 = 2) {
  const bytes = wordBytes(words, encoding.encoding, encoding.bitDepth);
  const out = new Float64Array((2 * words.length) / channels);
  const unfit = convertSamples(bytes, { ...encoding, channels, sampleRate: 44_100 }, out);
  return { samples: [...out], unfit };
}

describe('integers come out as integer/2^(bits − 1), to the last bit', () => {
  // Source: two's complement fractions; 8 bits are offset binary (RIFF/WAVE, from memory).
  test.each(PCM_BITS)('%i bits: both ends, both neighbours of zero, a half', (bits) => {
    const top = 2 ** (bits - 1);
    const words = [-top, -top + 1, -top / 2, -1, 0, 1, top / 2, top - 1];
    const { samples, unfit } = converted(words, { encoding: 'pcm', bitDepth: bits });
    expect(samples).toEqual([-1, -1 + 1 / top, -0.5, -1 / top, 0, 1 / top, 0.5, 1 - 1 / top]);
    expect(unfit).toBe(-1);
  });

  test.each([8, 16] as const)('%i bits: every word there is', (bits) => {
    const top = 2 ** (bits - 1);
    const words = Array.from({ length: 2 * top }, (_, word) => word - top);
    const { samples } = converted(words, { encoding: 'pcm', bitDepth: bits });
    expect(samples).toEqual(words.map((word) => word / top));
  });

  test('24 bits: every upper byte with every middle one', () => {
    const words = Array.from(
      { length: 2 ** 16 },
      (_, word) => (word - 2 ** 15) * 256 + (word % 251),
    );
    const { samples } = converted(words, { encoding: 'pcm', bitDepth: 24 });
    expect(samples).toEqual(words.map((word) => word / 2 ** 23));
  });

  test.each(PCM_BITS)('%i bits: any words, as the writer wrote them', (bits) => {
    const top = 2 ** (bits - 1);
    const words = fc.array(fc.integer({ min: -top, max: top - 1 }), {
      minLength: 2,
      maxLength: 64,
    });
    fc.assert(
      fc.property(words, (some) => {
        const even = some.slice(0, some.length - (some.length % 2));
        const { samples } = converted(even, { encoding: 'pcm', bitDepth: bits });
        expect(samples).toEqual(even.map((word) => word / top));
      }),
      { seed: bits },
    );
  });
});

describe('floats come out as they are', () => {
  test('64 bits: any finite number within the limit', () => {
    const limits = { min: -SAMPLE_LIMIT, max: SAMPLE_LIMIT, noNaN: true };
    fc.assert(
      fc.property(fc.array(fc.double(limits), { minLength: 1, maxLength: 50 }), (words) => {
        const { samples, unfit } = converted(words, { encoding: 'float', bitDepth: 64 }, 1);
        expect(samples).toEqual(words.flatMap((word) => [word, word]));
        expect(unfit).toBe(-1);
      }),
    );
  });

  test('32 bits: any single-precision number within the limit, tiny ones too', () => {
    const limits = { min: -(2 ** 31), max: 2 ** 31, noNaN: true };
    fc.assert(
      fc.property(fc.array(fc.float(limits), { minLength: 1, maxLength: 50 }), (words) => {
        const { samples, unfit } = converted(words, { encoding: 'float', bitDepth: 32 }, 1);
        expect(samples).toEqual(words.flatMap((word) => [word, word]));
        expect(unfit).toBe(-1);
      }),
    );
  });

  test.each([
    { name: 'not a number', value: Number.NaN },
    { name: 'infinite', value: Number.POSITIVE_INFINITY },
    { name: 'negative infinite', value: Number.NEGATIVE_INFINITY },
    { name: 'over the limit', value: SAMPLE_LIMIT * 1.001 },
    { name: 'under the negative limit', value: -SAMPLE_LIMIT * 1.001 },
  ])('a sample that is $name is pointed at by its frame, in either channel', ({ value }) => {
    for (const bitDepth of [32, 64] as const) {
      for (const word of [0, 1, 6, 7]) {
        const words = Array.from({ length: 8 }, (_, at) => (at === word ? value : 0.25));
        const frame = Math.floor(word / 2);
        expect(converted(words, { encoding: 'float', bitDepth }).unfit).toBe(frame);
        expect(converted(words, { encoding: 'float', bitDepth }, 1).unfit).toBe(word);
      }
    }
  });
});

describe('mono, offsets and room', () => {
  test.each([
    { encoding: 'pcm', bitDepth: 8 },
    { encoding: 'pcm', bitDepth: 24 },
    { encoding: 'float', bitDepth: 32 },
  ] as const)('mono $encoding $bitDepth goes to both sides', (encoding) => {
    const words = [1, -2, 3, -4, 5];
    const left = converted(
      words.flatMap((word) => [word, word]),
      encoding,
    ).samples;
    expect(converted(words, encoding, 1).samples).toEqual(left);
  });

  test('bytes at an odd place of a larger buffer are read in place; more room is left alone', () => {
    const raw = wordBytes([1, -1, 2, -2], 'pcm', 32);
    const around = new Uint8Array(raw.length + 7).fill(0xee);
    around.set(raw, 3);
    const out = new Float64Array(6).fill(9);
    const format: SampleFormat = { encoding: 'pcm', bitDepth: 32, channels: 2, sampleRate: 48_000 };
    convertSamples(around.subarray(3, 3 + raw.length), format, out);
    expect([...out].map((sample) => sample * 2 ** 31)).toEqual([
      1,
      -1,
      2,
      -2,
      9 * 2 ** 31,
      9 * 2 ** 31,
    ]);
  });

  test('a cut frame or too little room is a bug of the caller', () => {
    const format: SampleFormat = { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: 48_000 };
    const convert = (bytes: number, room: number) =>
      convertSamples(new Uint8Array(bytes), format, new Float64Array(room));
    expect(() => convert(11, 8)).toThrow(RangeError);
    expect(() => convert(12, 3)).toThrow(RangeError);
  });
});

/**
 * Outside source: wav-decoder, another reader of WAV files. It gives single precision, divides by
 * 2^(bits − 1) only if asked to be symmetric, shifts 8 bits by half a step then, and turns negative
 * full scale of 24 bits into positive: left out below.
 */
describe('wav-decoder reads the same samples', () => {
  test.each([
    { encoding: 'pcm', bitDepth: 16, scale: 2 ** 15 },
    { encoding: 'pcm', bitDepth: 24, scale: 2 ** 23 },
    { encoding: 'pcm', bitDepth: 32, scale: 2 ** 31 },
    { encoding: 'float', bitDepth: 32, scale: 1 },
  ] as const)('$encoding $bitDepth, to single precision', ({ encoding, bitDepth, scale }) => {
    const words = Array.from({ length: 4000 }, (_, word) => {
      const wave = Math.sin(0.7 * word) * Math.cos(0.013 * word);
      return encoding === 'pcm' ? Math.trunc(wave * (scale - 1)) : wave;
    });
    const file = Uint8Array.from(wavBytes({ encoding, bitDepth, words }));
    const { channelData } = decoder.decode.sync(file.buffer, { symmetric: true });
    const { samples } = converted(words, { encoding, bitDepth });
    const side = (channel: number) =>
      Float32Array.from(samples.filter((_, word) => word % 2 === channel));
    expect(side(0)).toEqual(channelData[0]);
    expect(side(1)).toEqual(channelData[1]);
  });

  test('8 bits: its negative half, which it does not scale by 127', () => {
    const words = Array.from({ length: 128 }, (_, word) => -word - 1);
    const file = Uint8Array.from(wavBytes({ bitDepth: 8, channels: 1, words }));
    const { channelData } = decoder.decode.sync(file.buffer);
    const { samples } = converted(words, { encoding: 'pcm', bitDepth: 8 }, 1);
    expect(Float32Array.from(samples.filter((_, word) => word % 2 === 0))).toEqual(channelData[0]);
  });
});
