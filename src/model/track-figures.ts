import { BINS_PER_QUARTER } from '../analysis/motion.js';
import type { Seconds } from '../units.js';
import { radiusAt } from './bands.js';
import { binLand } from './bin-land.js';
import type { Finding, TrackFigures } from './forecast-types.js';
import { quartersIn } from './nodes.js';
import type { Plan } from './plan.js';
import { firstNearLeast } from './plan-report.js';
import { binStart, type PlannedSide } from './planned-side.js';
import type { HandTrack } from './side-plan-input.js';
import { trackLevel } from './track-level.js';
import { bendShares, type WindowShares } from './worst-second.js';

/** The ends of a track on the side's disc, what it leaves and how loud it is cut, track by track. */
export function trackFigures(
  side: PlannedSide,
  plan: Plan,
  findings: readonly Finding[],
): TrackFigures[] {
  const { tracks } = side.hand;
  if (tracks.length === 0) return [];
  const land = binLand(side, plan);
  const spherical = bendShares(side, plan, side.settings.playbackTip);
  const line = bendShares(side, plan, side.settings.lineTip);
  return tracks.map((track) => ({
    name: track.name,
    fromSeconds: track.fromSeconds,
    untilSeconds: track.untilSeconds,
    startDiameter: 2 * radiusAt(side, plan, track.fromSeconds),
    endDiameter: 2 * radiusAt(side, plan, track.untilSeconds),
    ...trackLevel(side, plan, track),
    ...leastLand(side, land, track),
    bendShareSpherical: worstWithin(side, spherical, track),
    bendShareLine: worstWithin(side, line, track),
    worst: findings.find((finding) => isWithin(finding, track)) ?? null,
  }));
}

/** Of the bins that begin inside the track; of the one that it begins in, if none does. */
function leastLand(side: PlannedSide, land: Float64Array, track: HandTrack) {
  const from = quartersIn(side, track.fromSeconds) * BINS_PER_QUARTER;
  const until = quartersIn(side, track.untilSeconds) * BINS_PER_QUARTER;
  // A beginning that rounding puts just behind a bin's belongs to that bin.
  const within = Math.ceil(from - 1e-6);
  const end = Math.ceil(until - 1e-6);
  const first = Math.min(within < end ? within : Math.floor(from), land.length - 1);
  const row = land.subarray(first, Math.max(first + 1, end));
  const landMin = row.reduce((least, of) => Math.min(least, of), Number.POSITIVE_INFINITY);
  return { landMin, landMinAtSeconds: binStart(side, first + firstNearLeast(row)) };
}

/** The worst second of those whose quarters all touch the track, or the track's worst quarter. */
function worstWithin(
  { quarterSeconds, programCount }: PlannedSide,
  { shares, own, quarters }: WindowShares,
  track: HandTrack,
): number {
  const first = Math.floor(track.fromSeconds / quarterSeconds + 1e-9);
  const end = Math.min(Math.ceil(track.untilSeconds / quarterSeconds - 1e-9), programCount);
  const row =
    end - first < quarters ? own.subarray(first, end) : shares.subarray(first, end - quarters + 1);
  return row.reduce((worst, share) => Math.max(worst, share), 0);
}

function isWithin({ atSeconds, untilSeconds }: Finding, track: HandTrack): boolean {
  if (atSeconds === null) return false;
  const until: Seconds = untilSeconds ?? atSeconds;
  return atSeconds < track.untilSeconds && until >= track.fromSeconds;
}
