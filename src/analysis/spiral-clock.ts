import type { Settings } from '../settings.js';
import type { Hertz, Seconds } from '../units.js';
import { BINS_PER_QUARTER, begun, QUARTERS_PER_TURN } from './motion.js';

/** Where turns, quarters and bins lie among the frames of the internal rate. */
export interface SpiralClock {
  readonly rate: Hertz;
  /** One turn, frames; whole where rate and speed make it so, else with its fraction. */
  readonly turnFrames: number;
  readonly turnSeconds: Seconds;
  /** speedTolerance·T, frames. */
  readonly slackFrames: number;
  /** Quarter of the program that is quarter 0 here, and frame of the program that is frame 0. */
  readonly firstQuarter: number;
  readonly firstFrame: number;
}

/** A turn that should be whole must not end a rounding error beside a frame. */
function snap(frames: number): number {
  const whole = Math.round(frames);
  return Math.abs(frames - whole) < 1e-6 ? whole : frames;
}

/** The clock of a whole program. */
export function spiralClock(settings: Settings, rate: Hertz): SpiralClock {
  const turnFrames = snap((rate * 60) / settings.rpm);
  return {
    rate,
    turnFrames,
    turnSeconds: turnFrames / rate,
    slackFrames: settings.speedTolerance * turnFrames,
    firstQuarter: 0,
    firstFrame: 0,
  };
}

/** Length of a bin, frames. */
export function binFrames(clock: SpiralClock): number {
  return clock.turnFrames / (QUARTERS_PER_TURN * BINS_PER_QUARTER);
}

/** Where a bin begins, in frames. */
export function binEdge(clock: SpiralClock, bin: number): number {
  return (clock.firstQuarter * BINS_PER_QUARTER + bin) * binFrames(clock) - clock.firstFrame;
}

/** Quarters of a summary: those of all begun turns and of one turn of silence after them. */
export function summaryQuarters(clock: SpiralClock, durationSeconds: Seconds): number {
  return QUARTERS_PER_TURN * (begun(durationSeconds / clock.turnSeconds) + 1);
}
