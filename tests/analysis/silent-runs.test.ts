import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DigitalSilence } from '../../src/analysis/motion.js';
import { sumProgram } from '../../src/analysis/program-checks.js';
import { joinSilence, SilenceFollower, type SilentRuns } from '../../src/analysis/silent-runs.js';
import { inBoth, noise } from '../support/signals.js';
import { summaryInParts } from './in-parts.js';
import { doubles, framesOf, settingsWith, summaryOf, summaryOfFrames } from './summary-of.js';

const RATE = 44_100;

/** Noise with silence from a frame to another. */
function silenced(frames: number, spans: readonly (readonly [number, number])[]): Float64Array {
  // Noise may be zero now and then, which must not lengthen a span.
  const sound = noise(frames, 9, 0.1).map((value) => (value === 0 ? 0.01 : value));
  return sound.map((value, n) =>
    spans.some(([from, until]) => n >= from && n < until) ? 0 : value,
  );
}

async function silenceOf(left: Float64Array, right = left): Promise<DigitalSilence> {
  return (await summaryOf({ left, right }, RATE, settingsWith())).program.silence;
}

describe('digital silence inside a program', () => {
  test('is told with its ends, and all of it together', async () => {
    const { count, seconds, first } = await silenceOf(
      silenced(2 * RATE, [
        [10_001, 20_000],
        [40_000, 47_777],
      ]),
    );
    expect(count).toBe(2);
    expect(seconds).toBeWithin((9999 + 7777) / RATE, 1e-12);
    expect(first).toEqual([
      { fromSeconds: 10_001 / RATE, untilSeconds: 20_000 / RATE },
      { fromSeconds: 40_000 / RATE, untilSeconds: 47_777 / RATE },
    ]);
  });

  test('is none before the first sound and behind the last, and none in silence', async () => {
    const edges = silenced(RATE, [
      [0, 9000],
      [30_000, RATE],
    ]);
    expect((await silenceOf(edges)).count).toBe(0);
    expect((await silenceOf(new Float64Array(RATE))).count).toBe(0);
  });

  test('is silence from 0.1 s on: 4410 frames at 44.1 kHz', async () => {
    expect((await silenceOf(silenced(RATE, [[10_000, 14_410]]))).count).toBe(1);
    expect((await silenceOf(silenced(RATE, [[10_000, 14_409]]))).count).toBe(0);
  });

  test('ends with the least code of one channel', async () => {
    const left = silenced(RATE, [[10_000, 20_000]]);
    const right = left.map((value, n) => (n === 15_001 ? 2 ** -23 : value));
    const { first } = await silenceOf(left, right);
    expect(first).toEqual([
      { fromSeconds: 10_000 / RATE, untilSeconds: 15_001 / RATE },
      { fromSeconds: 15_002 / RATE, untilSeconds: 20_000 / RATE },
    ]);
  });

  test('of 64-bit numbers far under the least f32 is none', async () => {
    const quiet = silenced(RATE, [[10_000, 20_000]]).map((value) => (value === 0 ? 1e-300 : value));
    expect((await silenceOf(quiet)).count).toBe(0);
  });
});

const program = fc
  .array(fc.record({ frames: fc.integer({ min: 1, max: 7000 }), isSilent: fc.boolean() }), {
    minLength: 1,
    maxLength: 8,
  })
  .map((stretches) =>
    Float64Array.from(
      stretches.flatMap(({ frames, isSilent }) =>
        new Array<number>(frames).fill(isSilent ? 0 : 0.1),
      ),
    ),
  );

test('the pass finds what its definition finds, whatever the blocks and the words', async () => {
  await fc.assert(
    fc.asyncProperty(
      program,
      fc.integer({ min: 100, max: 5000 }),
      fc.constantFrom(16, 24, 32, 64),
      async (left, block, bitDepth) => {
        const encoding = bitDepth === 64 ? 'float' : 'pcm';
        const format = { encoding, bitDepth, channels: 2, sampleRate: RATE } as const;
        const bytes = framesOf(inBoth(left), format);
        const size = bitDepth / 4;
        const blocks = Array.from(
          { length: Math.ceil(left.length / block) },
          (_, n) => size * Math.min(block, left.length - n * block),
        );
        const passed = await summaryOfFrames(bytes, format, settingsWith(), blocks);
        const { inside } = sumProgram(inBoth(left), format).silence;
        const { first, count } = passed.program.silence;
        expect(count).toBe(inside.length);
        expect(first).toEqual(
          inside.map(([from, frames]) => ({
            fromSeconds: from / RATE,
            untilSeconds: (from + frames) / RATE,
          })),
        );
      },
    ),
    { numRuns: 12 },
  );
});

test('stretches joined are the whole, wherever it is cut', () => {
  const runsOf = (signal: Float64Array, from: number): SilentRuns => {
    const follower = new SilenceFollower(RATE, from);
    for (const value of signal) follower.hear(value, value);
    return follower.runs;
  };
  fc.assert(
    fc.property(program, fc.array(fc.nat(), { minLength: 1, maxLength: 4 }), (signal, marks) => {
      const cuts = [0, ...marks.map((mark) => mark % signal.length), signal.length].sort(
        (a, b) => a - b,
      );
      const pieces = cuts
        .slice(1)
        .flatMap((cut, n) =>
          cut === cuts[n] ? [] : [runsOf(signal.subarray(cuts[n], cut), cuts[n]!)],
        );
      expect(pieces.reduce(joinSilence)).toEqual(runsOf(signal, 0));
    }),
    { numRuns: 60 },
  );
});

test('parts of a program tell the silence of the whole, also across their seams', async () => {
  const left = silenced(9 * RATE, [
    [70_000, 190_000],
    [260_000, 270_000],
  ]);
  const settings = settingsWith();
  const bytes = framesOf(inBoth(left), doubles(RATE));
  const whole = await summaryOfFrames(bytes, doubles(RATE), settings);
  const inParts = await summaryInParts({ bytes, format: doubles(RATE), settings, partSeconds: 2 });
  expect(whole.program.silence.count).toBe(2);
  expect(inParts.program.silence).toEqual(whole.program.silence);
});
