// The tests' own brute force, by what is known of it without it.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromLines, ringMinimum, shapeLines, toLines } from '../support/brute-force.js';
import { exactVelocity } from '../support/exact-curve.js';
import { noise, tones } from '../support/signals.js';

const FRAMES = 256;

test('a line is a cosine of its peak and its phase, left and right apart', () => {
  const silent = { re: 0, im: 0 };
  const lines = {
    left: [silent, silent, silent, { re: 0, im: -0.5 }],
    right: [silent, silent, { re: 0.25, im: 0 }, silent],
  };
  const made = fromLines(lines, FRAMES);
  expect(made.left).toBeWithin(tones([{ hz: 3, amplitude: 0.5 }], FRAMES, FRAMES), 1e-12);
  const cosine = { hz: 2, amplitude: 0.25, phase: Math.PI / 2 };
  expect(made.right).toBeWithin(tones([cosine], FRAMES, FRAMES), 1e-12);
});

test('lines give their signal back, but for what lies at half the rate', () => {
  const signal = { left: noise(FRAMES, 1, 1), right: noise(FRAMES, 2, 1) };
  const once = fromLines(toLines(signal), FRAMES);
  const twice = fromLines(toLines(once), FRAMES);
  expect(twice.left).toBeWithin(once.left, 1e-12);
  expect(twice.right).toBeWithin(once.right, 1e-12);
  const alternating = signal.left.map((value, n) => value - (once.left[n] ?? 0));
  const first = alternating[0] ?? 0;
  expect(alternating).toBeWithin(
    alternating.map((_, n) => (n % 2 === 0 ? first : -first)),
    1e-12,
  );
});

test('a tone through H·B has the level that the table of IEC 60098 prints', () => {
  // 10 kHz: +13.734 dB; one line, spaced 1 kHz.
  const lines = { left: Array.from({ length: 11 }, () => ({ re: 1, im: 0 })), right: [] };
  const shaped = shapeLines(lines, 1000, exactVelocity);
  const { re, im } = shaped.left[10] ?? { re: 0, im: 0 };
  expect(20 * Math.log10(Math.hypot(re, im))).toBeWithin(13.734, 0.0005);
  expect(shaped.left[0]).toEqual({ re: 0, im: 0 });
});

test('the minimum on a ring is that of each window, looked through one by one', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 3, maxLength: 40 }),
      fc.integer({ min: 0, max: 12 }),
      (numbers, reach) => {
        const signal = Float64Array.from(numbers);
        const length = signal.length;
        const naive = signal.map((_, n) => {
          const window = Array.from({ length: 2 * reach + 1 }, (_v, k) => n - reach + k);
          return Math.min(...window.map((at) => signal[((at % length) + length) % length] ?? 0));
        });
        expect(ringMinimum(signal, reach)).toEqual(naive);
      },
    ),
  );
});
