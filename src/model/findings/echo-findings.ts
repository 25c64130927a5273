import { echoNeighbours } from '../echo-guard.js';
import type { Finding } from '../forecast-types.js';
import { LENGTH_MARGIN } from '../limits.js';
import { type PlannedSide, quarterStart } from '../planned-side.js';
import type { Verified } from '../verify.js';
import { finding } from './finding.js';
import { spansOf } from './spans.js';

/**
 * `echo-risk`: less than echoLand between a quiet and a loud turn at the same angle, a silent turn
 * before or after the program being a quiet one. Neighbouring quarters as one, with the least land.
 */
export function echoFindings(side: PlannedSide, { plan, land }: Verified): Finding[] {
  const { settings, count } = side;
  const echo = echoNeighbours(side, plan.gain);
  const spans = spansOf(
    0,
    count,
    (quarter) => echo[quarter] === 1 && land[quarter]! < settings.echoLand - LENGTH_MARGIN,
    (a, b) => land[a]! < land[b]!,
  );
  return spans.map(({ first, last, worst }) =>
    finding('echo-risk', 'note', {
      atSeconds: quarterStart(side, first),
      untilSeconds: quarterStart(side, last + 1),
      value: land[worst]!,
      limit: settings.echoLand,
      unit: 'metre',
    }),
  );
}
