import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import { bandLimitOf, isFamilyRate } from './band-limit.js';
import { STEPS_A_SECOND } from './loudness.js';
import { begun, QUARTERS_PER_TURN } from './motion.js';
import { CONVERTED_RATE, type Program, programOf } from './program.js';
import type { SampleFormat } from './sample-format.js';
import { settlingSeconds } from './settling.js';
import { type SpiralClock, spiralClock, summaryQuarters } from './spiral-clock.js';

/**
 * A stretch of a program that is measured by itself. All frames are the source's, counted from the
 * program's first.
 */
export interface Part {
  /** The quarters that it measures, and the one after them. */
  readonly firstQuarter: number;
  readonly endQuarter: number;
  /**
   * The frames that it counts in what is said of the whole program, and the one after them: whole
   * 100 ms, but for the program's end. Parts count every frame once.
   */
  readonly firstFrame: number;
  readonly endFrame: number;
  /** The frames that it must hear for this, and the one after them. */
  readonly readFrom: number;
  readonly readUntil: number;
}

/** What a part is meant to last. Long enough that what is heard twice costs little. */
const PART_SECONDS: Seconds = 120;
/**
 * Parts begin to hear at multiples of this, so that a part's frames of the low band and its 100 ms
 * of loudness are those of the whole: it is a whole number of both at 44.1 and at 48 kHz.
 */
const GRID_SECONDS: Seconds = 0.8;
/** More than the taps of the interpolator and of the half-bands reach back beyond one turn. */
const BEFORE_SECONDS: Seconds = 0.01;
/** More than the taps and the low band's last window reach beyond the last quarter. */
export const AFTER_SECONDS: Seconds = 0.25;

/**
 * Cuts a program at whole quarters into equal parts, an even number of them so that two workers
 * share evenly: by the program and the settings alone, whoever works on it. A program that is
 * shorter than a part, or at a rate of neither family, stays whole.
 */
export function partsOf(
  format: SampleFormat,
  frames: number,
  settings: Settings,
  partSeconds: Seconds = PART_SECONDS,
): readonly Part[] {
  const whole = wholeProgram(programOf(format, frames), settings);
  const seconds = frames / format.sampleRate;
  if (!isFamilyRate(format.sampleRate) || seconds < partSeconds) return [whole];
  const pairs = Math.max(1, Math.round(seconds / (2 * partSeconds)));
  return cutPart(whole, 2 * pairs, programOf(format, frames), settings);
}

/** All of a program as one part. */
export function wholeProgram(program: Program, settings: Settings): Part {
  const { format, frames, durationSeconds } = program;
  const endQuarter = summaryQuarters(clockOf(format, settings), durationSeconds);
  return {
    firstQuarter: 0,
    endQuarter,
    firstFrame: 0,
    endFrame: frames,
    readFrom: 0,
    readUntil: frames,
  };
}

/**
 * Cuts a part at whole quarters into so many shorter ones, fewer where it has not as many.
 * @param program at a rate of the 44.1 or 48 kHz family
 */
export function cutPart(
  part: Part,
  count: number,
  program: Program,
  settings: Settings,
): readonly Part[] {
  const quarterSeconds = clockOf(program.format, settings).turnSeconds / QUARTERS_PER_TURN;
  // The silence after the program stays with its end.
  const programEnd = begun(program.durationSeconds / quarterSeconds);
  const quarters = Math.min(part.endQuarter, programEnd) - part.firstQuarter;
  const cuts = Math.max(1, Math.min(count, quarters));
  const cut = (index: number): number =>
    index === cuts ? part.endQuarter : part.firstQuarter + Math.round((index * quarters) / cuts);
  return Array.from({ length: cuts }, (_, index) =>
    partBetween(cut(index), cut(index + 1), program, settings),
  );
}

function partBetween(
  firstQuarter: number,
  endQuarter: number,
  { format, frames, durationSeconds }: Program,
  settings: Settings,
): Part {
  const { turnSeconds } = clockOf(format, settings);
  const quarterSeconds = turnSeconds / QUARTERS_PER_TURN;
  const [from, until] = [firstQuarter * quarterSeconds, endQuarter * quarterSeconds];
  const slack = settings.speedTolerance * turnSeconds;
  const frameOn = (grid: Seconds, seconds: Seconds): number =>
    Math.max(0, Math.floor(seconds / grid)) * Math.round(grid * format.sampleRate);
  const isLast = until >= durationSeconds;
  const heard = turnSeconds + slack + settlingSeconds(settings) + BEFORE_SECONDS;
  const end = Math.ceil((until + slack + AFTER_SECONDS) * format.sampleRate);
  return {
    firstQuarter,
    endQuarter,
    firstFrame: frameOn(1 / STEPS_A_SECOND, from),
    endFrame: isLast ? frames : frameOn(1 / STEPS_A_SECOND, until),
    readFrom: frameOn(GRID_SECONDS, from - heard),
    readUntil: isLast ? frames : Math.min(frames, end),
  };
}

/** The clock of the internal rate as a kernel knows it that hears a part from `readFrom` on. */
export function clockOfPart(part: Part, { format }: Program, settings: Settings): SpiralClock {
  const clock = clockOf(format, settings);
  return {
    ...clock,
    firstQuarter: part.firstQuarter,
    firstFrame: part.readFrom * (clock.rate / format.sampleRate),
  };
}

/** The clock of a program's internal rate. */
export function clockOf({ sampleRate }: SampleFormat, settings: Settings): SpiralClock {
  const familyRate = isFamilyRate(sampleRate) ? sampleRate : CONVERTED_RATE;
  return spiralClock(settings, bandLimitOf(familyRate).internalRate);
}
