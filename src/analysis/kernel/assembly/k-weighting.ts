import { frameAt, left, right, wideFrame } from './vector';

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
/** Two inputs back, two outputs of the shelf back, two of the low cut back. */
const delays: usize = memory.data(6 * 16, 16);

export function setStep(frames: i32): void {
  stepFrames = frames;
}

export function takeSteps(): void {
  stepCount = 0;
}

/** Weights frames of the base rate and adds up their power. */
export function weighFrames(frames: usize, count: i32): void {
  const shelf = weightingSections;
  const lowCut = weightingSections + 5 * 16;
  let x1 = v128.load(delays, 0);
  let x2 = v128.load(delays, 16);
  let y1 = v128.load(delays, 32);
  let y2 = v128.load(delays, 48);
  let lastChange = f64x2.sub(y1, y2);
  let w1 = v128.load(delays, 64);
  let w2 = v128.load(delays, 80);
  let total = v128.load(power);
  for (let n = 0; n < count; n++) {
    const x = wideFrame(frameAt(frames, n));
    // What waits for the last output comes last. The low cut's zeros are a second difference.
    const inputs = f64x2.add(
      f64x2.mul(v128.load(shelf, 0), x), f64x2.mul(v128.load(shelf, 16), x1));
    const older = f64x2.sub(
      f64x2.mul(v128.load(shelf, 32), x2), f64x2.mul(v128.load(shelf, 64), y2));
    const y = f64x2.sub(f64x2.add(inputs, older), f64x2.mul(v128.load(shelf, 48), y1));
    const change = f64x2.sub(y, y1);
    const second = f64x2.sub(f64x2.sub(change, lastChange), f64x2.mul(v128.load(lowCut, 64), w2));
    const w = f64x2.sub(second, f64x2.mul(v128.load(lowCut, 48), w1));
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    lastChange = change;
    w2 = w1;
    w1 = w;
    total = f64x2.add(total, f64x2.mul(w, w));
    if (++inStep == stepFrames) {
      const out = stepPowers + (<usize>stepCount << 4);
      store<f64>(out, left(total) / stepFrames);
      store<f64>(out, right(total) / stepFrames, 8);
      stepCount++;
      inStep = 0;
      total = f64x2.splat(0);
    }
  }
  v128.store(delays, x1, 0);
  v128.store(delays, x2, 16);
  v128.store(delays, y1, 32);
  v128.store(delays, y2, 48);
  v128.store(delays, w1, 64);
  v128.store(delays, w2, 80);
  v128.store(power, total);
}
