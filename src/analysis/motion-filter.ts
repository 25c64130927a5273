import type { Hertz } from '../units.js';
import { bandLimitOf } from './band-limit.js';
import { type Complex, divide, magnitude, multiply, polynomial, unitPhasor } from './complex.js';
import { stepTapsOf } from './half-band.js';
import {
  BASS_SECONDS,
  butterworthHighPass2,
  laplace,
  MIDDLE_SECONDS,
  recordingCurve,
} from './recording-curve.js';
import { solveSymmetric } from './solve.js';

/** Frames by which the displacement comes out late. */
export const MOTION_DELAY = 2;
/**
 * Taps on the recursion's output, and on the frames to each side of u for v and for a: the fewest
 * that keep a within 0.008 dB and v, which may be off by half as much, within 0.004 dB at 88.2 kHz.
 */
const DISPLACEMENT_TAPS = 6;
const VELOCITY_PAIRS = 4;
const ACCELERATION_PAIRS = 3;

/**
 * From program to motion. One recursion does what lies low: the chain's high-pass and the bass and
 * middle time constants, with one zero at DC. It runs at the base rate,
 *
 *     q(n) = p(n) + z1·p(n−1) + z2·p(n−2) − r1·q(n−1) − r2·q(n−2) − r3·q(n−3)
 *
 * and what comes out is doubled: a filter and a doubling may change places. At the internal rate a
 * short FIR on q, fitted to what is left of u, the treble time constant and the integration:
 *
 *     u(n) = Σ displacement[k]·q(n + MOTION_DELAY − k)
 *
 * and u differentiated once and twice, linear in phase and without delay:
 *
 *     v(n) = Σ velocity[k]·(u(n+1+k) − u(n−1−k))
 *     a(n) = Σ acceleration[k]·(u(n+1+k) − 2u(n) + u(n−1−k))
 *
 * u has no pole at DC that could drift, because the high-pass has taken it. The recursion is f64;
 * its steps q(n) − q(n−1) are rounded to f32 and doubled as steps, and so is all that follows. The
 * same FIR on the steps gives the moves m(n) = u(n) − u(n−1), which keep their 24 bits where u itself hardly changes. They
 * add up to u over 32 frames at a time, and v and a are made of them,
 *
 *     u(n+1+k) − u(n−1−k)         = Σ m(n+1+j) + m(n−j)   over j ≤ k
 *     u(n+1+k) − 2u(n) + u(n−1−k) = Σ m(n+1+j) − m(n−j)   over j ≤ k
 */
export interface MotionFilter {
  /** Numerator of the recursion after its leading 1, two taps. */
  readonly zeros: Float64Array;
  /** Denominator after its leading 1, three taps. */
  readonly poles: Float64Array;
  /** The same, three taps, for an output that is known without the last one. */
  readonly skips: Float64Array;
  /** Pairs that double the rate of steps, see `stepTapsOf`. */
  readonly stepTaps: Float64Array;
  /** 6 taps on q or its steps, m. */
  readonly displacement: Float32Array;
  /** 4 pairs on the moves, 1/s. */
  readonly velocity: Float32Array;
  /** 3 pairs on the moves, 1/s². */
  readonly acceleration: Float32Array;
}

/**
 * The high-pass by the bilinear transform, its corner prewarped; the two time constants by their own
 * decay from frame to frame, which bends less than the bilinear transform at this rate.
 */
function designRecursion(
  rate: Hertz,
  subsonic: Hertz,
): { zeros: Float64Array; poles: Float64Array } {
  const warped = Math.tan((Math.PI * subsonic) / rate);
  const lead = 1 + Math.SQRT2 * warped + warped * warped;
  const highPass = [
    1,
    (2 * (warped * warped - 1)) / lead,
    (1 - Math.SQRT2 * warped + warped * warped) / lead,
  ];
  const root = (seconds: number): number => Math.exp(-1 / (rate * seconds));
  return {
    zeros: convolve([1, -1], [1, -root(BASS_SECONDS)]).slice(1),
    poles: convolve(highPass, [1, -root(MIDDLE_SECONDS)]).slice(1),
  };
}

function convolve(a: ArrayLike<number>, b: ArrayLike<number>): Float64Array {
  const product = new Float64Array(a.length + b.length - 1);
  for (let i = 0; i < a.length; i++) {
    for (let k = 0; k < b.length; k++) product[i + k]! += a[i]! * b[k]!;
  }
  return product;
}

/** Frequencies of the fit and how much each counts: all to 20 kHz, above it only so as to behave. */
function fitGrid(rate: Hertz): { frequency: Hertz; weight: number }[] {
  const grid: { frequency: Hertz; weight: number }[] = [];
  for (let k = 0; k < 60; k++) grid.push({ frequency: 15 * (2000 / 15) ** (k / 60), weight: 1 });
  for (let f = 2000; f <= 20_300; f += 100) grid.push({ frequency: f, weight: 1 });
  for (let f = 20_500; f <= 24_000; f += 200) grid.push({ frequency: f, weight: 0.03 });
  for (let f = 24_500; f <= rate / 2; f += 1000) grid.push({ frequency: f, weight: 0.001 });
  return grid;
}

/**
 * Taps of a FIR by least squares of the relative complex error; linear, since a FIR is linear in
 * its taps.
 */
function fitTaps(count: number, rate: Hertz, wanted: (frequency: Hertz) => Complex): Float64Array {
  // Entry (row, column) of the normal matrix is one of the distance between the two alone.
  const diagonals = new Float64Array(count);
  const right = new Float64Array(count);
  for (const { frequency, weight } of fitGrid(rate)) {
    const target = wanted(frequency);
    const squared = (weight / magnitude(target)) ** 2;
    const angle = (-2 * Math.PI * frequency) / rate;
    for (let row = 0; row < count; row++) {
      const phasor = unitPhasor(angle * row);
      right[row]! += squared * (phasor.re * target.re + phasor.im * target.im);
      diagonals[row]! += squared * phasor.re;
    }
  }
  const normal = Array.from({ length: count }, (_, row) =>
    Float64Array.from({ length: count }, (__, column) => diagonals[Math.abs(row - column)]!),
  );
  return solveSymmetric(normal, right);
}

/**
 * Pairs of a differentiator by least squares of the relative error.
 * @param response what a pair at a distance of k frames does at a phase advance a frame, real
 * @param wanted what all together shall do there, real
 */
function fitPairs(
  count: number,
  rate: Hertz,
  response: (advance: number, distance: number) => number,
  wanted: (advance: number) => number,
): Float64Array {
  const normal = Array.from({ length: count }, () => new Float64Array(count));
  const right = new Float64Array(count);
  const responses = new Float64Array(count);
  for (const { frequency, weight } of fitGrid(rate)) {
    const advance = (2 * Math.PI * frequency) / rate;
    const target = wanted(advance);
    const squared = (weight / target) ** 2;
    for (let row = 0; row < count; row++) responses[row] = response(advance, row + 1);
    for (let row = 0; row < count; row++) {
      const basis = squared * responses[row]!;
      right[row]! += basis * target;
      for (let column = 0; column < count; column++) {
        normal[row]![column]! += basis * responses[column]!;
      }
    }
  }
  return solveSymmetric(normal, right);
}

interface Design {
  readonly of: string;
  readonly filter: MotionFilter;
}

/** The design that was asked for last: a side asks for one and the same for each of its parts. */
let last: Design | undefined;

/**
 * Designs the filter for an internal rate: but for the doubling, u within 0.0003 dB, v 0.004 dB,
 * a 0.008 dB and all within 0.01° of the formula from 20 Hz to 20 kHz.
 * @param rate 88.2 or 96 kHz
 * @param subsonic corner of the chain's high-pass
 * @param scale k: 45° peak velocity of one channel at full scale and 1 kHz, m/s
 * Formula: v = k·H·B·program, u = v/s, a = v·s; H from IEC 60098.
 */
export function designMotionFilter(rate: Hertz, subsonic: Hertz, scale: number): MotionFilter {
  const of = `${rate} ${subsonic} ${scale}`;
  if (last?.of !== of) last = { of, filter: design(rate, subsonic, scale) };
  return last.filter;
}

function design(rate: Hertz, subsonic: Hertz, scale: number): MotionFilter {
  const baseRate = rate / 2;
  const { zeros, poles } = designRecursion(baseRate, subsonic);
  const numerator = [1, ...zeros];
  const denominator = [1, ...poles];
  const displacement = fitTaps(DISPLACEMENT_TAPS, rate, (frequency) => {
    const s = laplace(frequency);
    const z1 = unitPhasor(-s.im / baseRate);
    const recursion = divide(polynomial(numerator, z1), polynomial(denominator, z1));
    const cut = multiply(recordingCurve(frequency), butterworthHighPass2(frequency, subsonic));
    const late = multiply(cut, unitPhasor((-s.im / rate) * MOTION_DELAY));
    return divide(divide(late, s), recursion);
  });
  const slope = (advance: number, distance: number): number => 2 * Math.sin(advance * distance);
  const bend = (advance: number, distance: number): number => 2 - 2 * Math.cos(advance * distance);
  const velocity = fitPairs(VELOCITY_PAIRS, rate, slope, (advance) => advance);
  const acceleration = fitPairs(ACCELERATION_PAIRS, rate, bend, (advance) => advance * advance);
  return {
    zeros,
    poles,
    skips: skipsOf(poles),
    stepTaps: stepTapsOf(bandLimitOf(baseRate).bandEndTaps),
    displacement: Float32Array.from(displacement, (tap) => tap * scale),
    velocity: Float32Array.from(sumsFrom(velocity), (pair) => pair * rate),
    acceleration: Float32Array.from(sumsFrom(acceleration), (pair) => pair * rate * rate),
  };
}

/**
 * q(n+1) = p(n+1) + … − r1·q(n) − r2·q(n−1) − r3·q(n−2) with q(n) written out:
 * r1² − r2, r1·r2 − r3 and r1·r3 are the taps of q(n−1), q(n−2) and q(n−3).
 */
function skipsOf(poles: Float64Array): Float64Array {
  const [r1, r2, r3] = [poles[0]!, poles[1]!, poles[2]!];
  return Float64Array.of(r1 * r1 - r2, r1 * r2 - r3, r1 * r3);
}

/** Pairs on the moves out of pairs on the displacement: each with all that reach further. */
function sumsFrom(pairs: Float64Array): Float64Array {
  return pairs.map((_, k) => pairs.subarray(k).reduce((sum, pair) => sum + pair, 0));
}
