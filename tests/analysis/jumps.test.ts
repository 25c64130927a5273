// Single-sample jumps: by hand, against a definition written anew here, and pass against definition.
// That recordings without them keep under the limits is in tests/conformance/jumps.test.ts.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { JumpList } from '../../src/analysis/jump-list.js';
import { type Jump, JumpFinder } from '../../src/analysis/jumps.js';
import type { FoundJumps } from '../../src/analysis/motion.js';
import { wholeProgram } from '../../src/analysis/parts.js';
import { programOf } from '../../src/analysis/program.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import { faded, inBoth, noise, scaled, seeded, tones } from '../support/signals.js';
import { summaryInParts } from './in-parts.js';
import { doubles, framesOf, settingsWith, summaryOf, summaryOfFrames } from './summary-of.js';

const RATE = 44_100;
const FRAMES = 22_050;
const AT = 9_999;

async function jumpsOf(left: Float64Array, right: Float64Array = new Float64Array(left.length)) {
  return (await summaryOf({ left, right }, RATE, settingsWith())).program.jumps;
}

/** A signal with something added from a frame on. */
function withAdded(signal: Float64Array, at: number, added: readonly number[]): Float64Array {
  return signal.map((value, n) => value + (added[n - at] ?? 0));
}

/** Faded at its ends, so that they do not jump themselves. */
const tone = (hz: number, amplitude: number): Float64Array =>
  faded(tones([{ hz, amplitude }], FRAMES, RATE), 2000);

const silence = new Float64Array(FRAMES);

describe('a jump is found', () => {
  test('where one sample stands alone, with its height, place and channel', async () => {
    const { count, largest } = await jumpsOf(silence, withAdded(silence, AT, [0.25]));
    expect(count).toBe(1);
    expect(largest).toEqual([{ atSeconds: AT / RATE, channel: 'right', size: 0.25, around: 0 }]);
  });

  test('in a tone, whatever its phase, where one sample is 12 dB under the tone', async () => {
    for (const phase of [0, 7, 13, 22, 31]) {
      const { count, largest } = await jumpsOf(withAdded(tone(1000, 0.5), AT + phase, [0.125]));
      expect(count, `${phase}`).toBe(1);
      expect(largest[0]?.atSeconds).toBeWithin((AT + phase) / RATE, 1.5 / RATE);
    }
  });

  test('where a sample of a tone of 440 Hz is left out while it crosses zero', async () => {
    const whole = tone(440, 0.9);
    const crossing = whole.findIndex((value, n) => n > AT && value < 0 && whole[n + 1]! >= 0);
    const { count, largest } = await jumpsOf(
      Float64Array.from([...whole.subarray(0, crossing), ...whole.subarray(crossing + 1), 0]),
    );
    expect(count).toBe(1);
    expect(largest[0]?.atSeconds).toBeWithin(crossing / RATE, 2 / RATE);
  });

  test('at an edit that steps from one tone to another', async () => {
    const [before, after] = [tone(220, 0.5), tone(330, 0.4)];
    const { count, largest } = await jumpsOf(
      before.map((value, n) => (n < AT ? value : (after[n + 40] ?? 0))),
    );
    expect(count).toBe(1);
    expect(largest[0]?.atSeconds).toBeWithin(AT / RATE, 1.5 / RATE);
  });

  test('where a program begins or ends at once, at its first and its last frame', async () => {
    const { count, largest } = await jumpsOf(silence.map(() => 0.1));
    expect(count).toBe(2);
    expect(largest.map(({ atSeconds }) => atSeconds)).toEqual([0, (FRAMES - 1) / RATE]);
  });

  test('at −36 dBFS in silence, and not under it', async () => {
    const least = 10 ** (-36 / 20);
    expect((await jumpsOf(withAdded(silence, AT, [1.001 * least]))).count).toBe(1);
    expect((await jumpsOf(withAdded(silence, AT, [0.999 * least]))).count).toBe(0);
  });

  test('of several the largest 16 are told, the largest first, and all are counted', async () => {
    const many = new Float64Array(RATE * 6);
    for (let n = 1; n <= 20; n++) many[n * 10_000] = n / 40;
    const { count, largest } = await jumpsOf(many);
    expect(count).toBe(20);
    expect(largest.map(({ size }) => Math.round(size * 40))).toEqual(
      Array.from({ length: 16 }, (_, n) => 20 - n),
    );
  });
});

describe('no jump is', () => {
  const square = (hz: number, amplitude: number) =>
    silence.map((_, n) => (Math.floor((2 * n * hz) / RATE) % 2 === 0 ? amplitude : -amplitude));
  const saw = (hz: number) => silence.map((_, n) => 2 * (((n * hz) / RATE) % 1) - 1);
  const hit = (seed: number) =>
    noise(FRAMES, seed, 1).map((value, n) => (n < 1000 ? 0 : value * Math.exp((1000 - n) / 400)));

  test.each<readonly [string, Float64Array]>([
    ['a square wave of 20 Hz at full scale', square(20, 1)],
    ['a square wave of 200 Hz at full scale', square(200, 1)],
    ['a square wave of 5 kHz at full scale', square(5000, 1)],
    ['a saw of 20 Hz', saw(20)],
    ['a saw of 1 kHz', saw(1000)],
    ['white noise at full scale', noise(FRAMES, 3, 1)],
    ['a tone of 21 kHz', tones([{ hz: 21_000, amplitude: 1 }], FRAMES, RATE)],
    ['a burst of noise out of silence', hit(5)],
    ['a tone that begins at once', silence.map((_, n) => (n < AT ? 0 : tone(1000, 0.9)[n - AT]!))],
  ])('%s', async (_, signal) => {
    // Its ends are cut off, which is a jump of its own.
    const faded = signal.map((value, n) => value * Math.min(1, (FRAMES - 1 - n) / 2000));
    const { largest } = await jumpsOf(faded);
    expect(largest.filter(({ atSeconds }) => atSeconds > 0)).toEqual([]);
  });
});

/** The definition as its text has it, frame by frame. */
function definedJumps({ left, right }: Stereo): Jump[] {
  const found: Jump[] = [];
  for (let frame = -1; frame <= left.length; frame++) {
    for (const [index, samples] of [left, right].entries()) {
      const x = (n: number) => Math.fround(samples[n] ?? 0);
      const d = (n: number) => Math.abs(x(n - 1) - 2 * x(n) + x(n + 1));
      const others = (from: number, until: number) =>
        Array.from({ length: until - from + 1 }, (_, n) => from + n).flatMap((distance) => [
          d(frame - distance),
          d(frame + distance),
        ]);
      const difference = d(frame);
      const around = Math.max(...others(3, 32));
      const isFirst = difference > d(frame - 1) && difference > d(frame - 2);
      const isLargest = difference >= Math.max(...others(1, 2));
      const isLarge = difference >= 2 * 10 ** (-36 / 20);
      const isNoTurn = Math.max(d(frame - 1), d(frame + 1)) >= difference / 3;
      if (isLarge && isFirst && isLargest && isNoTurn && difference >= 6 * around) {
        found.push({ frame, channel: index === 0 ? 0 : 1, difference, around });
      }
    }
  }
  return found;
}

/** Quiet noise with jumps of all sizes in it, some too near to each other. */
function crackling(seed: number, frames: number): Float64Array {
  const next = seeded(seed);
  const quiet = noise(frames, seed + 1, 0.004);
  for (let n = 0; n < frames; n += Math.floor(next() * 300)) {
    quiet[n]! += next() < 0.5 ? next() : -next();
    n++;
  }
  return quiet;
}

const shapes = fc.record({
  seed: fc.integer({ min: 1, max: 1e6 }),
  blocks: fc.array(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 12 }),
});

test('the definition in blocks of any size is the one in words', () => {
  fc.assert(
    fc.property(shapes, ({ seed, blocks }) => {
      const frames = blocks.reduce((sum, block) => sum + block, 0);
      const program = { left: crackling(seed, frames), right: crackling(seed + 7, frames) };
      const jumps: Jump[] = [];
      const finder = new JumpFinder(0, (jump) => jumps.push(jump));
      let at = 0;
      for (const block of blocks) {
        finder.push({
          left: program.left.subarray(at, at + block),
          right: program.right.subarray(at, at + block),
        });
        at += block;
      }
      finder.finish();
      expect(jumps).toEqual(definedJumps(program));
    }),
    { numRuns: 30 },
  );
});

test('the pass finds what its definition finds, whatever the blocks', async () => {
  // Far enough apart that few are alike, and of sizes that are not.
  const rare = (seed: number): Float64Array => {
    const next = seeded(seed);
    const quiet = noise(4 * RATE, seed + 1, 0.004);
    for (let n = 0; n < quiet.length; n += 1000 + Math.floor(next() * 9000)) {
      quiet[n]! += 10 ** (-2 * next());
    }
    return quiet;
  };
  const format = doubles(RATE);
  for (const [seed, block] of [
    [11, 100_000],
    [12, 7],
    [13, 1031],
  ] as const) {
    const program = { left: rare(seed), right: scaled(rare(seed + 50), 0.8) };
    const bytes = framesOf(program, format);
    const frames = program.left.length;
    const blocks = Array.from(
      { length: Math.ceil(frames / block) },
      (_, n) => 16 * Math.min(block, frames - n * block),
    );
    const passed = await summaryOfFrames(bytes, format, settingsWith(), blocks);
    const whole = programOf(format, frames);
    const list = new JumpList(whole, wholeProgram(whole, settingsWith()));
    const finder = new JumpFinder(0, (jump) => list.add(jump));
    finder.push(program);
    finder.finish();
    const defined = list.finish();
    expect(defined.count).toBeGreaterThan(10);
    expect(passed.program.jumps.count).toBe(defined.count);
    expect(passed.program.jumps.largest).toEqual(
      defined.largest.map(({ frame, channel, difference, around }) => ({
        atSeconds: frame / RATE,
        channel: channel === 0 ? 'left' : 'right',
        size: difference / 2,
        around: around / 2,
      })),
    );
  }
});

test('parts tell the jumps of the whole, also at their seams', async () => {
  const settings = settingsWith();
  const seconds = 9;
  const left = new Float64Array(RATE * seconds);
  // Every 0.2 s, so that some are alike across each seam; every tenth larger than those about it.
  for (let n = 0; n * 8820 < left.length; n++) left[n * 8820] = n % 10 === 0 ? 0.9 : 0.3;
  const program = {
    bytes: framesOf(inBoth(left), doubles(RATE)),
    format: doubles(RATE),
    settings,
    partSeconds: 2,
  };
  const whole = await summaryOfFrames(program.bytes, program.format, settings);
  const inParts = await summaryInParts(program);
  expect(inParts.program.jumps).toEqual<FoundJumps>(whole.program.jumps);
  expect(whole.program.jumps.count).toBe(90);
});
