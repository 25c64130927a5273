import { CHUNK_FRAMES } from './source';
import { frameAt, left, moveBack, right, secondOf } from './vector';

/** Most 100 ms steps between two visits of the host. */
const STEP_CAPACITY: i32 = 1024;

/**
 * b0 b1 b2 a1 a2 and two skips, of the shelf in the lower two lanes, of the low cut in the upper
 * two; f32.
 */
export const weightingSections: usize = memory.data(7 * 16, 16);
/** Power of the steps that are complete, channels apart: left, right, left … */
export const stepPowers: usize = memory.data(STEP_CAPACITY * 16, 16);
export let stepCount: i32 = 0;

let stepFrames: i32 = 4800;
/** Magnitude that two outputs must reach, one of them, lest a step ends with silence. */
const SILENCE: f32 = 1e-18;
/** The low cut is so many frames behind the shelf, which it takes its own from, so as not to wait. */
export const LOW_CUT_DELAY: i32 = 8;
/** What the shelf made: of the frames that the low cut has not had yet, then of the new ones. */
const shelved: usize = memory.data((CHUNK_FRAMES + LOW_CUT_DELAY + 8) * 8, 16);
/** Frames of the step in hand that are weighed. */
let inStep: i32 = -LOW_CUT_DELAY;
const power: usize = memory.data(16, 16);
/** The last two inputs and outputs of the two sections. */
const delays: usize = memory.data(4 * 16, 16);

export function setStep(frames: i32): void {
  stepFrames = frames;
}

export function takeSteps(): void {
  stepCount = 0;
}

/** Weighs frames of the base rate, an even number as a step has, and adds up their power. */
export function weighFrames(frames: usize, count: i32): void {
  for (let done = 0; done < count; ) {
    const run = min<i32>(count - done, stepFrames - inStep);
    weighRun(frameAt(frames, done), frameAt(shelved, done), run);
    done += run;
    inStep += run;
    if (inStep == stepFrames) endStep();
  }
  moveBack(shelved, frameAt(shelved, count), LOW_CUT_DELAY << 3);
}

function endStep(): void {
  const total = v128.load(power);
  const out = stepPowers + (<usize>stepCount << 4);
  store<f64>(out, left(total) / stepFrames);
  store<f64>(out, right(total) / stepFrames, 8);
  stepCount++;
  inStep = 0;
  v128.store(power, f64x2.splat(0));
  forgetSilence();
}

/** Ends what dies away in silence, before it comes to subnormal numbers, which are slow. */
function forgetSilence(): void {
  const last = v128.load(delays, 32);
  const before = v128.load(delays, 48);
  const silence = f32x4.splat(SILENCE);
  const isHeard = v128.or(
    f32x4.ge(f32x4.abs(last), silence), f32x4.ge(f32x4.abs(before), silence));
  v128.store(delays, v128.and(last, isHeard), 32);
  v128.store(delays, v128.and(before, isHeard), 48);
}

/**
 * Both sections at once: the shelf takes two frames, the low cut what the shelf made of two before
 * them. Both outputs come from the same past, the latest of it last, so that neither waits.
 * @param shelf what the shelf made of LOW_CUT_DELAY frames before, and room behind it for the new
 */
function weighRun(frames: usize, shelf: usize, count: i32): void {
  let x1 = v128.load(delays, 0);
  let x2 = v128.load(delays, 16);
  let y1 = v128.load(delays, 32);
  let y2 = v128.load(delays, 48);
  let total = v128.load(power);
  for (let n = 0; n < count; n += 2) {
    // Loaded in each round: with these in registers the total is kept in memory, and waited for.
    const b0 = v128.load(weightingSections, 0);
    const b1 = v128.load(weightingSections, 16);
    const b2 = v128.load(weightingSections, 32);
    const a1 = v128.load(weightingSections, 48);
    const a2 = v128.load(weightingSections, 64);
    const skip1 = v128.load(weightingSections, 80);
    const skip2 = v128.load(weightingSections, 96);
    const pair = v128.load(frameAt(frames, n));
    const shelfPair = v128.load(frameAt(shelf, n));
    const x = v128.shuffle<i64>(pair, shelfPair, 0, 2);
    const nextX = v128.shuffle<i64>(pair, shelfPair, 1, 3);
    const input = weighed(b0, x, b1, x1, b2, x2);
    const nextInput = weighed(b0, nextX, b1, x, b2, x1);
    const y = f32x4.sub(f32x4.sub(input, f32x4.mul(a2, y2)), f32x4.mul(a1, y1));
    const skipped = f32x4.sub(nextInput, f32x4.mul(a1, input));
    const next = f32x4.add(f32x4.add(skipped, f32x4.mul(skip2, y2)), f32x4.mul(skip1, y1));
    v128.store(frameAt(shelf, n), v128.shuffle<i64>(y, next, 0, 2), LOW_CUT_DELAY * 8);
    total = f64x2.add(total, secondOf(f32x4.add(f32x4.mul(y, y), f32x4.mul(next, next))));
    x2 = x;
    x1 = nextX;
    y2 = y;
    y1 = next;
  }
  v128.store(delays, x1, 0);
  v128.store(delays, x2, 16);
  v128.store(delays, y1, 32);
  v128.store(delays, y2, 48);
  v128.store(power, total);
}

// @ts-ignore: decorator
@inline
function weighed(b0: v128, x: v128, b1: v128, x1: v128, b2: v128, x2: v128): v128 {
  return f32x4.add(f32x4.add(f32x4.mul(b0, x), f32x4.mul(b1, x1)), f32x4.mul(b2, x2));
}
