import type { ForecastedFile } from '../forecast-result.js';
import type { Settings } from '../settings.js';
import type { PlacedBreach } from './broken-rules.js';
import type { LongestSide, Rules } from './rules.js';

/** A speed as measured is the one that a rule names if it is no further off. */
const RPM_TOLERANCE = 0.02;

/** What the rules say of a side as it would be cut: its length, least land and vertical bass. */
export function sideBreaches({ forecast, settings }: ForecastedFile, rules: Rules): PlacedBreach[] {
  const { durationSeconds, levelDb, quarters } = forecast;
  const breaches: PlacedBreach[] = [];
  const longest = longestFor(settings, levelDb, rules.longest);
  if (longest !== null && durationSeconds > longest.most) {
    const { most, disc, rpm, fromLevelDb } = longest;
    breaches.push({
      breach: { id: 'rule-longest', found: durationSeconds, most, disc, rpm, fromLevelDb },
      atSeconds: most,
    });
  }
  const { landMin, landMinAtSeconds } = forecast[forecast.executes];
  if (rules.leastLand !== null && landMin < rules.leastLand) {
    breaches.push({
      breach: { id: 'rule-land', found: landMin, least: rules.leastLand },
      atSeconds: landMinAtSeconds,
    });
  }
  const quarter = largestAt(quarters.lowVertical);
  const vertical = quarters.lowVertical[quarter] ?? 0;
  if (rules.mostVerticalLow !== null && vertical > rules.mostVerticalLow) {
    breaches.push({
      breach: { id: 'rule-vertical', found: vertical, most: rules.mostVerticalLow },
      atSeconds: quarters.atSeconds[quarter] ?? null,
    });
  }
  return breaches;
}

/** The shortest of the lengths that hold for a side's format and level; null without one. */
function longestFor(
  { disc, rpm }: Settings,
  levelDb: number,
  longest: readonly LongestSide[],
): LongestSide | null {
  const [shortest = null] = longest
    .filter(
      (rule) =>
        rule.disc === disc &&
        Math.abs(rpm / rule.rpm - 1) <= RPM_TOLERANCE &&
        levelDb >= (rule.fromLevelDb ?? Number.NEGATIVE_INFINITY),
    )
    .toSorted((one, other) => one.most - other.most);
  return shortest;
}

function largestAt(row: Float64Array): number {
  return row.reduce((best, value, at) => (value > (row[best] ?? 0) ? at : best), 0);
}
