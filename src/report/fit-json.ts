import type { LeastSet, SideFit, WeighedRemedy } from '../fit/fit-result.js';
import type { BasePitchFit } from '../model/fit-base-pitch.js';
import type { Finding, Headroom } from '../model/forecast-types.js';
import { settingsToJson } from '../profile/settings-to-json.js';
import type { Failure } from './failure.js';
import { findingToJson } from './finding-json.js';
import { remedyToJson } from './fit-remedy-json.js';
import { remedyText } from './fit-remedy-text.js';
import { FIT_FORMAT, type FitJson, type SideFitJson } from './fit-schema.js';
import { fitSentence } from './fit-sentence.js';
import { roundDb, roundRatio, roundSeconds, toLpi, toMm, toUm } from './numbers.js';

/** The document `furrow.fit/1`. */
export function fitDocument(
  sides: readonly SideFitJson[],
  failures: readonly Failure[],
  version: string,
): FitJson {
  return {
    format: FIT_FORMAT,
    furrow: version,
    sides: [...sides],
    failures: failures.map(({ path, code, message }) => ({ path, code, message })),
  };
}

/** One side as the output writes it: rounded, with the unit in each name. */
export function fitToJson(fit: SideFit): SideFitJson {
  const { settings } = fit;
  return {
    name: fit.name,
    settings: settingsToJson(settings),
    sources: fit.sources.map(({ path }) => path),
    durationSeconds: roundSeconds(fit.durationSeconds),
    turns: roundSeconds(fit.turns),
    levelDb: roundDb(fit.levelDb),
    executed: fit.executed,
    verdict: fit.verdict,
    sentence: fitSentence(fit, 'metric'),
    findings: fit.findings.map((finding) => findingToJson(finding, settings)),
    faults: fit.faults.map(faultToJson),
    headroom: fit.planners.flatMap((planner, at) => {
      const headroom = fit.headrooms[at];
      return headroom === undefined ? [] : [{ planner, headroom: headroomToJson(headroom) }];
    }),
    limits: fit.limits.map(({ id, atSeconds, untilSeconds, levelDb, withoutDb }) => ({
      id,
      atSeconds: roundSeconds(atSeconds),
      untilSeconds: roundSeconds(untilSeconds),
      levelDb: roundDb(levelDb),
      withoutDb: roundDb(withoutDb),
      costsDb: roundDb(withoutDb - levelDb),
    })),
    levels: levelsToJson(fit),
    basePitch: basePitchToJson(fit.basePitch),
    formats: fit.formats.map(({ headroom, spare, endDiameter, ...format }) => ({
      ...format,
      headroom: headroomToJson(headroom),
      spareMm: toMm(spare),
      endDiameterMm: toMm(endDiameter),
    })),
    remedies: fit.remedies.map((weighed) => weighedToJson(weighed, fit)),
    leastSet: fit.leastSet === null ? null : leastSetToJson(fit.leastSet),
    leftOut: [...fit.leftOut],
  };
}

function levelsToJson({ levels, planners }: SideFit): SideFitJson['levels'] {
  return levels.map(({ levelDb, judgements }) => ({
    levelDb: roundDb(levelDb),
    judged: planners.flatMap((planner, at) => {
      const judgement = judgements[at];
      if (judgement === undefined) return [];
      const { endDiameter, spare, faults } = judgement;
      const [first] = faults;
      return [
        {
          planner,
          endDiameterMm: toMm(endDiameter),
          spareMm: toMm(spare),
          faults: faults.length,
          first: first === undefined ? null : faultToJson(first),
        },
      ];
    }),
  }));
}

function basePitchToJson({ levelDb, holds, missing }: BasePitchFit): SideFitJson['basePitch'] {
  return {
    levelDb: roundDb(levelDb),
    widestUm: toUm(holds?.widest ?? null),
    widestLpi: toLpi(holds?.widest ?? null),
    tightestUm: toUm(holds?.tightest ?? null),
    tightestLpi: toLpi(holds?.tightest ?? null),
    missing:
      missing === null
        ? null
        : {
            pitchUm: toUm(missing.pitch),
            pitchLpi: toLpi(missing.pitch),
            faults: missing.faults.map(faultToJson),
          },
  };
}

function weighedToJson(
  { remedy, cost, mends, brings, fillDb, traceDb, gainDb, spareGain }: WeighedRemedy,
  { settings }: SideFit,
): SideFitJson['remedies'][number] {
  return {
    remedy: remedyToJson(remedy),
    text: remedyText(remedy, settings, 'metric'),
    cost: costToJson(cost),
    mends: [...mends],
    brings: brings.length,
    fillDb: roundDb(fillDb),
    traceDb: roundDb(traceDb),
    gainDb: roundDb(gainDb),
    spareGainMm: toMm(spareGain),
  };
}

function leastSetToJson({ remedies, cost, left, headroom, spare }: LeastSet) {
  return {
    remedies: remedies.map(remedyToJson),
    cost: costToJson(cost),
    left: left.map(faultToJson),
    headroom: headroomToJson(headroom),
    spareMm: toMm(spare),
  };
}

function costToJson(cost: number): number {
  return roundRatio(cost) ?? 0;
}

function faultToJson({ id, atSeconds, untilSeconds }: Finding) {
  return { id, atSeconds: roundSeconds(atSeconds), untilSeconds: roundSeconds(untilSeconds) };
}

function headroomToJson({ fillDb, traceDb, recommendedDb, limitedBy }: Headroom) {
  return {
    fillDb: roundDb(fillDb),
    traceDb: roundDb(traceDb),
    recommendedDb: roundDb(recommendedDb),
    limitedBy:
      limitedBy === null
        ? null
        : { id: limitedBy.id, atSeconds: roundSeconds(limitedBy.atSeconds) },
  };
}
