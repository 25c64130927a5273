import type { Settings } from '../settings.js';
import type { Hertz } from '../units.js';
import { type BandLimit, FIRST_HALVING_TAPS, LEAD_BASE_FRAMES } from './band-limit.js';
import { designHighPass } from './biquad.js';
import { applyElliptical } from './elliptical.js';
import { type FilteredMotion, filterMotion } from './filter-motion.js';
import { doubleRate, halveRate } from './half-band.js';
import { designMotionFilter } from './motion-filter.js';
import { fullScaleVelocity, wire, wiringOf } from './program-level.js';
import { mapStereo, type Stereo } from './stereo.js';

/** What becomes of a program on its way to the walls; all begins with the lead. */
interface PlainWalls {
  readonly base: Stereo;
  /** What the last halving kept out, at the base rate; empty without one. */
  readonly high: Stereo;
  /** At the internal rate. */
  readonly doubled: Stereo;
  readonly left: FilteredMotion;
  readonly right: FilteredMotion;
}

/**
 * Moves the walls by a program, from rest, with silence before and after it.
 * @param baseLength frames of the base rate in all, the lead among them
 */
export function plainWalls(
  program: Stereo,
  baseLength: number,
  limit: BandLimit,
  settings: Settings,
): PlainWalls {
  const stretch = 2 ** limit.halvings;
  const { base, high } = toBaseRate(
    mapStereo(program, (channel) =>
      surround(channel, LEAD_BASE_FRAMES * stretch, baseLength * stretch),
    ),
    limit,
  );
  const doubled = mapStereo(base, (channel) => doubleRate(channel, limit.bandEndTaps));
  const corner = settings.subsonicHz / settings.speedFactor;
  const filter = designMotionFilter(limit.internalRate, corner, fullScaleVelocity(settings));
  const cut = ellipticalOf(wire(base, wiringOf(settings)), settings, limit.baseRate);
  return {
    base,
    high,
    doubled,
    left: filterMotion(cut.left, filter),
    right: filterMotion(cut.right, filter),
  };
}

/** A signal in f32 after some frames of silence, and silence after it up to a length. */
function surround(signal: Float64Array, before: number, length: number): Float64Array {
  const longer = new Float64Array(length);
  longer.set(signal.map(Math.fround), before);
  return longer;
}

/** Halves the rate; also what the last halving kept out, empty without one. */
function toBaseRate(program: Stereo, limit: BandLimit): { base: Stereo; high: Stereo } {
  let base = program;
  let high: Stereo = { left: new Float64Array(0), right: new Float64Array(0) };
  for (let stage = limit.halvings; stage > 0; stage--) {
    const taps = stage === 1 ? limit.bandEndTaps : FIRST_HALVING_TAPS;
    const [left, right] = [halveRate(base.left, taps), halveRate(base.right, taps)];
    high = { left: left.high, right: right.high };
    base = { left: left.low, right: right.low };
  }
  return { base, high };
}

function ellipticalOf(program: Stereo, settings: Settings, rate: Hertz): Stereo {
  if (settings.ellipticalHz === null) return program;
  const corner = settings.ellipticalHz / settings.speedFactor;
  return applyElliptical(program, designHighPass(settings.ellipticalOrder, corner, rate));
}
