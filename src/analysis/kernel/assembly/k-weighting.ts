import { frameAt, left, right } from './vector';

/** Most 100 ms steps between two visits of the host. */
const STEP_CAPACITY: i32 = 1024;

/** b0 b1 b2 a1 a2 of the shelf, then of the low cut; each in both lanes. */
export const weightingSections: usize = memory.data(10 * 16, 16);
/** Power of the steps that are complete, channels apart: left, right, left … */
export const stepPowers: usize = memory.data(STEP_CAPACITY * 16, 16);
export let stepCount: i32 = 0;

let stepFrames: i32 = 4800;
let inStep: i32 = 0;
const power: usize = memory.data(16, 16);
/** Two delays of each section. */
const delays: usize = memory.data(4 * 16, 16);

export function setStep(frames: i32): void {
  stepFrames = frames;
}

export function takeSteps(): void {
  stepCount = 0;
}

/** Weights frames of the base rate and adds up their power. */
export function weighFrames(frames: usize, count: i32): void {
  const sections = weightingSections;
  let shelf1 = v128.load(delays, 0);
  let shelf2 = v128.load(delays, 16);
  let cut1 = v128.load(delays, 32);
  let cut2 = v128.load(delays, 48);
  let total = v128.load(power);
  for (let n = 0; n < count; n++) {
    const x = v128.load(frameAt(frames, n));
    const y = f64x2.add(f64x2.mul(v128.load(sections, 0), x), shelf1);
    shelf1 = f64x2.add(shelf2, f64x2.sub(
      f64x2.mul(v128.load(sections, 16), x), f64x2.mul(v128.load(sections, 48), y)));
    shelf2 = f64x2.sub(
      f64x2.mul(v128.load(sections, 32), x), f64x2.mul(v128.load(sections, 64), y));
    const w = f64x2.add(f64x2.mul(v128.load(sections, 80), y), cut1);
    cut1 = f64x2.add(cut2, f64x2.sub(
      f64x2.mul(v128.load(sections, 96), y), f64x2.mul(v128.load(sections, 128), w)));
    cut2 = f64x2.sub(
      f64x2.mul(v128.load(sections, 112), y), f64x2.mul(v128.load(sections, 144), w));
    total = f64x2.add(total, f64x2.mul(w, w));
    if (++inStep == stepFrames) {
      store<f64>(frameAt(stepPowers, stepCount), left(total) / stepFrames);
      store<f64>(frameAt(stepPowers, stepCount), right(total) / stepFrames, 8);
      stepCount++;
      inStep = 0;
      total = f64x2.splat(0);
    }
  }
  v128.store(delays, shelf1, 0);
  v128.store(delays, shelf2, 16);
  v128.store(delays, cut1, 32);
  v128.store(delays, cut2, 48);
  v128.store(power, total);
}
