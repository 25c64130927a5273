import * as z from 'zod';
import { lpi, mm, place, ratio, um } from './measures-schema.js';

/** One planner's plan: extremes over all planned quarters, pitch figures over the program's. */
export const planSchema = z.strictObject({
  radiusUsedMm: mm,
  startDiameterMm: mm,
  endDiameterMm: mm,
  spareMm: mm.describe('mm of radius to the inner limit; negative: the program does not fit'),
  fits: z.boolean(),
  pitchMinUm: um,
  pitchMeanUm: um,
  pitchMaxUm: um,
  meanLpi: lpi,
  landMinUm: um.describe('µm, with the lathe as far off as the profile admits; negative: overcut'),
  landMinAtSeconds: place,
  widthMinUm: um,
  widthMinAtSeconds: place,
  widthMaxUm: um,
  cutDepthMaxUm: um,
  facetMax: ratio.describe('edge velocity over groove speed'),
  facetMaxAtSeconds: place,
  bendMinUm: um.describe('µm, least radius of curvature of a wall; null in silence'),
  bendMinAtSeconds: place,
  bendShareSpherical: ratio.describe('share of the worst second under the spherical tip'),
  bendShareLine: ratio.describe('share of the worst second under the line tip'),
});

const column = (values: z.ZodNullable<z.ZodNumber>) => z.array(values);

/** Columns over the quarter turns that the program touches, at the planned level. */
export const quartersSchema = z.strictObject({
  atSeconds: column(place),
  radiusMm: column(mm),
  pitchUm: column(um),
  machinePitchUm: column(um),
  widthSetUm: column(um.describe('µm, width without modulation at the start of the quarter')),
  widthMinUm: column(um),
  widthMaxUm: column(um),
  cutDepthMaxUm: column(um),
  landUm: column(um),
  landNominalUm: column(um),
  machineLandUm: column(um),
  approachUm: column(um),
  approachLooseUm: column(um),
  lateralUm: column(um),
  liftUm: column(um),
  sinkUm: column(um),
  facetMax: column(ratio),
  bendMinUm: column(um),
  lowCorrelation: column(ratio),
  lowVerticalShare: column(ratio),
});
