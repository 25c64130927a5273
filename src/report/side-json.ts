import type { VoidAcceptance } from '../accepted/apply-accepted.js';
import type { ProgramChecks } from '../analysis/motion.js';
import type { ForecastedFile, SourceFile } from '../forecast-result.js';
import type { ChannelHeadLoad, Headroom, HotSpot } from '../model/forecast-types.js';
import { settingsToJson } from '../profile/settings-to-json.js';
import { comparisonToJson } from './comparison-json.js';
import { findingToJson } from './finding-json.js';
import { handToJson } from './hand-json.js';
import {
  amplitudeDb,
  powerDb,
  roundDb,
  roundHz,
  roundMeanSquareAcceleration,
  roundRatio,
  roundSeconds,
  toLpi,
  toMil,
  toMm,
  toPercent,
  toUm,
} from './numbers.js';
import { planToJson, quartersToJson } from './plan-json.js';
import { setUp } from './set-up.js';
import type { HotSpotJson, SideJson } from './side-schema.js';
import type { ToldFile } from './told-file.js';
import { orderToJson, trackToJson } from './track-json.js';

export interface JsonOptions {
  /** Whether the columns per quarter turn are wanted. */
  readonly quarters: boolean;
}

/** One side as the output writes it: rounded, with the unit in each name. */
export function sideToJson(file: ToldFile, { quarters }: JsonOptions): SideJson {
  const { forecast, settings } = file;
  return {
    name: file.name,
    settings: settingsToJson(settings),
    sources: file.sources.map(sourceToJson),
    readFrom: file.readFrom,
    durationSeconds: roundSeconds(forecast.durationSeconds),
    turns: roundSeconds(forecast.turns),
    levelDb: roundDb(forecast.levelDb),
    program: programToJson(file.program),
    planner: forecast.planner,
    executes: forecast.executes,
    executesIsSet: settings.executesIsSet,
    verdict: forecast.verdict,
    setup: setupToJson(file),
    plan: planToJson(forecast.plan),
    machine: planToJson(forecast.machine),
    fixed: planToJson(forecast.fixed),
    tightest: { radiusUsedMm: toMm(forecast.tightest.radiusUsed) },
    headroom: headroomToJson(forecast.headroom),
    headLoad: {
      left: headLoadToJson(forecast.headLoad.left),
      right: headLoadToJson(forecast.headLoad.right),
    },
    hotSpots: forecast.hotSpots.map(hotSpotToJson),
    findings: forecast.findings.map((finding) =>
      findingToJson(finding, settings, file.hand?.tracks),
    ),
    voidAcceptances: (file.voidAcceptances ?? []).map(voidAcceptanceToJson),
    ...(file.against === undefined ? {} : { against: comparisonToJson(file.against, settings) }),
    ...(file.hand === undefined ? {} : { hand: handToJson(file.hand) }),
    ...(forecast.tracks === undefined ? {} : { tracks: forecast.tracks.map(trackToJson) }),
    ...(forecast.order === undefined
      ? {}
      : { order: forecast.order === null ? null : orderToJson(forecast.order) }),
    ...(quarters ? { quarters: quartersToJson(forecast.quarters) } : {}),
  };
}

function sourceToJson(source: SourceFile): SideJson['sources'][number] {
  return { ...source, durationSeconds: roundSeconds(source.durationSeconds) };
}

function programToJson(program: ProgramChecks): SideJson['program'] {
  const [left, right] = program.meanSquare;
  return {
    loudnessLufs: roundDb(program.loudnessLufs),
    truePeakDbtp: amplitudeDb(Math.max(...program.truePeak)),
    samplePeakDbfs: amplitudeDb(Math.max(...program.samplePeak)),
    averageDb: powerDb((left + right) / 2),
  };
}

function setupToJson(file: ForecastedFile): SideJson['setup'] {
  const { levelDb, basePitch, width, meterReading, ellipticalHz } = setUp(file);
  return {
    levelDb: roundDb(levelDb),
    basePitchLpi: toLpi(basePitch),
    widthMil: toMil(width),
    meterReading: roundDb(meterReading),
    ellipticalHz: roundHz(ellipticalHz),
  };
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

function headLoadToJson({ oneSecond, tenSeconds, limitRatio }: ChannelHeadLoad) {
  return {
    oneSecondM2PerS4: roundMeanSquareAcceleration(oneSecond),
    tenSecondsM2PerS4: roundMeanSquareAcceleration(tenSeconds),
    limitRatio: roundRatio(limitRatio),
  };
}

function hotSpotToJson(spot: HotSpot): HotSpotJson {
  const { survives } = spot;
  return {
    atSeconds: roundSeconds(spot.atSeconds),
    turn: roundSeconds(spot.turn),
    radiusMm: toMm(spot.radius),
    diameterMm: toMm(2 * spot.radius),
    landUm: toUm(spot.land),
    landNominalUm: toUm(spot.landNominal),
    pitchUm: toUm(spot.pitch),
    cause: spot.cause,
    frequencyHz: roundHz(spot.frequency),
    wall: spot.wall,
    overcutDepthUm: toUm(spot.overcutDepth),
    reachesContact: spot.reachesContact,
    survives:
      survives === null
        ? null
        : {
            speedPercent: toPercent(survives.speed),
            depthUm: toUm(survives.depth),
            delaySeconds: roundSeconds(survives.delay),
          },
    track: spot.track ?? null,
  };
}

function voidAcceptanceToJson({ entry, why }: VoidAcceptance): SideJson['voidAcceptances'][number] {
  const { id, fromSeconds, untilSeconds, reason } = entry;
  return {
    id,
    fromSeconds: roundSeconds(fromSeconds),
    untilSeconds: roundSeconds(untilSeconds),
    reason,
    why,
  };
}
