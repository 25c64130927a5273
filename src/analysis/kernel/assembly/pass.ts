import { halveFirst, halveToBase } from './band-limit';
import { measureBins } from './bins';
import { doubleSteps } from './doubling';
import { LOW_CUT_DELAY, setStep, weighFrames } from './k-weighting';
import { differentiate } from './differentiate';
import { displace } from './displace';
import { endJumps, followJumps, forgetJumps } from './jumps';
import { followLow } from './low-windows';
import { programRoom, recurse } from './recursion';
import { forgetSilentRuns } from './silence';
import { bytesPerFrame, CHUNK_FRAMES, convertFrames, sourceBytes } from './source';
import { frameAt } from './vector';
import { startQuarters } from './walls';

/** Frames in hand between the stages, with room for one before them. */
const spare: usize = memory.data((CHUNK_FRAMES + 64) * 8, 16);
const frames: usize = spare + 16;
const silence: usize = memory.data(LOW_CUT_DELAY * 8, 16);

let halvings: i32 = 0;
/** Base-rate frames before the program that are still to come. */
let leadLeft: i32 = 0;
/** Base-rate frames of the program that are still to come. */
let programLeft: f64 = 0;
/** Base-rate frames that wait for another to be weighed with: 0 or 1. */
let single: i32 = 0;

/**
 * Begins with the lead.
 * @param leadBase frames of silence at the base rate
 * @param programBase frames of the program at the base rate
 * @param step frames of 100 ms at the base rate
 */
export function start(halvingCount: i32, leadBase: i32, programBase: f64, step: i32): void {
  halvings = halvingCount;
  leadLeft = leadBase;
  programLeft = programBase;
  setStep(step);
  startQuarters();
  pushSilence(<f64>(leadBase << halvings));
}

/** Takes raw frames; returns the first that is unfit, counted from the first of these, or −1. */
export function push(bytes: i32): i32 {
  const size = bytesPerFrame();
  const count = bytes / size;
  forgetJumps();
  forgetSilentRuns();
  for (let done = 0; done < count; done += CHUNK_FRAMES) {
    const chunk = min<i32>(CHUNK_FRAMES, count - done);
    const unfit = convertFrames(sourceBytes + <usize>(done * size), chunk, sourceRoom());
    if (unfit >= 0) return done + unfit;
    followJumps(sourceRoom(), chunk);
    pass(chunk);
  }
  return -1;
}

/** Silence after the program, frames of the source's rate; at most what fits the host's tables. */
export function finish(count: f64): void {
  forgetSilentRuns();
  endJumps();
  pushSilence(count);
}

function pushSilence(count: f64): void {
  for (let left = count; left > 0; left -= CHUNK_FRAMES) {
    const chunk = <i32>min<f64>(left, CHUNK_FRAMES);
    memory.fill(sourceRoom(), 0, <usize>chunk << 3);
    pass(chunk);
  }
}

/** Where frames of the source's rate are to be written. */
function sourceRoom(): usize {
  return halvings == 0 ? programRoom() : frames;
}

function pass(count: i32): void {
  let base = count;
  if (halvings == 2) base = halveFirst(frames, base, frames);
  if (halvings >= 1) base = halveToBase(frames, base, programRoom());
  weigh(base);
  recurse(base);
  doubleSteps();
  displace();
  followLow();
  differentiate();
  measureBins();
}

/** Weighs the program's own frames, not the silence around it, two at a time. */
function weigh(count: i32): void {
  const skipped = min<i32>(leadLeft, count);
  leadLeft -= skipped;
  const own = <i32>min<f64>(<f64>(count - skipped), programLeft);
  if (own == 0) return;
  programLeft -= <f64>own;
  // A frame that was left over still lies before the room for the new ones.
  const frames = frameAt(programRoom(), skipped - single);
  const ready = (own + single) & ~1;
  weighFrames(frames, ready);
  single = own + single - ready;
  // A last single frame completes no step of 100 ms.
  if (programLeft == 0) weighFrames(silence, LOW_CUT_DELAY);
}
