import {
  BINS_PER_QUARTER,
  begun,
  type MotionSummary,
  QUARTERS_PER_TURN,
} from '../analysis/motion.js';
import type { Settings } from '../settings.js';
import type { Metres, Seconds } from '../units.js';
import { easedBase } from './eased-base.js';
import { facingHalfWidths } from './facing-half-widths.js';
import { handColumn } from './hand-columns.js';
import { extent, type PlannedRows, plannedRows } from './planned-rows.js';
import { heardMotion } from './planners/heard-motion.js';
import { type HandSettings, NOTHING_BY_HAND } from './side-plan-input.js';

/**
 * A program's motion over the quarters that are planned, at level 0 dB: the motion summary with
 * `silentTurns` before and after it. Index 0 is the first planned quarter, −4·silentTurns of the
 * program; bins count from its start. Made once a side; every level is planned from it.
 */
export interface PlannedSide extends PlannedRows {
  readonly motion: MotionSummary;
  readonly settings: Settings;
  readonly hand: HandSettings;
  /** Index of the quarter that begins with the program: 4·silentTurns. */
  readonly lead: number;
  /** Planned quarters. */
  readonly count: number;
  /** Quarters that the program touches. */
  readonly programCount: number;
  readonly turns: number;
  readonly quarterSeconds: Seconds;
  /** The pitch that no plan goes under, per quarter, before any slew, m per turn. */
  readonly basePitch: Float64Array;
  /** The unmodulated half-width that is asked for, per quarter, before any slew, m. */
  readonly baseHalfWidth: Float64Array;
  /** The same as it is cut, at the quarters' starts and the end of the last: with its slews. */
  readonly baseNodes: Float64Array;
  /** h(t) + h(t − T) of it, likewise. */
  readonly baseFacing: Float64Array;
  /** What the lathe's automation hears at each planned quarter; see `heardMotion`. */
  readonly heard: Float64Array;
}

/** @param rows of the same motion and as many silent turns, where they are known */
export function plannedSide(
  motion: MotionSummary,
  settings: Settings,
  hand: HandSettings = NOTHING_BY_HAND,
  rows: PlannedRows = plannedRows(motion, settings),
): PlannedSide {
  const { lead, turns, count } = extent(motion, settings);
  const grid = { lead, count, quarterSeconds: motion.turnSeconds / QUARTERS_PER_TURN };
  const pitches = hand.basePitch.map(({ fromSeconds, pitch }) => ({ fromSeconds, value: pitch }));
  const widths = hand.baseWidth.map(({ fromSeconds, width }) => ({
    fromSeconds,
    value: width / 2,
  }));
  const baseHalfWidth = handColumn(grid, widths, settings.baseWidth / 2);
  const baseNodes = easedBase(baseHalfWidth, settings);
  return {
    motion,
    settings,
    hand,
    lead,
    count,
    programCount: begun(QUARTERS_PER_TURN * turns),
    turns,
    quarterSeconds: grid.quarterSeconds,
    basePitch: handColumn(grid, pitches, settings.basePitch),
    baseHalfWidth,
    baseNodes,
    baseFacing: facingHalfWidths(baseNodes, baseHalfWidth[0]!),
    heard: heardMotion(rows, settings),
    ...rows,
  };
}

/** Program time at which planned quarter `index` begins. */
export function quarterStart(side: PlannedSide, index: number): Seconds {
  return (index - side.lead) * side.quarterSeconds;
}

/** Program time at which a bin of the planned quarters begins. */
export function binStart(side: PlannedSide, bin: number): Seconds {
  return (bin / BINS_PER_QUARTER - side.lead) * side.quarterSeconds;
}

/** What a plan has to leave besides the motion: 2·depthTolerance + pitchTolerance. */
export function landTolerance({ depthTolerance, pitchTolerance }: Settings): Metres {
  return 2 * depthTolerance + pitchTolerance;
}
