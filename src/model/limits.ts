import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Metres } from '../units.js';

/**
 * How far a length may be past its limit and yet count as on it: a tenth of the 0.05 µm to which
 * motion is known, and what rounding adds to a plan that just keeps the limit.
 */
export const LENGTH_MARGIN: Metres = 5e-9;

/** Share of any one second that may be over a limit of slope or bend; common practice. */
export const SHARE_LIMIT = 0.01;

/** Planned quarters before this one face the lead-in: their land is no finding. */
export const FIRST_JUDGED = QUARTERS_PER_TURN;
