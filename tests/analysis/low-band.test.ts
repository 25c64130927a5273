// Closed forms of two walls: x = (u_L + u_R)/√2, z = (u_L − u_R)/√2 (IEC 60098:2020, 6.2).
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LOW_BAND_DECIMATION } from '../../src/analysis/decimate.js';
import { LowBandMeter } from '../../src/analysis/low-band.js';
import type { LowBand } from '../../src/analysis/motion.js';
import { spiralClock } from '../../src/analysis/spiral-clock.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import { inBoth, noise, scaled, tones } from '../support/signals.js';
import { settingsWith, summaryOf } from './summary-of.js';

const CLOCK = spiralClock(settingsWith(), 96_000);
const RATE = CLOCK.rate / LOW_BAND_DECIMATION;
const QUARTERS = 8;
const FRAMES = (QUARTERS * CLOCK.turnFrames) / 4 / LOW_BAND_DECIMATION;
/** A quarter away from the ends. */
const MIDDLE = 4;

function interleaved({ left, right }: Stereo): Float64Array {
  const both = new Float64Array(2 * left.length);
  for (let n = 0; n < left.length; n++) both.set([left[n] ?? 0, right[n] ?? 0], 2 * n);
  return both;
}

/** The meter on walls that are given directly, already decimated. */
function metered(walls: Stereo): LowBand {
  const meter = new LowBandMeter(CLOCK, 300, QUARTERS);
  meter.push(interleaved(walls));
  return meter.finish();
}

const sine = (hz: number, phase = 0): Float64Array =>
  tones([{ hz, amplitude: 1e-5, phase }], FRAMES, RATE);

test('walls that move alike are lateral: correlation 1, phase 0, nothing vertical', () => {
  const low = metered(inBoth(sine(60)));
  expect(low.correlation[MIDDLE]).toBeWithin(1, 1e-9);
  expect(low.phase[MIDDLE]).toBeWithin(0, 1e-6);
  expect(low.verticalShare[MIDDLE]).toBeWithin(0, 1e-9);
  expect(low.verticalAmplitude[MIDDLE]).toBeWithin(0, 1e-10);
});

test('walls that move against each other are vertical: correlation −1, share 1', () => {
  const low = metered({ left: sine(60), right: scaled(sine(60), -1) });
  expect(low.correlation[MIDDLE]).toBeWithin(-1, 1e-9);
  expect(Math.abs(low.phase[MIDDLE] ?? 0)).toBeWithin(Math.PI, 1e-6);
  expect(low.verticalShare[MIDDLE]).toBeWithin(1, 1e-9);
});

test('one wall alone is half vertical and correlates with nothing', () => {
  const low = metered({ left: sine(60), right: new Float64Array(FRAMES) });
  expect(low.correlation[MIDDLE]).toBe(0);
  expect(low.phase[MIDDLE]).toBe(0);
  expect(low.verticalShare[MIDDLE]).toBeWithin(0.5, 1e-9);
});

test('a left wall a quarter of a period ahead has a phase of +π/2', () => {
  const low = metered({ left: sine(60, Math.PI / 2), right: sine(60) });
  expect(low.phase[MIDDLE]).toBeWithin(Math.PI / 2, 0.001);
  expect(low.correlation[MIDDLE]).toBeWithin(0, 0.001);
  expect(low.verticalShare[MIDDLE]).toBeWithin(0.5, 0.001);
});

test('silence has 0 everywhere', () => {
  const low = metered(inBoth(new Float64Array(FRAMES)));
  for (const row of Object.values(low)) expect(row).toEqual(new Float64Array(QUARTERS));
});

test.each([25, 41.7, 60, 99.9, 180, 290])(
  'the strongest frequency of %f Hz is told within 0.5 Hz',
  (hz) => {
    expect(metered(inBoth(sine(hz))).strongestFrequency[MIDDLE]).toBeWithin(hz, 0.5);
  },
);

test('of two tones the larger counts, and what lies over the low band does not', () => {
  const [strong, weak] = [sine(47), scaled(sine(130), 0.8)];
  const both = strong.map((value, n) => value + (weak[n] ?? 0) + 4e-5 * Math.sin(2.2 * n));
  // 2.2 rad a frame of 3 kHz are 1050 Hz.
  expect(metered(inBoth(both)).strongestFrequency[MIDDLE]).toBeWithin(47, 0.5);
});

describe('through the whole pass', () => {
  test.each([60, 250])('a vertical %i Hz has √2·rms within 1 % of its lift', async (hz) => {
    const left = tones([{ hz, amplitude: 0.2 }], 2.5 * 44_100, 44_100);
    const program = { left, right: scaled(left, -1) };
    const { lift, lowBand } = await summaryOf(program, 44_100, settingsWith());
    const peak = Math.max(...lift.subarray(16 * 3, 16 * 4));
    expect(peak).toBeGreaterThan(5e-6);
    expect(lowBand.verticalAmplitude[3]).toBeWithin(peak, 0, 0.01);
    expect(lowBand.verticalShare[3]).toBeWithin(1, 1e-9);
    expect(lowBand.strongestFrequency[3]).toBeWithin(hz, 0.5);
  });

  test('a burst counts in the quarter it lies in', async () => {
    const rate = 44_100;
    const from = 1.0 * rate;
    const left = tones([{ hz: 80, amplitude: 0.2 }], 2 * rate, rate).map((value, n) =>
      n > from && n < from + 0.2 * rate ? value : 0,
    );
    const { lowBand } = await summaryOf({ left, right: scaled(left, -1) }, rate, settingsWith());
    const loudest = lowBand.verticalAmplitude.indexOf(Math.max(...lowBand.verticalAmplitude));
    // 1.0 to 1.2 s, of quarters of 0.45 s.
    expect(loudest).toBe(2);
  });
});

test('after a hundred turns the windows still lie where the quarters do', () => {
  const [quarters, loud] = [408, 400];
  const quarterFrames = CLOCK.turnFrames / 4 / LOW_BAND_DECIMATION;
  const left = tones([{ hz: 60, amplitude: 1e-5 }], quarters * quarterFrames, RATE).map(
    (value, n) => (Math.floor(n / quarterFrames) === loud ? value : 0),
  );
  const meter = new LowBandMeter(CLOCK, 300, quarters);
  meter.push(interleaved({ left, right: scaled(left, -1) }));
  const { verticalAmplitude } = meter.finish();
  expect(verticalAmplitude.indexOf(Math.max(...verticalAmplitude))).toBe(loud);
  // What the neighbours' windows reach of it is the same on both sides but for the tone's phase.
  const [before, after] = [verticalAmplitude[loud - 1] ?? 0, verticalAmplitude[loud + 1] ?? 0];
  expect(before).toBeWithin(after, 0, 0.1);
  expect(before).toBeGreaterThan(0);
});

test('blocks of any size give the same figures', () => {
  const walls = { left: noise(FRAMES, 5, 1e-5), right: noise(FRAMES, 6, 1e-5) };
  const both = interleaved(walls);
  const whole = metered(walls);
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: FRAMES / 3 }), { maxLength: 20 }), (lengths) => {
      const meter = new LowBandMeter(CLOCK, 300, QUARTERS);
      let at = 0;
      for (const length of lengths) {
        meter.push(both.subarray(2 * at, 2 * (at + length)));
        at = Math.min(FRAMES, at + length);
      }
      meter.push(both.subarray(2 * at));
      expect(meter.finish()).toEqual(whole);
    }),
    { numRuns: 20 },
  );
});
