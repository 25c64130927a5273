import { BINS_PER_QUARTER } from '../../../analysis/motion.js';
import { contactMask } from './contact-lift.js';
import { type BinMask, binsOf } from './deciding-bins.js';
import { integerCoder, lengthOf } from './integer-coder.js';
import type { KeptMotion, KeptWall, LeastClasses } from './kept-motion.js';
import { MOVED_WALLS } from './moved-wall-code.js';
import { codeHistogram } from './pooled-histogram.js';
import { type BitCoder, chances } from './range-coder.js';

/** Contexts of an integer by the length of another. */
const LENGTHS = 32;
/** The coarse codes are bytes: told apart by their upper bits. */
const COARSE = 16;

/**
 * Codes what is kept of a motion in place: what is written, or the room of `emptyKept` for what is
 * read. That it says for both, once, what comes after what, keeps them in step.
 */
export function codeMotion(coder: BitCoder, kept: KeptMotion): void {
  const { approachLoose: loose, lift, sink } = kept;
  codeMask(coder, loose.mask);
  codeBins(coder, loose.mask, loose.steps);
  codeNear(coder, kept);
  for (const { mask, steps } of [lift, sink]) {
    codeMask(coder, mask);
    codeBins(coder, mask, steps);
  }
  codeSmall(coder, loose.mask, kept.movedWalls, MOVED_WALLS, 1);
  codeSmall(coder, contactMask(loose.mask, lift.mask), kept.contactLift, COARSE, 256 / COARSE);
  for (const name of ['lateralMost', 'outwardMost', 'inwardMost', 'verticalAmplitude'] as const) {
    codeRow(coder, kept[name]);
  }
  codeChanges(coder, kept.strongestFrequency);
  codeWall(coder, kept.left, kept.leastClasses);
  codeWall(coder, kept.right, kept.leastClasses);
}

/** A bit is likely by its place in the quarter and the two bits before it. */
function codeMask(coder: BitCoder, mask: BinMask, known: BinMask = new Uint16Array(mask.length)) {
  const learning = chances(BINS_PER_QUARTER * 4);
  for (const quarter of mask.keys()) {
    const bits = (mask[quarter] ?? 0) ^ (known[quarter] ?? 0);
    let read = 0;
    for (let bin = 0; bin < BINS_PER_QUARTER; bin++) {
      const before = ((read << 2) >> bin) & 3;
      read |= coder.learned(learning, bin * 4 + before, (bits >> bin) & 1) << bin;
    }
    mask[quarter] = read ^ (known[quarter] ?? 0);
  }
}

function codeBins(coder: BitCoder, mask: BinMask, steps: Int32Array): void {
  const code = integerCoder(coder, LENGTHS);
  let before = 0;
  for (const bin of binsOf(mask)) {
    steps[bin] = code(lengthOf(Math.abs(before)), steps[bin] ?? 0);
    before = steps[bin] ?? 0;
  }
}

/** `approach` by how far it lies under `approachLoose`, where both are kept. */
function codeNear(coder: BitCoder, { approachLoose: loose, approach: near }: KeptMotion): void {
  codeMask(coder, near.mask, loose.mask);
  const code = integerCoder(coder, LENGTHS);
  let before = 0;
  for (const bin of binsOf(near.mask)) {
    const foretold = loose.steps[bin] ?? 0;
    const under = code(lengthOf(Math.abs(before)), foretold - (near.steps[bin] ?? 0));
    near.steps[bin] = foretold - under;
    before = under;
  }
}

/** Codes that are small by themselves, foretold by the one before. */
function codeSmall(
  coder: BitCoder,
  mask: BinMask,
  codes: Int32Array,
  contexts: number,
  width: number,
): void {
  const code = integerCoder(coder, contexts);
  let before = 0;
  for (const bin of binsOf(mask)) {
    codes[bin] = code(Math.floor(before / width), codes[bin] ?? 0);
    before = codes[bin] ?? 0;
  }
}

function codeRow(coder: BitCoder, row: Int32Array): void {
  const code = integerCoder(coder, LENGTHS);
  for (const at of row.keys()) {
    row[at] = code(lengthOf(Math.abs(row[at - 1] ?? 0)), row[at] ?? 0);
  }
}

/** By the change from one to the next. */
function codeChanges(coder: BitCoder, row: Int32Array): void {
  const code = integerCoder(coder, LENGTHS);
  let change = 0;
  for (const at of row.keys()) {
    const before = row[at - 1] ?? 0;
    change = code(lengthOf(Math.abs(change)), (row[at] ?? 0) - before);
    row[at] = before + change;
  }
}

function codeWall(coder: BitCoder, wall: KeptWall, least: LeastClasses): void {
  codeChanges(coder, wall.velocityPeak);
  codeChanges(coder, wall.accelerationPeak);
  codeChanges(coder, wall.velocityMeanSquare);
  codeChanges(coder, wall.accelerationMeanSquare);
  codeHistogram(coder, wall.edgeVelocity, least.edgeVelocity, wall.velocityPeak);
  codeHistogram(coder, wall.acceleration, least.acceleration, wall.accelerationPeak);
}
