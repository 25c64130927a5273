import type { ForecastedFile } from '../forecast-result.js';
import type { CommonLevelSide } from '../model/common-level.js';

/** What the common level needs to know of a forecast. */
export function commonLevelSide(file: ForecastedFile): CommonLevelSide {
  const { name, sources, settings, forecast } = file;
  return {
    name,
    path: sources[0]?.path ?? name,
    headroom: forecast.headroom,
    levelStep: settings.levelStep,
    isSilent: forecast.findings.some(({ id }) => id === 'silent'),
  };
}
