import type { Hertz } from '../units.js';
import { type Complex, divide, magnitude, multiply, polynomial, unitPhasor } from './complex.js';
import {
  BASS_SECONDS,
  butterworthHighPass2,
  laplace,
  MIDDLE_SECONDS,
  recordingCurve,
} from './recording-curve.js';
import { solveSymmetric } from './solve.js';

/** Frames by which u, v and a come out late, all three alike. */
export const MOTION_DELAY = 4;

/** A FIR on the recursion's output: taps[k] weighs the frame `first` + k before. */
export interface MotionFir {
  readonly first: number;
  readonly taps: Float64Array;
}

/**
 * Which taps are fitted for u, v and a, and how many differences, zeros at DC, come on top:
 * the fewest that keep u and a within 0.008 dB and v, which may be off by half as much, within
 * 0.003 dB at 88.2 kHz.
 */
interface FirFit {
  readonly first: number;
  readonly free: number;
  readonly differences: number;
}
const DISPLACEMENT_FIT: FirFit = { first: 2, free: 6, differences: 0 };
const VELOCITY_FIT: FirFit = { first: 0, free: 9, differences: 1 };
const ACCELERATION_FIT: FirFit = { first: 1, free: 6, differences: 2 };

/**
 * From program to motion at the internal rate. One recursion, common to all three, does what lies
 * low: the chain's high-pass and the bass and middle time constants, with one zero at DC,
 *
 *     q(n) = p(n) − (1 + zero)·p(n−1) + zero·p(n−2) − r1·q(n−1) − r2·q(n−2) − r3·q(n−3)
 *
 * and three short FIRs on q fitted to what is left of u, v and a: the treble time constant and the
 * integration or differentiation. u has no pole at DC that could drift, because the high-pass has
 * taken it.
 */
export interface MotionFilter {
  /** Numerator of the recursion, three taps. */
  readonly zeros: Float64Array;
  /** Denominator after its leading 1, three taps. */
  readonly poles: Float64Array;
  /** 6 taps. */
  readonly displacement: MotionFir;
  /** 10 taps, with a zero at DC. */
  readonly velocity: MotionFir;
  /** 8 taps, with two zeros at DC. */
  readonly acceleration: MotionFir;
}

/** The recursion by the bilinear transform; the high-pass's corner is prewarped. */
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
  const root = (seconds: number): number => (2 * rate * seconds - 1) / (2 * rate * seconds + 1);
  return {
    zeros: convolve([1, -1], [1, -root(BASS_SECONDS)]),
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
 * Least squares of the relative complex error; linear, since a FIR is linear in its taps.
 * @param first frames before the first tap
 */
function fitTaps(
  first: number,
  count: number,
  rate: Hertz,
  wanted: (frequency: Hertz) => Complex,
): Float64Array {
  // Entry (row, column) of the normal matrix is one of the distance between the two alone.
  const diagonals = new Float64Array(count);
  const right = new Float64Array(count);
  for (const { frequency, weight } of fitGrid(rate)) {
    const target = wanted(frequency);
    const squared = (weight / magnitude(target)) ** 2;
    const angle = (-2 * Math.PI * frequency) / rate;
    for (let row = 0; row < count; row++) {
      const phasor = unitPhasor(angle * (first + row));
      right[row]! += squared * (phasor.re * target.re + phasor.im * target.im);
      diagonals[row]! += squared * Math.cos(angle * row);
    }
  }
  const normal = Array.from({ length: count }, (_, row) =>
    Float64Array.from({ length: count }, (__, column) => diagonals[Math.abs(row - column)]!),
  );
  return solveSymmetric(normal, right);
}

/**
 * Designs the filter for an internal rate: within 0.008 dB (v 0.003 dB) and 0.04° of the
 * formula and a delay of MOTION_DELAY frames, from 20 Hz to 20 kHz.
 * @param rate 88.2 or 96 kHz
 * @param subsonic corner of the chain's high-pass
 * @param scale k: 45° peak velocity of one channel at full scale and 1 kHz, m/s
 * Formula: v = k·H·B·program, u = v/s, a = v·s; H from IEC 60098.
 */
export function designMotionFilter(rate: Hertz, subsonic: Hertz, scale: number): MotionFilter {
  const { zeros, poles } = designRecursion(rate, subsonic);
  const denominator = [1, ...poles];
  const wanted = (differences: number) => (frequency: Hertz) => {
    const s = laplace(frequency);
    const z1 = unitPhasor(-s.im / rate);
    const recursion = divide(polynomial(zeros, z1), polynomial(denominator, z1));
    const difference = { re: 1 - z1.re, im: -z1.im };
    let target = multiply(recordingCurve(frequency), butterworthHighPass2(frequency, subsonic));
    target = multiply(target, unitPhasor((-s.im / rate) * MOTION_DELAY));
    target = divide(divide(target, s), recursion);
    for (let n = 0; n < differences; n++) target = divide(multiply(target, s), difference);
    return target;
  };
  const designFir = ({ first, free, differences }: FirFit): MotionFir => {
    let taps = fitTaps(first, free, rate, wanted(differences));
    for (let n = 0; n < differences; n++) taps = convolve(taps, [1, -1]);
    return { first, taps: taps.map((tap) => tap * scale) };
  };
  return {
    zeros,
    poles,
    displacement: designFir(DISPLACEMENT_FIT),
    velocity: designFir(VELOCITY_FIT),
    acceleration: designFir(ACCELERATION_FIT),
  };
}

/** Motion of one wall, one entry a program frame, delay removed. */
export interface FilteredMotion {
  readonly displacement: Float64Array;
  readonly velocity: Float64Array;
  readonly acceleration: Float64Array;
}

/** Runs the filter from rest over a whole signal; the plain definition. */
export function filterMotion(program: Float64Array, filter: MotionFilter): FilteredMotion {
  const q = new Float64Array(program.length + MOTION_DELAY);
  const { zeros, poles } = filter;
  for (let n = 0; n < q.length; n++) {
    q[n] =
      zeros[0]! * (program[n] ?? 0) +
      zeros[1]! * (program[n - 1] ?? 0) +
      zeros[2]! * (program[n - 2] ?? 0) -
      poles[0]! * (q[n - 1] ?? 0) -
      poles[1]! * (q[n - 2] ?? 0) -
      poles[2]! * (q[n - 3] ?? 0);
  }
  const fir = ({ first, taps }: MotionFir): Float64Array =>
    program.map((_, n) =>
      taps.reduce((sum, tap, k) => sum + tap * (q[n + MOTION_DELAY - first - k] ?? 0), 0),
    );
  return {
    displacement: fir(filter.displacement),
    velocity: fir(filter.velocity),
    acceleration: fir(filter.acceleration),
  };
}
