import type { Settings } from '../settings.js';
import { bandLimitOf, LEAD_BASE_FRAMES, LEAD_FRAMES } from './band-limit.js';
import { decimateByTriangle, LOW_BAND_DECIMATION } from './decimate.js';
import { type Frames, maximumBetween } from './interpolate.js';
import { joinParts } from './join-parts.js';
import { JumpList, type Jumps } from './jump-list.js';
import { JumpFinder } from './jumps.js';
import { weigh } from './k-weighting.js';
import { looseMaximumBetween } from './loose-approach.js';
import { STEPS_A_SECOND } from './loudness.js';
import { LowBandMeter } from './low-band.js';
import { BINS_PER_QUARTER, type MotionSummary } from './motion.js';
import type { BinMaxima, PartMotion } from './part-motion.js';
import { AFTER_SECONDS, clockOfPart, type Part, wholeProgram } from './parts.js';
import { plainWalls } from './plain-chain.js';
import { measureWall } from './plain-wall.js';
import { type Program, programOf } from './program.js';
import { sumProgram } from './program-checks.js';
import type { SampleFormat } from './sample-format.js';
import { binEdge, type SpiralClock } from './spiral-clock.js';
import { countedSteps } from './step-powers.js';
import { mapStereo, type Stereo } from './stereo.js';
import { delaySignal } from './turn-delay.js';

/**
 * The motion summary of a whole program in memory: the readable definition of what the one pass
 * over a file computes, and the tests' oracle for it.
 * @param program at a rate of the 44.1 or 48 kHz family
 */
export function plainMotion(
  program: Stereo,
  format: SampleFormat,
  settings: Settings,
): MotionSummary {
  const frames = program.left.length;
  const whole = programOf(format, frames);
  const part = wholeProgram(whole, settings);
  return joinParts([plainPart(program, whole, part, settings)], format, frames, settings);
}

/**
 * The same of one part of a program.
 * @param heard the program from the part's `readFrom` to its `readUntil`, and what a change of rate
 *   may have left after its end
 */
export function plainPart(
  heard: Stereo,
  program: Program,
  part: Part,
  settings: Settings,
): PartMotion {
  const { format } = program;
  const limit = bandLimitOf(format.sampleRate);
  const clock = clockOfPart(part, program, settings);
  const quarterCount = part.endQuarter - part.firstQuarter;

  const stretch = 2 ** limit.halvings;
  const heardBase = Math.ceil(heard.left.length / stretch);
  const framesLeft = program.frames - part.readFrom;
  const weighedBase = Math.min(heardBase, Math.ceil(framesLeft / stretch));
  const lastEdge = binEdge(clock, quarterCount * BINS_PER_QUARTER);
  const after = Math.ceil((lastEdge + AFTER_SECONDS * clock.rate) / 2);
  const baseLength = LEAD_BASE_FRAMES + Math.max(after, heardBase);
  const { base, high, doubled, left, right } = plainWalls(heard, baseLength, limit, settings);
  const walls = { left: left.displacement, right: right.displacement };

  // What the half-bands make of silence before and after the program counts with its ends.
  const counted = [part.firstFrame, part.endFrame].map(
    (frame) => (frame - part.readFrom) / stretch,
  );
  const from = part.firstFrame === 0 ? 0 : LEAD_BASE_FRAMES + counted[0]!;
  const until = part.endFrame === program.frames ? baseLength : LEAD_BASE_FRAMES + counted[1]!;
  const ownPower = (channel: Float64Array): number => power(channel.subarray(from, until));
  const end = part.endFrame - part.readFrom;
  return {
    part,
    bins: edgeMaxima(walls, clock, quarterCount),
    left: measureWall(left, clock, quarterCount),
    right: measureWall(right, clock, quarterCount),
    lowBand: lowBandOf(walls, clock, settings, quarterCount),
    sums: sumProgram(
      mapStereo(heard, (channel) => channel.subarray(0, end)),
      format,
      part.firstFrame - part.readFrom,
      part.readFrom,
    ),
    truePeak: [truePeak(doubled.left, from, until), truePeak(doubled.right, from, until)],
    ultrasonicPower: [ownPower(high.left), ownPower(high.right)],
    stepPowers: countedSteps(
      stepPowersOf(
        mapStereo(base, (channel) =>
          channel.subarray(LEAD_BASE_FRAMES, LEAD_BASE_FRAMES + weighedBase),
        ),
        limit.baseRate,
      ),
      part,
      format,
    ),
    jumps: jumpsIn(heard, program, part),
  };
}

function jumpsIn(heard: Stereo, program: Program, part: Part): Jumps {
  const list = new JumpList(program, part);
  const finder = new JumpFinder(part.readFrom, (jump) => list.add(jump));
  finder.push(heard);
  finder.finish();
  return list.finish();
}

/** Σx², each of them in f32. */
function power(signal: Float64Array): number {
  return signal.reduce((sum, value) => sum + Math.fround(value * value), 0);
}

/** Σx² of a whole number of pairs, each pair in f32. */
function pairedPower(signal: Float64Array): number {
  let sum = 0;
  for (let n = 0; n < signal.length; n += 2) {
    const [one, next] = [signal[n]!, signal[n + 1]!];
    sum += Math.fround(Math.fround(one * one) + Math.fround(next * next));
  }
  return sum;
}

/** A signal by its frames from the first of the program on, times a factor. */
function framesOf(signal: Float64Array, factor = 1): Frames {
  return (frame) => factor * (signal[frame + LEAD_FRAMES] ?? 0);
}

/** The maxima per bin of everything that is made of the two displacements. */
function edgeMaxima(walls: Stereo, clock: SpiralClock, quarterCount: number): BinMaxima {
  const { left, right } = walls;
  const { turnFrames, slackFrames } = clock;
  const closingAt = (delay: number): Frames => {
    const before = delaySignal(left, delay);
    return framesOf(right.map((value, n) => Math.SQRT2 * (value - before[n]!)));
  };
  const vertical = left.map((value, n) => (value - right[n]!) / Math.SQRT2);
  const sideways = left.map((value, n) => (value + right[n]!) / Math.SQRT2);
  const facing = {
    outer: framesOf(right, Math.SQRT2),
    inner: framesOf(left, -Math.SQRT2),
    turn: turnFrames,
    slack: slackFrames,
    earliest: closingAt(turnFrames + slackFrames),
    latest: closingAt(turnFrames - slackFrames),
  };
  const perBin = (
    maximum: (from: number, until: number, bin: number) => number,
    dilation = 0,
  ): Float64Array =>
    Float64Array.from({ length: quarterCount * BINS_PER_QUARTER }, (_, bin) =>
      maximum(binEdge(clock, bin) - dilation, binEdge(clock, bin + 1) + dilation, bin),
    );
  const maximumOf = (signal: Frames) => (from: number, until: number) =>
    maximumBetween(signal, from, until);
  const approach = perBin(maximumOf(closingAt(turnFrames)));
  const [outwards, inwards] = [framesOf(sideways), framesOf(sideways, -1)];
  return {
    approach,
    approachLoose:
      slackFrames === 0
        ? approach
        : perBin((from, until, bin) => looseMaximumBetween(facing, from, until, approach[bin]!)),
    lift: perBin(maximumOf(framesOf(vertical))),
    sink: perBin(maximumOf(framesOf(vertical, -1))),
    lateral: perBin((from, until) =>
      Math.max(maximumBetween(outwards, from, until), maximumBetween(inwards, from, until)),
    ),
    outward: perBin(maximumOf(facing.outer), slackFrames),
    inward: perBin(maximumOf(facing.inner), slackFrames),
  };
}

function lowBandOf(
  walls: Stereo,
  clock: SpiralClock,
  settings: Settings,
  quarterCount: number,
): MotionSummary['lowBand'] {
  const meter = new LowBandMeter(clock, settings.lowBandHz, quarterCount);
  const lead = LEAD_FRAMES / LOW_BAND_DECIMATION;
  const left = decimateByTriangle(walls.left).subarray(lead);
  const right = decimateByTriangle(walls.right).subarray(lead);
  meter.push(Array.from(left).flatMap((value, n) => [value, right[n]!]));
  return meter.finish();
}

/**
 * Largest magnitude between two places, between frames too.
 * @param from base-rate frames, counted from the start of the lead
 */
function truePeak(signal: Float64Array, from: number, until: number): number {
  const first = 2 * from - LEAD_FRAMES;
  const end = Math.min(2 * until - LEAD_FRAMES, signal.length - LEAD_FRAMES - 1);
  return Math.max(
    maximumBetween(framesOf(signal), first, end),
    maximumBetween(framesOf(signal, -1), first, end),
  );
}

/** K-weighted power of every whole 100 ms of the base-rate program: left, right, left … */
function stepPowersOf(base: Stereo, rate: number): number[] {
  const step = rate / STEPS_A_SECOND;
  const weighted = mapStereo(base, (channel) => weigh(channel, rate, step));
  const powers: number[] = [];
  for (let end = step; end <= weighted.left.length; end += step) {
    powers.push(pairedPower(weighted.left.subarray(end - step, end)) / step);
    powers.push(pairedPower(weighted.right.subarray(end - step, end)) / step);
  }
  return powers;
}
