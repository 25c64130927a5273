import type { PlanReport, QuarterColumns } from '../model/forecast-types.js';
import { roundRatio, roundSeconds, toLpi, toMm, toUm } from './numbers.js';
import type { PlanJson, QuartersJson } from './side-schema.js';

export function planToJson(plan: PlanReport): PlanJson {
  return {
    radiusUsedMm: toMm(plan.radiusUsed),
    startDiameterMm: toMm(plan.startDiameter),
    endDiameterMm: toMm(plan.endDiameter),
    spareMm: toMm(plan.spare),
    fits: plan.fits,
    pitchMinUm: toUm(plan.pitchMin),
    pitchMeanUm: toUm(plan.pitchMean),
    pitchMaxUm: toUm(plan.pitchMax),
    meanLpi: toLpi(plan.pitchMean),
    landMinUm: toUm(plan.landMin),
    landMinAtSeconds: roundSeconds(plan.landMinAtSeconds),
    widthMinUm: toUm(plan.widthMin),
    widthMinAtSeconds: roundSeconds(plan.widthMinAtSeconds),
    widthMaxUm: toUm(plan.widthMax),
    cutDepthMaxUm: toUm(plan.cutDepthMax),
    facetMax: roundRatio(plan.facetMax),
    facetMaxAtSeconds: roundSeconds(plan.facetMaxAtSeconds),
    bendMinUm: toUm(plan.bendMin),
    bendMinAtSeconds: roundSeconds(plan.bendMinAtSeconds),
    bendShareSpherical: roundRatio(plan.bendShareSpherical),
    bendShareLine: roundRatio(plan.bendShareLine),
  };
}

export function quartersToJson(columns: QuarterColumns): QuartersJson {
  return {
    atSeconds: Array.from(columns.atSeconds, roundSeconds),
    radiusMm: Array.from(columns.radius, toMm),
    pitchUm: Array.from(columns.pitch, toUm),
    machinePitchUm: Array.from(columns.machinePitch, toUm),
    widthSetUm: Array.from(columns.widthSet, toUm),
    widthMinUm: Array.from(columns.widthMin, toUm),
    widthMaxUm: Array.from(columns.widthMax, toUm),
    cutDepthMaxUm: Array.from(columns.cutDepthMax, toUm),
    landUm: Array.from(columns.land, toUm),
    landNominalUm: Array.from(columns.landNominal, toUm),
    machineLandUm: Array.from(columns.machineLand, toUm),
    approachUm: Array.from(columns.approach, toUm),
    approachLooseUm: Array.from(columns.approachLoose, toUm),
    lateralUm: Array.from(columns.lateral, toUm),
    liftUm: Array.from(columns.lift, toUm),
    sinkUm: Array.from(columns.sink, toUm),
    facetMax: Array.from(columns.facetMax, roundRatio),
    bendMinUm: Array.from(columns.bendMin, toUm),
    lowCorrelation: Array.from(columns.lowCorrelation, roundRatio),
    lowVerticalShare: Array.from(columns.lowVerticalShare, roundRatio),
  };
}
