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

/** Plans depth, then pitch; pitchMax clips last, and the spiral follows. */
export function planSide(side: PlannedSide, planner: Planner, levelDb: number): Plan {
  const { settings, basePitch, lead } = side;
  const gain = 10 ** (levelDb / 20);
  const { halfWidth, facing, wanted, pitch } = planPitch(side, planner, gain);
  const advance = turnAdvance(pitch, basePitch[0]!);
  const cut = withBands(side, pitch);
  const radius = spiralRadius(cut, lead, settings.startDiameter / 2);
  return { planner, gain, halfWidth, facing, wanted, pitch, advance, cut, radius };
}

/** The same without what follows from it: enough to know what it takes. */
export function planPitch(
  side: PlannedSide,
  planner: Planner,
  gain: number,
): Pick<Plan, 'halfWidth' | 'facing' | 'wanted' | 'pitch'> {
  const halfWidth = planner === 'fixed' ? fixedDepth(side) : planDepth(side, gain);
  const facing = facingHalfWidths(halfWidth, side.baseHalfWidth[0]!);
  const wanted = wantedPitch(side, planner, facing, gain);
  return { halfWidth, facing, wanted, pitch: clipped(wanted, side.settings.pitchMax) };
}

function clipped(wanted: Float64Array, pitchMax: number): Float64Array {
  const pitch = Float64Array.from(wanted);
  for (let quarter = 0; quarter < pitch.length; quarter++) {
    if (pitch[quarter]! > pitchMax) pitch[quarter] = pitchMax;
  }
  return pitch;
}

function wantedPitch(
  side: PlannedSide,
  planner: Planner,
  facing: Float64Array,
  gain: number,
): Float64Array {
  switch (planner) {
    case 'fixed':
      return fixedPitch(side);
    case 'machine':
      return machineAutomation(side, facing, gain);
    case 'turn-ahead':
      return turnAhead(side, facing, gain);
    case 'tightest':
      return tightest(side, facing, gain);
  }
}
