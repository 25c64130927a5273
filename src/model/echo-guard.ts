import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { PlannedSide } from './planned-side.js';

/** Mean square under the reference from which a quarter is quiet, and up to which it is loud, dB. */
const QUIET_DB = -40;
const LOUD_DB = -12;

/**
 * Planned quarters whose turn lies beside its outer neighbour with one of them quiet and the other
 * loud, so that the loud one could be heard in the quiet one: 1 there, else 0.
 * The mean-square velocity, the mean of the two walls', is judged at the planned level against a
 * sine of referenceVelocity, referenceVelocity²/4 per wall. A silent turn is quiet.
 * Source: common practice, no published source.
 */
export function echoNeighbours(side: PlannedSide, gain: number): Uint8Array {
  const { count, velocityPower } = side;
  const reference = side.settings.referenceVelocity ** 2 / 4 / gain ** 2;
  const quiet = reference * 10 ** (QUIET_DB / 10);
  const loud = reference * 10 ** (LOUD_DB / 10);
  const neighbours = new Uint8Array(count);
  for (let inner = QUARTERS_PER_TURN; inner < count; inner++) {
    const here = velocityPower[inner]!;
    const beside = velocityPower[inner - QUARTERS_PER_TURN]!;
    const isApart = here < beside ? here < quiet && beside >= loud : beside < quiet && here >= loud;
    if (isApart) neighbours[inner] = 1;
  }
  return neighbours;
}

/** Whether both turns that face each other at a planned quarter belong to the program. */
export function isWithinProgram({ lead, programCount }: PlannedSide, quarter: number): boolean {
  return quarter >= lead + QUARTERS_PER_TURN && quarter < lead + programCount;
}
