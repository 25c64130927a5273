import { doubleSteps } from './half-band.js';
import { MOTION_DELAY, type MotionFilter } from './motion-filter.js';

/** Frames that moves add up over. */
const STEP_FRAMES = 32;

/** Motion of one wall, two entries a program frame, delay removed. */
export interface FilteredMotion {
  readonly displacement: Float64Array;
  readonly velocity: Float64Array;
  readonly acceleration: Float64Array;
}

/**
 * Runs the filter from rest over a whole signal; the plain definition, in the order in which it is
 * rounded.
 * @param program at the base rate
 */
export function filterMotion(program: Float64Array, filter: MotionFilter): FilteredMotion {
  const { levels, steps } = doubled(recurse(program, filter), filter);
  const moves = filterLate(steps, filter.displacement, 2 * program.length);
  const displacement = moveOn(moves, levels, filter.displacement);
  const after = (n: number, k: number): number => moves[n + 1 + k] ?? 0;
  const before = (n: number, k: number): number => moves[n - k] ?? 0;
  const { velocity, acceleration } = filter;
  const sumPair = (n: number, k: number): number =>
    f32(velocity[k]! * f32(after(n, k) + before(n, k)));
  const bendPair = (n: number, k: number): number =>
    f32(acceleration[k]! * f32(after(n, k) - before(n, k)));
  return {
    displacement,
    velocity: moves.map((_, n) =>
      f32(f32(sumPair(n, 0) + sumPair(n, 1)) + f32(sumPair(n, 2) + sumPair(n, 3))),
    ),
    acceleration: moves.map((_, n) => f32(f32(bendPair(n, 0) + bendPair(n, 1)) + bendPair(n, 2))),
  };
}

const f32 = Math.fround;

/** q at the internal rate, and what it differs by from its last. */
interface Doubled {
  readonly levels: Float64Array;
  readonly steps: Float64Array;
}

function doubled(q: Float64Array, { stepTaps }: MotionFilter): Doubled {
  const steps = doubleSteps(
    q.map((value, n) => f32(value - (q[n - 1] ?? 0))),
    stepTaps,
  );
  const levels = steps.map((step, n) => (n % 2 === 0 ? q[n / 2]! : q[(n - 1) / 2]! + step));
  return { levels, steps };
}

/**
 * q, two outputs at a time, both from the three before them, so that neither waits for the other; a
 * little longer than the program.
 */
function recurse(
  program: Float64Array,
  { zeros, poles, skips, stepTaps }: MotionFilter,
): Float64Array {
  const q = new Float64Array(program.length + (program.length % 2) + 2 * (stepTaps.length + 1));
  const at = (signal: Float64Array, n: number): number => signal[n] ?? 0;
  const input = (n: number): number =>
    at(program, n) + (zeros[0]! * at(program, n - 1) + zeros[1]! * at(program, n - 2));
  for (let n = 0; n < q.length; n += 2) {
    const [q1, q2, q3] = [at(q, n - 1), at(q, n - 2), at(q, n - 3)];
    q[n] = input(n) - poles[2]! * q3 - poles[1]! * q2 - poles[0]! * q1;
    const skipped = input(n + 1) - poles[0]! * input(n);
    q[n + 1] = skipped + skips[2]! * q3 + skips[1]! * q2 + skips[0]! * q1;
  }
  return q;
}

/**
 * Displacement by its moves, four at a time; before every step of 32 frames by the FIR itself, so
 * that no moves add up longer than a step.
 */
function moveOn(moves: Float64Array, levels: Float64Array, taps: Float32Array): Float64Array {
  const displacement = new Float64Array(moves.length + 3);
  const move = (n: number): number => moves[n] ?? 0;
  for (let n = 0; n < moves.length; n += 4) {
    const tapped = (k: number): number => taps[k]! * (levels[n - 1 + MOTION_DELAY - k] ?? 0);
    const atStep = (): number =>
      f32(tapped(0) + tapped(1) + (tapped(2) + tapped(3)) + (tapped(4) + tapped(5)));
    const last = n % STEP_FRAMES === 0 ? atStep() : displacement[n - 1]!;
    const two = f32(move(n) + move(n + 1));
    displacement[n] = f32(last + move(n));
    displacement[n + 1] = f32(last + two);
    displacement[n + 2] = f32(last + f32(two + move(n + 2)));
    displacement[n + 3] = f32(last + f32(two + f32(move(n + 2) + move(n + 3))));
  }
  return displacement.subarray(0, moves.length);
}

/** Six taps on a signal, with its delay removed. */
function filterLate(signal: Float64Array, taps: Float32Array, length: number): Float64Array {
  const filtered = new Float64Array(length);
  for (let n = 0; n < length; n++) {
    const tapped = (k: number): number => f32(taps[k]! * (signal[n + MOTION_DELAY - k] ?? 0));
    const early = f32(tapped(0) + tapped(1));
    const middle = f32(tapped(2) + tapped(3));
    filtered[n] = f32(f32(early + middle) + f32(tapped(4) + tapped(5)));
  }
  return filtered;
}
