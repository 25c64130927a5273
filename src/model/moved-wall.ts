import { BINS_PER_QUARTER, type MotionSummary, QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Hertz } from '../units.js';
import type { HotSpotCause, Wall } from './forecast-types.js';
import { strongestBass, strongestTreble } from './strongest-frequency.js';

/** How the walls move where the groove faces that of a turn before; the same at every level. */
export interface MovedWall {
  readonly wall: Wall;
  readonly cause: Exclude<HotSpotCause, 'width'>;
  /** Whether the inner wall, a turn earlier, moves more than the outer one now. */
  readonly isInner: boolean;
  /** Whether the low band explains its displacement. */
  readonly isBass: boolean;
}

/** Share of the motion from which one wall takes the advance alone. */
const ONE_WALL_SHARE = 0.8;
/** Lateral and vertical motion nearer to each other than this come from one wall. */
const ALIKE = 1.25;
/** A displacement is the bass's up to so many times the bass's amplitude: a crest factor. */
const BASS_CREST = 4;

const BINS_PER_TURN = BINS_PER_QUARTER * QUARTERS_PER_TURN;

/**
 * The motion of the outer wall now and the inner wall a turn earlier, and how the one that moves
 * more does it: bass where the low band's amplitude explains the displacement.
 * Source: common practice, no published source.
 * @param bin of the motion summary
 */
export function movedWall(motion: MotionSummary, bin: number): MovedWall {
  const outward = Math.max(0, motion.outward[bin] ?? 0);
  const inward = Math.max(0, motion.inward[bin - BINS_PER_TURN] ?? 0);
  const share = outward + inward > 0 ? outward / (outward + inward) : 0.5;
  const wall = share > ONE_WALL_SHARE ? 'right' : share < 1 - ONE_WALL_SHARE ? 'left' : 'both';
  const isInner = inward > outward;
  const from = isInner ? bin - BINS_PER_TURN : bin;
  const isBass = isLow(motion, quarterOf(from), Math.max(outward, inward) / Math.SQRT2);
  return { wall, cause: causeOf(motion, from, wall === 'both', isBass), isInner, isBass };
}

/** The strongest frequency of the wall that moves more at a bin; null in silence. */
export function movedFrequency(
  motion: MotionSummary,
  bin: number,
  { isInner, isBass }: MovedWall,
): Hertz | null {
  const quarter = quarterOf(isInner ? bin - BINS_PER_TURN : bin);
  return isBass
    ? strongestBass(motion, quarter)
    : strongestTreble(motion, quarter, isInner ? 'left' : 'right');
}

function causeOf(motion: MotionSummary, bin: number, bothWalls: boolean, isBass: boolean) {
  const lateral = motion.lateral[bin] ?? 0;
  const vertical = Math.max(motion.lift[bin] ?? 0, motion.sink[bin] ?? 0);
  if (!bothWalls && lateral < ALIKE * vertical && vertical < ALIKE * lateral) return 'one-wall';
  if (vertical > lateral) return 'vertical';
  return isBass ? 'lateral-low' : 'lateral-high';
}

/** Whether the low band explains a wall's displacement; u = (x ± z)/√2. */
function isLow({ lowBand }: MotionSummary, quarter: number, displacement: number): boolean {
  const lateral = lowBand.lateralAmplitude[quarter] ?? 0;
  const vertical = lowBand.verticalAmplitude[quarter] ?? 0;
  return BASS_CREST * Math.sqrt((lateral ** 2 + vertical ** 2) / 2) > displacement;
}

function quarterOf(bin: number): number {
  return Math.floor(bin / BINS_PER_QUARTER);
}
