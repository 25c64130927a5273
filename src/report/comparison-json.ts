import type { Change, Comparison } from '../model/compare-types.js';
import type { Settings } from '../settings.js';
import type { ComparisonJson } from './comparison-schema.js';
import { findingToJson } from './finding-json.js';
import { roundDb, roundSeconds, toMm, toUm } from './numbers.js';

/** A comparison as the output writes it: rounded, with the unit in each name. */
export function comparisonToJson(comparison: Comparison, settings: Settings): ComparisonJson {
  return {
    name: comparison.name,
    offsetSeconds: roundSeconds(comparison.offsetSeconds),
    verdict: comparison.verdict,
    durationSeconds: changeBy(roundSeconds, comparison.durationSeconds),
    loudnessLufs: changeBy(roundDb, comparison.loudnessLufs),
    endDiameterMm: changeBy(toMm, comparison.endDiameter),
    spareMm: changeBy(toMm, comparison.spare),
    recommendedDb: changeBy(roundDb, comparison.recommendedDb),
    fillDb: changeBy(roundDb, comparison.fillDb),
    traceDb: changeBy(roundDb, comparison.traceDb),
    land: comparison.land.map(({ change, atSeconds, untilSeconds, before, after }) => ({
      change,
      atSeconds: roundSeconds(atSeconds),
      untilSeconds: roundSeconds(untilSeconds),
      beforeUm: toUm(before),
      afterUm: toUm(after),
    })),
    findings: comparison.findings.map(({ change, before, after }) => ({
      change,
      before: before === null ? null : findingToJson(before, settings),
      after: after === null ? null : findingToJson(after, settings),
    })),
  };
}

function changeBy(
  write: (value: number | null) => number | null,
  change: Change<number | null> | null,
): Change<number | null> | null {
  return change === null ? null : { before: write(change.before), after: write(change.after) };
}
