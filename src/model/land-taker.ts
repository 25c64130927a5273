import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Hertz } from '../units.js';
import type { HotSpotCause, Wall } from './forecast-types.js';
import type { Plan } from './plan.js';
import type { PlannedSide } from './planned-side.js';
import { strongestBass, strongestTreble } from './strongest-frequency.js';

/** What takes the advance at a place. */
export interface LandTaker {
  readonly cause: HotSpotCause;
  readonly wall: Wall;
  readonly frequency: Hertz | null;
}

/** Share of the motion from which one wall takes the advance alone. */
const ONE_WALL_SHARE = 0.8;
/** Lateral and vertical motion nearer to each other than this come from one wall. */
const ALIKE = 1.25;
/** A displacement is the bass's up to so many times the bass's amplitude: a crest factor. */
const BASS_CREST = 4;

const BINS_PER_TURN = BINS_PER_QUARTER * QUARTERS_PER_TURN;

/**
 * What takes most of the advance at a bin: the groove's own opening over base width (`width`), or
 * the motion of the outer wall now and the inner wall a turn earlier; then by how that wall moves.
 * Bass where the low band's amplitude explains the displacement.
 * Source: common practice, no published source.
 * @param bin of the planned quarters
 */
export function landTaker(side: PlannedSide, plan: Plan, bin: number): LandTaker {
  const { motion, baseFacing, lead } = side;
  const programBin = bin - lead * BINS_PER_QUARTER;
  const outward = Math.max(0, motion.outward[programBin] ?? 0);
  const inward = Math.max(0, motion.inward[programBin - BINS_PER_TURN] ?? 0);
  const quarter = Math.floor(bin / BINS_PER_QUARTER);
  const opened = Math.max(
    plan.facing[quarter]! - baseFacing[quarter]!,
    plan.facing[quarter + 1]! - baseFacing[quarter + 1]!,
  );
  if (opened > plan.gain * Math.max(0, side.approachLoose[bin]!)) {
    return { cause: 'width', wall: 'both', frequency: null };
  }

  const share = outward + inward > 0 ? outward / (outward + inward) : 0.5;
  const wall = share > ONE_WALL_SHARE ? 'right' : share < 1 - ONE_WALL_SHARE ? 'left' : 'both';
  const isInnerLouder = inward > outward;
  const from = isInnerLouder ? programBin - BINS_PER_TURN : programBin;
  const moved = isInnerLouder ? 'left' : 'right';
  const movedQuarter = Math.floor(from / BINS_PER_QUARTER);
  const displacement = Math.max(outward, inward) / Math.SQRT2;
  const isLow = isBass(side, movedQuarter, displacement);
  return {
    cause: causeOf(side, from, wall === 'both', isLow),
    wall,
    frequency: isLow
      ? strongestBass(motion, movedQuarter)
      : strongestTreble(motion, movedQuarter, moved),
  };
}

function causeOf(
  { motion }: PlannedSide,
  programBin: number,
  bothWalls: boolean,
  isLow: boolean,
): HotSpotCause {
  const lateral = motion.lateral[programBin] ?? 0;
  const vertical = Math.max(motion.lift[programBin] ?? 0, motion.sink[programBin] ?? 0);
  if (!bothWalls && lateral < ALIKE * vertical && vertical < ALIKE * lateral) return 'one-wall';
  if (vertical > lateral) return 'vertical';
  return isLow ? 'lateral-low' : 'lateral-high';
}

/** Whether the low band explains a wall's displacement; u = (x ± z)/√2. */
function isBass({ motion: { lowBand } }: PlannedSide, quarter: number, displacement: number) {
  const lateral = lowBand.lateralAmplitude[quarter] ?? 0;
  const vertical = lowBand.verticalAmplitude[quarter] ?? 0;
  return BASS_CREST * Math.sqrt((lateral ** 2 + vertical ** 2) / 2) > displacement;
}
