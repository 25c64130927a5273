import type { Hertz } from '../units.js';
import type { Biquad } from './biquad.js';

/**
 * The two sections of the K-weighting, for any rate: the analogue prototypes of the standard's
 * 48 kHz coefficients by the bilinear transform.
 * Source: ITU-R BS.1770-4, annex 1, tables 1 and 2; the prototypes' corners, gain and Q from
 * memory, checked against the tables by test.
 */
export function designKWeighting(rate: Hertz): readonly [Biquad, Biquad] {
  return [designShelf(rate), designLowCut(rate)];
}

/** Frames by which the shelf's steps end later than the low cut's. */
const SHELF_DELAY = 4;
/** Magnitude that two outputs must reach, one of them, lest a step ends with silence. */
const SILENCE = Math.fround(1e-18);

/**
 * A signal K-weighted, from rest; in f32, in the order in which it is rounded.
 * @param step frames of 100 ms, at whose end silence is forgotten; even
 */
export function weigh(signal: Float64Array, rate: Hertz, step: number): Float64Array {
  const [shelf, lowCut] = designKWeighting(rate);
  return runSection(runSection(signal, shelf, step, SHELF_DELAY), lowCut, step, 0);
}

/**
 * Two outputs of a section at a time, both from the two before them:
 * y(n+1) = x′(n+1) − a1·x′(n) + (a1² − a2)·y(n−1) + a1·a2·y(n−2), x′(n) what the zeros make of x.
 */
function runSection(
  signal: Float64Array,
  section: Biquad,
  step: number,
  delay: number,
): Float64Array {
  const f32 = Math.fround;
  const [b0, b1, b2, a1, a2, skip1, skip2] = pairedTaps(section);
  const out = new Float64Array(signal.length + 1);
  const x = (n: number): number => signal[n] ?? 0;
  const input = (n: number): number =>
    f32(f32(f32(b0 * x(n)) + f32(b1 * x(n - 1))) + f32(b2 * x(n - 2)));
  for (let n = 0; n < signal.length; n += 2) {
    const past = [out[n - 1] ?? 0, out[n - 2] ?? 0] as const;
    const endsStep = n > delay && n % step === delay;
    const isSilent = endsStep && past.every((y) => Math.abs(y) < SILENCE);
    const [y1, y2] = isSilent ? [0, 0] : past;
    out[n] = f32(f32(input(n) - f32(a2 * y2)) - f32(a1 * y1));
    const skipped = f32(input(n + 1) - f32(a1 * input(n)));
    out[n + 1] = f32(f32(skipped + f32(skip2 * y2)) + f32(skip1 * y1));
  }
  return out.subarray(0, signal.length);
}

/** b0 b1 b2 a1 a2, a1² − a2 and a1·a2; f32. */
export function pairedTaps({ b0, b1, b2, a1, a2 }: Biquad): PairedTaps {
  const f32 = Math.fround;
  return [f32(b0), f32(b1), f32(b2), f32(a1), f32(a2), f32(a1 * a1 - a2), f32(a1 * a2)];
}

type PairedTaps = [number, number, number, number, number, number, number];

function designShelf(rate: Hertz): Biquad {
  const k = Math.tan((Math.PI * 1681.974450955533) / rate);
  const quality = 0.7071752369554196;
  const high = 10 ** (3.999843853973347 / 20);
  const middle = high ** 0.4996667741545416;
  const a0 = 1 + k / quality + k * k;
  return {
    b0: (high + (middle * k) / quality + k * k) / a0,
    b1: (2 * (k * k - high)) / a0,
    b2: (high - (middle * k) / quality + k * k) / a0,
    a1: (2 * (k * k - 1)) / a0,
    a2: (1 - k / quality + k * k) / a0,
  };
}

function designLowCut(rate: Hertz): Biquad {
  const k = Math.tan((Math.PI * 38.13547087602444) / rate);
  const quality = 0.5003270373238773;
  const a0 = 1 + k / quality + k * k;
  return {
    b0: 1,
    b1: -2,
    b2: 1,
    a1: (2 * (k * k - 1)) / a0,
    a2: (1 - k / quality + k * k) / a0,
  };
}
