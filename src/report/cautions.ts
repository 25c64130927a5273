import type { ForecastedFile } from '../forecast-result.js';

export const TEST_CUT =
  'A forecast is no substitute for a test cut under the microscope by someone qualified.';
export const HEAD_LIMIT =
  "The cutter head's thermal limit is its maker's; furrow does not know it.";
export const COATING = 'Cutting through the coating ruins the cutting stylus.';
export const HOT_STYLUS = 'Hot cutting styli and nitrocellulose swarf burn.';

/** Share of depthMax from which a cut is near the bottom of the coating. */
const NEAR_BOTTOM = 0.8;

/** What has to be said before this side is cut. */
export function cautionsOf(file: ForecastedFile): string[] {
  return [
    ...(drivesHead(file) ? [HEAD_LIMIT] : []),
    ...(nearsBottom(file) ? [COATING] : []),
    ...(file.settings.medium === 'lacquer' ? [HOT_STYLUS] : []),
    TEST_CUT,
  ];
}

/** Treble, or a level above the house's own, is what heats a head. */
function drivesHead({ forecast }: ForecastedFile): boolean {
  const { levelDb, findings, headroom } = forecast;
  if (levelDb > 0 || (headroom.recommendedDb ?? 0) > 0) return true;
  return findings.some(({ id }) => id === 'facet' || id === 'tight-bend' || id === 'ultrasonic');
}

function nearsBottom({ forecast, settings }: ForecastedFile): boolean {
  const plans = [forecast.machine, forecast.plan, forecast.fixed];
  return plans.some(({ cutDepthMax }) => cutDepthMax > NEAR_BOTTOM * settings.depthMax);
}
