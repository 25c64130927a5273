import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { HotSpot } from './forecast-types.js';
import { contactDepth, overcutDepth } from './groove.js';
import { landTaker } from './land-taker.js';
import { leastLand } from './least-land.js';
import { valueAt } from './nodes.js';
import { nominalLand } from './nominal-land.js';
import type { Plan } from './plan.js';
import { binStart, type PlannedSide } from './planned-side.js';
import { survives } from './survives.js';
import { trackAt } from './track-at.js';

/** How many places are told. */
const HOT_SPOTS = 5;
const BINS_PER_TURN = BINS_PER_QUARTER * QUARTERS_PER_TURN;

/** The places with the least land, the worst first; see `leastLand`. */
export function hotSpots(side: PlannedSide, plan: Plan): HotSpot[] {
  return leastLand(side, plan, HOT_SPOTS).map(({ bin, land }) => hotSpot(side, plan, bin, land));
}

function hotSpot(side: PlannedSide, plan: Plan, bin: number, land: number): HotSpot {
  const atSeconds = binStart(side, bin);
  const landNominal = nominalLand(side, plan, bin);
  const depth = overcutDepth(land);
  const { tracks } = side.hand;
  return {
    atSeconds,
    turn: atSeconds / side.motion.turnSeconds,
    radius: valueAt(side, plan.radius, atSeconds),
    land,
    landNominal,
    pitch: plan.pitch[Math.floor(bin / BINS_PER_QUARTER)]!,
    ...landTaker(side, plan, bin),
    overcutDepth: depth,
    reachesContact: depth > 0 && depth >= shallowestContact(side, plan, bin),
    survives: survives(side, plan, bin, null),
    ...(tracks.length === 0 ? {} : { track: trackAt(tracks, atSeconds)?.name ?? null }),
  };
}

/** Where a playback sphere touches the narrower of the two grooves that meet at a bin. */
function shallowestContact(side: PlannedSide, plan: Plan, bin: number): number {
  const contacts = [bin, bin - BINS_PER_TURN].map((place) => {
    const halfWidth = valueAt(side, plan.halfWidth, binStart(side, place));
    const width = 2 * (halfWidth - plan.gain * (side.lift[place] ?? 0));
    return contactDepth(width, side.settings.playbackTip);
  });
  return Math.min(...contacts);
}
