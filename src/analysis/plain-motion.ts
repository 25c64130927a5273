import type { Settings } from '../settings.js';
import {
  type BandLimit,
  bandLimitOf,
  FIRST_HALVING_TAPS,
  LEAD_BASE_FRAMES,
  LEAD_FRAMES,
} from './band-limit.js';
import { designHighPass, filterBiquad } from './biquad.js';
import { decimateByTriangle, LOW_BAND_DECIMATION } from './decimate.js';
import { applyElliptical } from './elliptical.js';
import { doubleRate, halveRate } from './half-band.js';
import { type Frames, maximumBetween } from './interpolate.js';
import { designKWeighting } from './k-weighting.js';
import { looseMaximumBetween } from './loose-approach.js';
import { integratedLoudness } from './loudness.js';
import { LowBandMeter } from './low-band.js';
import { BINS_PER_QUARTER, type MotionSummary } from './motion.js';
import { designMotionFilter, filterMotion } from './motion-filter.js';
import { measureWall } from './plain-wall.js';
import { programChecks, sumProgram } from './program-checks.js';
import { fullScaleVelocity, wire, wiringOf } from './program-level.js';
import type { SampleFormat } from './sample-format.js';
import { binEdge, type SpiralClock, spiralClock, summaryQuarters } from './spiral-clock.js';
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
  const limit = bandLimitOf(format.sampleRate);
  const clock = spiralClock(settings, limit.internalRate);
  const durationSeconds = program.left.length / format.sampleRate;
  const quarterCount = summaryQuarters(clock, durationSeconds);

  const internalFrames =
    2 * LEAD_FRAMES + Math.ceil(binEdge(clock, quarterCount * BINS_PER_QUARTER));
  const stretch = 2 ** limit.halvings;
  const { base, ultrasonicPower } = toBaseRate(
    mapStereo(program, (channel) =>
      surround(channel, LEAD_BASE_FRAMES * stretch, Math.ceil(internalFrames / 2) * stretch),
    ),
    limit,
  );
  const doubled = mapStereo(base, (channel) => doubleRate(channel, limit.bandEndTaps));
  const programBase = mapStereo(base, (channel) =>
    channel.subarray(LEAD_BASE_FRAMES, LEAD_BASE_FRAMES + Math.ceil(program.left.length / stretch)),
  );
  const corner = settings.subsonicHz / settings.speedFactor;
  const filter = designMotionFilter(clock.rate, corner, fullScaleVelocity(settings));
  const cut = ellipticalOf(wire(doubled, wiringOf(settings)), settings, clock);
  const left = filterMotion(cut.left, filter);
  const right = filterMotion(cut.right, filter);

  return {
    turnSeconds: clock.turnSeconds,
    durationSeconds,
    quarterCount,
    ...edgeMaxima({ left: left.displacement, right: right.displacement }, clock, quarterCount),
    left: measureWall(left, clock, quarterCount),
    right: measureWall(right, clock, quarterCount),
    lowBand: lowBandOf(
      { left: left.displacement, right: right.displacement },
      clock,
      settings,
      quarterCount,
    ),
    program: programChecks(sumProgram(program, format), format, {
      truePeak: [truePeak(doubled.left), truePeak(doubled.right)],
      loudnessLufs: loudnessOf(programBase, limit.baseRate, format.channels),
      ultrasonicMeanSquare: ultrasonicPower / programBase.left.length,
    }),
  };
}

/** Halves the rate; also the power at the base rate that this kept out, the larger channel's. */
function toBaseRate(program: Stereo, limit: BandLimit): { base: Stereo; ultrasonicPower: number } {
  let base = program;
  let ultrasonicPower = 0;
  for (let stage = limit.halvings; stage > 0; stage--) {
    const taps = stage === 1 ? limit.bandEndTaps : FIRST_HALVING_TAPS;
    const [left, right] = [halveRate(base.left, taps), halveRate(base.right, taps)];
    if (stage === 1) ultrasonicPower = Math.max(power(left.high), power(right.high));
    base = { left: left.low, right: right.low };
  }
  return { base, ultrasonicPower };
}

function power(signal: Float64Array): number {
  return signal.reduce((sum, value) => sum + value * value, 0);
}

/** A signal after some frames of silence, and silence after it up to a length. */
function surround(signal: Float64Array, before: number, length: number): Float64Array {
  const longer = new Float64Array(length);
  longer.set(signal, before);
  return longer;
}

function ellipticalOf(program: Stereo, settings: Settings, clock: SpiralClock): Stereo {
  if (settings.ellipticalHz === null) return program;
  const corner = settings.ellipticalHz / settings.speedFactor;
  return applyElliptical(program, designHighPass(settings.ellipticalOrder, corner, clock.rate));
}

/** A signal by its frames from the first of the program on, times a factor. */
function framesOf(signal: Float64Array, factor = 1): Frames {
  return (frame) => factor * (signal[frame + LEAD_FRAMES] ?? 0);
}

type EdgeMaxima = Pick<
  MotionSummary,
  'approach' | 'approachLoose' | 'lift' | 'sink' | 'lateral' | 'outward' | 'inward'
>;

/** The maxima per bin of everything that is made of the two displacements. */
function edgeMaxima(walls: Stereo, clock: SpiralClock, quarterCount: number): EdgeMaxima {
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

/** Largest magnitude, between frames too. */
function truePeak(signal: Float64Array): number {
  const end = signal.length - LEAD_FRAMES - 1;
  return Math.max(
    maximumBetween(framesOf(signal), 0, end),
    maximumBetween(framesOf(signal, -1), 0, end),
  );
}

/** Integrated loudness of the base-rate program; a one-channel file counts its channel once. */
function loudnessOf(base: Stereo, rate: number, channels: 1 | 2): number | null {
  const [shelf, lowCut] = designKWeighting(rate);
  const weighted = mapStereo(base, (channel) => filterBiquad(filterBiquad(channel, shelf), lowCut));
  const step = rate / 10;
  const powers: number[] = [];
  for (let end = step; end <= weighted.left.length; end += step) {
    const left = power(weighted.left.subarray(end - step, end)) / step;
    const right = power(weighted.right.subarray(end - step, end)) / step;
    powers.push(channels === 1 ? left : left + right);
  }
  return integratedLoudness(powers);
}
