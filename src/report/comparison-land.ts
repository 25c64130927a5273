import { moved } from '../model/compare-findings.js';
import type { Comparison, FindingChange, LandChange } from '../model/compare-types.js';
import type { FindingId } from '../model/forecast-types.js';
import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';

/** What says the same as a change of land. */
const OF_LAND: ReadonlySet<FindingId> = new Set([
  'overcut',
  'land-low',
  'echo-risk',
  'pitch-limit',
]);

/**
 * The changes of land that no changed finding tells: those with a part that lies more than a turn
 * from all of them.
 */
export function untoldLand(
  { land, findings, offsetSeconds }: Comparison,
  { rpm }: Settings,
): LandChange[] {
  const turn = 60 / rpm;
  const spans = findings
    .flatMap((change) => spanOf(change, offsetSeconds ?? 0))
    .sort(([one], [other]) => one - other);
  return land.filter(({ atSeconds, untilSeconds }) => {
    let told = atSeconds;
    for (const [from, until] of spans) {
      if (from - turn <= told) told = Math.max(told, until + turn);
    }
    return told < untilSeconds;
  });
}

/** In the time of the new file. */
function spanOf(
  { before, after }: FindingChange,
  offset: Seconds,
): (readonly [from: Seconds, until: Seconds])[] {
  const told = after ?? (before === null ? null : moved(before, offset));
  if (told === null || told.atSeconds === null || !OF_LAND.has(told.id)) return [];
  return [[told.atSeconds, told.untilSeconds ?? told.atSeconds]];
}
