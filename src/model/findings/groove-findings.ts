import type { Finding } from '../forecast-types.js';
import { cutDepth } from '../groove.js';
import { LENGTH_MARGIN } from '../limits.js';
import { binStart, type PlannedSide, quarterStart } from '../planned-side.js';
import { strongestBass } from '../strongest-frequency.js';
import type { Verified } from '../verify.js';
import { finding } from './finding.js';
import { spansOf } from './spans.js';

/** `lift` where the width falls under widthMin, `too-deep` where the cut goes past depthMax. */
export function grooveFindings(side: PlannedSide, verified: Verified): Finding[] {
  return [...liftFindings(side, verified), ...depthFindings(side, verified)];
}

/** Width that is really under widthMin. */
export function isTooNarrow({ settings }: PlannedSide, width: number): boolean {
  return width < settings.widthMin - LENGTH_MARGIN;
}

/** Whether a groove of this width is really deeper than depthMax. */
export function isTooDeep({ settings }: PlannedSide, width: number): boolean {
  return cutDepth(width, settings.bottomRadius) > settings.depthMax + LENGTH_MARGIN;
}

function liftFindings(side: PlannedSide, { widthMin, widthMinBin }: Verified): Finding[] {
  const spans = spansOf(
    0,
    side.count,
    (quarter) => isTooNarrow(side, widthMin[quarter]!),
    (a, b) => widthMin[a]! < widthMin[b]!,
  );
  return spans.map(({ first, last, worst }) =>
    finding('lift', 'fault', {
      atSeconds: binStart(side, widthMinBin[first]!),
      untilSeconds: binStart(side, widthMinBin[last]! + 1),
      value: widthMin[worst]!,
      limit: side.settings.widthMin,
      unit: 'metre',
      wall: 'both',
      frequency: strongestBass(side.motion, worst - side.lead),
    }),
  );
}

function depthFindings(side: PlannedSide, { widthMax }: Verified): Finding[] {
  const { settings, lead, motion } = side;
  const spans = spansOf(
    0,
    side.count,
    (quarter) => isTooDeep(side, widthMax[quarter]!),
    (a, b) => widthMax[a]! > widthMax[b]!,
  );
  return spans.map(({ first, last, worst }) =>
    finding('too-deep', 'fault', {
      atSeconds: quarterStart(side, first),
      untilSeconds: quarterStart(side, last + 1),
      value: cutDepth(widthMax[worst]!, settings.bottomRadius),
      limit: settings.depthMax,
      unit: 'metre',
      wall: 'both',
      frequency: strongestBass(motion, worst - lead),
    }),
  );
}
