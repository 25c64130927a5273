import type { Planner } from '../settings.js';
import { withBands } from './bands.js';
import { fixedDepth, planDepth } from './depth.js';
import { spiralRadius, turnAdvance } from './disc.js';
import { facingHalfWidths } from './facing-half-widths.js';
import type { PlannedSide } from './planned-side.js';
import { fixedPitch } from './planners/fixed.js';
import { machineAutomation } from './planners/machine.js';
import { tightest } from './planners/tightest.js';
import { turnAhead } from './planners/turn-ahead.js';

/**
 * Depth and pitch of a side at one level, SI. Quarters are the planned ones; nodes are their
 * starts and the end of the last, one more than there are quarters.
 */
export interface Plan {
  readonly planner: Planner;
  /** Factor on the motion of level 0 dB, g. */
  readonly gain: number;
  /** h at the nodes. */
  readonly halfWidth: Float64Array;
  /** h(t) + h(t − T) at the nodes. */
  readonly facing: Float64Array;
  /** What the planner wanted, per quarter, before pitchMax. */
  readonly wanted: Float64Array;
  /** p per quarter as planned, marker bands left out: what A is made of. */
  readonly pitch: Float64Array;
  /** A at the nodes. */
  readonly advance: Float64Array;
  /** Mean pitch per quarter as it is cut, with its share of marker bands. */
  readonly cut: Float64Array;
  /** r at the nodes. */
  readonly radius: Float64Array;
}

/** The rows of a plan that are its own. */
export type PlanRows = Pick<
  Plan,
  'halfWidth' | 'facing' | 'wanted' | 'pitch' | 'advance' | 'radius'
>;

export function emptyPlanRows({ count }: PlannedSide): PlanRows {
  return {
    halfWidth: new Float64Array(count + 1),
    facing: new Float64Array(count + 1),
    wanted: new Float64Array(count),
    pitch: new Float64Array(count),
    advance: new Float64Array(count + 1),
    radius: new Float64Array(count + 1),
  };
}

/**
 * Plans depth, then pitch; pitchMax clips last, and the spiral follows.
 * @param rows become the plan's; those of a plan that is wanted no longer will do
 */
export function planSide(
  side: PlannedSide,
  planner: Planner,
  levelDb: number,
  rows = emptyPlanRows(side),
): Plan {
  const { settings, basePitch, lead } = side;
  const { halfWidth, facing, wanted, pitch, advance, radius } = rows;
  const gain = 10 ** (levelDb / 20);
  planPitch(side, planner, gain, rows);
  turnAdvance(pitch, basePitch[0]!, advance);
  const cut = withBands(side, pitch);
  spiralRadius(cut, lead, settings.startDiameter / 2, radius);
  return { planner, gain, halfWidth, facing, wanted, pitch, advance, cut, radius };
}

/** The same without what follows from it: enough to know what it takes. */
export function planPitch(
  side: PlannedSide,
  planner: Planner,
  gain: number,
  rows: PlanRows,
): Pick<Plan, 'pitch'> {
  const { halfWidth, facing, wanted, pitch } = rows;
  // Rows that are not known yet have room for what is needed on the way to those before them.
  if (planner === 'fixed') fixedDepth(side, halfWidth);
  else planDepth(side, gain, halfWidth, facing);
  facingHalfWidths(halfWidth, side.baseHalfWidth[0]!, facing);
  setWanted(wanted, side, planner, facing, gain, pitch);
  pitch.set(wanted);
  clip(pitch, side.settings.pitchMax);
  return { pitch };
}

function setWanted(
  wanted: Float64Array,
  side: PlannedSide,
  planner: Planner,
  facing: Float64Array,
  gain: number,
  spare: Float64Array,
): void {
  switch (planner) {
    case 'fixed':
      fixedPitch(side, wanted);
      break;
    case 'machine':
      machineAutomation(side, facing, gain, wanted);
      break;
    case 'turn-ahead':
      turnAhead(side, facing, gain, wanted, spare);
      break;
    case 'tightest':
      tightest(side, facing, gain, wanted);
      break;
  }
}

function clip(pitch: Float64Array, pitchMax: number): void {
  for (let quarter = 0; quarter < pitch.length; quarter++) {
    if (pitch[quarter]! > pitchMax) pitch[quarter] = pitchMax;
  }
}
