import type { Finding } from '../forecast-types.js';
import { landTaker } from '../land-taker.js';
import { FIRST_JUDGED, LENGTH_MARGIN } from '../limits.js';
import { binStart, type PlannedSide } from '../planned-side.js';
import type { Verified } from '../verify.js';
import { finding } from './finding.js';
import { type Span, spansOf } from './spans.js';

/**
 * `overcut` where land < 0, `land-low` where it is less than landMin; neighbouring quarters as one,
 * with the least land of them. Outside the first silent turn lies the lead-in: no finding.
 */
export function landFindings(side: PlannedSide, verified: Verified): Finding[] {
  const { landMin } = side.settings;
  const { land } = verified;
  const isWorse = (a: number, b: number) => land[a]! < land[b]!;
  const overcuts = spansOf(FIRST_JUDGED, side.count, (q) => isOvercut(land[q]!), isWorse);
  const low = spansOf(
    FIRST_JUDGED,
    side.count,
    (q) => !isOvercut(land[q]!) && land[q]! < landMin - LENGTH_MARGIN,
    isWorse,
  );
  return [
    ...overcuts.map((span) =>
      finding('overcut', 'fault', { ...whereOf(side, verified, span), limit: 0 }),
    ),
    ...low.map((span) =>
      finding('land-low', 'caution', { ...whereOf(side, verified, span), limit: landMin }),
    ),
  ];
}

/** Land that is really less than nothing. */
export function isOvercut(land: number): boolean {
  return land < -LENGTH_MARGIN;
}

function whereOf(side: PlannedSide, { plan, land, landBin }: Verified, span: Span) {
  const { wall, frequency } = landTaker(side, plan, landBin[span.worst]!);
  return {
    atSeconds: binStart(side, landBin[span.first]!),
    untilSeconds: binStart(side, landBin[span.last]! + 1),
    value: land[span.worst]!,
    unit: 'metre',
    wall,
    frequency,
  } as const;
}
