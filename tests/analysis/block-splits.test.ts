import fc from 'fast-check';
import { expect, test } from 'vitest';
import { frameBytes, type SampleFormat } from '../../src/analysis/sample-format.js';
import { noise } from '../support/signals.js';
import { bytesOf } from './figures-of.js';
import { framesOf, settingsWith, summaryOfFrames } from './summary-of.js';

const FRAMES = 30_000;

/** Lengths in frames that add up to all of them: now single frames, now most of the rest. */
const splits = fc
  .array(fc.oneof(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: FRAMES })), {
    maxLength: 40,
  })
  .map((wanted) => {
    let left = FRAMES;
    const lengths = wanted.map((length) => {
      const taken = Math.min(length, left);
      left -= taken;
      return taken;
    });
    return [...lengths, left];
  });

test('the splits hold every frame once, in one block as in many', () => {
  const seen: number[] = [];
  fc.assert(
    fc.property(splits, (lengths) => {
      seen.push(lengths.filter((length) => length > 0).length);
      expect(lengths.reduce((sum, length) => sum + length, 0)).toBe(FRAMES);
    }),
  );
  expect(Math.min(...seen)).toBe(1);
  expect(Math.max(...seen)).toBeGreaterThan(8);
});

const FORMATS: readonly SampleFormat[] = [
  { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: 96_000 },
  { encoding: 'pcm', bitDepth: 16, channels: 1, sampleRate: 44_100 },
  { encoding: 'float', bitDepth: 32, channels: 2, sampleRate: 192_000 },
];

test.each(FORMATS)(
  'blocks of any size give the same bytes: $encoding $bitDepth, $sampleRate Hz',
  async (format) => {
    const settings = settingsWith({ ellipticalHz: 150, rpm: 78.26 });
    const program = { left: noise(FRAMES, 7, 0.5), right: noise(FRAMES, 8, 0.5) };
    const bytes = framesOf(program, format);
    const whole = bytesOf(await summaryOfFrames(bytes, format, settings));
    const size = frameBytes(format);
    await fc.assert(
      fc.asyncProperty(splits, async (lengths) => {
        const blocks = lengths.map((length) => length * size);
        const split = bytesOf(await summaryOfFrames(bytes, format, settings, blocks));
        expect(split.equals(whole)).toBe(true);
      }),
      { numRuns: 15 },
    );
  },
);

test('and of one frame each', async () => {
  const format = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: 48_000 } as const;
  const bytes = framesOf({ left: noise(3000, 1, 0.5), right: noise(3000, 2, 0.5) }, format);
  const whole = await summaryOfFrames(bytes, format, settingsWith());
  const single = new Array<number>(3000).fill(frameBytes(format));
  const split = await summaryOfFrames(bytes, format, settingsWith(), single);
  expect(bytesOf(split).equals(bytesOf(whole))).toBe(true);
});
