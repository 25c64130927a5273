import { echoNeighbours, isWithinProgram } from '../echo-guard.js';
import type { Finding } from '../forecast-types.js';
import { LENGTH_MARGIN } from '../limits.js';
import { type PlannedSide, quarterStart } from '../planned-side.js';
import type { Verified } from '../verify.js';
import { finding } from './finding.js';
import { spansOf } from './spans.js';

/**
 * `echo-risk`: less than echoLand between a quiet and a loud turn of the program at the same
 * angle. The silent turns around the program do not count, since nobody listens to the lead-in and
 * the lead-out. Neighbouring quarters as one, with the least land.
 */
export function echoFindings(side: PlannedSide, { plan, land }: Verified): Finding[] {
  const { settings, count } = side;
  const echo = echoNeighbours(side, plan.gain);
  const spans = spansOf(
    0,
    count,
    (quarter) =>
      echo[quarter] === 1 &&
      isWithinProgram(side, quarter) &&
      land[quarter]! < settings.echoLand - LENGTH_MARGIN,
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
