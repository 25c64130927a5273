import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Settings } from '../settings.js';
import type { Metres, Seconds } from '../units.js';
import { spiralRadius } from './disc.js';
import type { SideForecast } from './forecast-types.js';

/** The centre line of the groove that the lathe cuts, from the start of the program to its end. */
export interface ExecutedSpiral {
  /** At the start of each quarter turn and at the end of the last, m. */
  readonly radius: Float64Array;
  readonly quarterSeconds: Seconds;
  readonly durationSeconds: Seconds;
}

/** The spiral of whichever plan the lathe executes: the machine's, the plan's, or base pitch. */
export function executedSpiral(forecast: SideForecast, settings: Settings): ExecutedSpiral {
  const { durationSeconds, turns, quarters } = forecast;
  const pitch = {
    machine: quarters.machinePitch,
    plan: quarters.pitch,
    fixed: quarters.fixedPitch,
  }[forecast.executes];
  return {
    radius: spiralRadius(pitch, 0, settings.startDiameter / 2),
    // From the turns, since a measured speed is rounded to the rate's frames where it can be.
    quarterSeconds: durationSeconds / (QUARTERS_PER_TURN * turns),
    durationSeconds,
  };
}

/**
 * Diameter at a program time, 2·(r0 − ∫p n dt): linear inside a quarter turn, over which the pitch
 * is held.
 * @returns null outside of the program, where the pitch is not told; negative past the centre
 */
export function diameterAt(spiral: ExecutedSpiral, atSeconds: Seconds): Metres | null {
  const { radius, quarterSeconds, durationSeconds } = spiral;
  if (atSeconds < 0 || atSeconds > durationSeconds) return null;
  if (radius.length < 2 || durationSeconds === 0) return 2 * radius[0]!;
  const position = atSeconds / quarterSeconds;
  const quarter = Math.min(Math.floor(position), radius.length - 2);
  const begins = radius[quarter]!;
  return 2 * (begins + (radius[quarter + 1]! - begins) * (position - quarter));
}

/**
 * Program time at which the spiral comes down to a diameter.
 * @returns null if the program ends further out; 0 if it starts there or further in
 */
export function timeAtDiameter(spiral: ExecutedSpiral, diameter: Metres): Seconds | null {
  const { radius, quarterSeconds, durationSeconds } = spiral;
  const passed = radius.findIndex((each) => 2 * each <= diameter);
  if (passed < 0) return null;
  if (passed === 0) return 0;
  const before = radius[passed - 1]!;
  const share = (before - diameter / 2) / (before - radius[passed]!);
  const atSeconds = (passed - 1 + share) * quarterSeconds;
  return atSeconds <= durationSeconds ? atSeconds : null;
}
