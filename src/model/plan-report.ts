import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Metres } from '../units.js';
import { cutWithin } from './bands.js';
import type { PlanReport } from './forecast-types.js';
import { cutDepth } from './groove.js';
import { LENGTH_MARGIN } from './limits.js';
import type { Plan } from './plan.js';
import { binStart, type PlannedSide, quarterStart } from './planned-side.js';
import { traceWalls } from './tracing.js';
import type { Verified } from './verify.js';
import { bendShares, emptyShareRows, worstShare } from './worst-second.js';

/**
 * A verified plan in figures: extremes over all planned quarters, pitch and radius of the program.
 * A program without length has the base pitch.
 * @param rows are overwritten
 */
export function planReport(
  side: PlannedSide,
  verified: Verified,
  rows = emptyShareRows(side),
): PlanReport {
  const { settings, lead, turns } = side;
  const { plan, land, landBin, widthMin, widthMinBin, widthMax } = verified;
  const { facet, bend } = traceWalls(side, plan);
  // The pitch from the program's start to its end, the one that begins there included.
  const last = lead + Math.floor(QUARTERS_PER_TURN * turns + 1e-9);
  const pitch = plan.pitch.subarray(lead, last + 1);
  const used = radiusUsed(side, plan);
  const endDiameter = settings.startDiameter - 2 * used;
  const spare = spareRadius(side, plan);
  const leastLand = firstNearLeast(land);
  const narrowest = firstNearLeast(widthMin);
  const [, widest] = extremes(widthMax);
  const [pitchMin, pitchMax] = extremes(pitch);
  const steepest = placeOfMost(facet);
  const tightest = placeOfLeast(bend);
  const moves = bend[tightest]! < Number.POSITIVE_INFINITY;
  return {
    radiusUsed: used,
    startDiameter: settings.startDiameter,
    endDiameter,
    spare,
    fits: spare >= 0,
    pitchMin,
    pitchMean: turns > 0 ? used / turns : pitch[0]!,
    pitchMax,
    landMin: extremes(land)[0],
    landMinAtSeconds: binStart(side, landBin[leastLand]!),
    widthMin: extremes(widthMin)[0],
    widthMinAtSeconds: binStart(side, widthMinBin[narrowest]!),
    widthMax: widest,
    cutDepthMax: cutDepth(widest, settings.bottomRadius),
    facetMax: facet[steepest]!,
    facetMaxAtSeconds: quarterStart(side, steepest),
    bendMin: moves ? bend[tightest]! : null,
    bendMinAtSeconds: moves ? quarterStart(side, tightest) : null,
    bendShareSpherical: worstShare(bendShares(side, plan, settings.playbackTip, rows)),
    bendShareLine: worstShare(bendShares(side, plan, settings.lineTip, rows)),
  };
}

/** Radius that the program takes, n·∫p dt, bands included; its last quarter may be partial. */
export function radiusUsed(side: PlannedSide, { pitch }: Pick<Plan, 'pitch'>): Metres {
  const { lead, programCount, turns } = side;
  let used = 0;
  for (let quarter = 0; quarter < programCount; quarter++) {
    const length = Math.min(1, QUARTERS_PER_TURN * turns - quarter);
    used += cutWithin(side, pitch, lead + quarter, length) / QUARTERS_PER_TURN;
  }
  return used;
}

/** End radius of the program less the inner limit. */
export function spareRadius(side: PlannedSide, plan: Pick<Plan, 'pitch'>): Metres {
  const { startDiameter, innerDiameter } = side.settings;
  return (startDiameter - innerDiameter) / 2 - radiusUsed(side, plan);
}

/** Index of the least entry, the first of equals; `row` is not empty. */
export function placeOfLeast(row: Float64Array): number {
  let place = 0;
  for (let at = 1; at < row.length; at++) if (row[at]! < row[place]!) place = at;
  return place;
}

function placeOfMost(row: Float64Array): number {
  let place = 0;
  for (let at = 1; at < row.length; at++) if (row[at]! > row[place]!) place = at;
  return place;
}

/**
 * Index of the first length that is the least as far as lengths are told apart: a steady tone has
 * one turn after turn, and which of them is a hair less hangs on the last digit.
 */
export function firstNearLeast(row: Float64Array): number {
  const [least] = extremes(row);
  let place = 0;
  while (row[place]! > least + LENGTH_MARGIN) place += 1;
  return place;
}

function extremes(row: Float64Array): [least: number, largest: number] {
  let least = row[0]!;
  let largest = row[0]!;
  for (let at = 1; at < row.length; at++) {
    if (row[at]! < least) least = row[at]!;
    if (row[at]! > largest) largest = row[at]!;
  }
  return [least, largest];
}
