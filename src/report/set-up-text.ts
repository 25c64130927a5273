import type { ForecastedFile } from '../forecast-result.js';
import type { SideForecast } from '../model/forecast-types.js';
import {
  fixed,
  frequencyText,
  lengthText,
  levelText,
  lpiText,
  pitchText,
  type Units,
} from './length-text.js';
import { setUp } from './set-up.js';

/**
 * What to dial in, as a sentence; if it is less than what was planned, or no level holds, that is
 * said.
 */
export function setUpText(file: ForecastedFile, units: Units): string {
  const { levelDb, basePitch, width, meterReading, ellipticalHz } = setUp(file);
  const { forecast } = file;
  const lines =
    units === 'metric'
      ? `${lpiText(basePitch)} (${pitchText(basePitch, units)})`
      : lpiText(basePitch);
  const dials = [
    lines,
    `groove ${lengthText(width, units)}`,
    ...(meterReading === null ? [] : [`depth meter ${fixed(meterReading, 2)}`]),
    ellipticalHz === null ? 'no elliptical' : `elliptical ${frequencyText(ellipticalHz)}`,
  ];
  if (forecast.headroom.recommendedDb === null) {
    return `no level from -12 to +12 dB holds. The rest to dial in: ${dials.join(', ')}.`;
  }
  const planned = levelText(forecast.levelDb);
  const why = levelDb < forecast.levelDb ? `; the planned ${planned} does not hold` : '';
  return `dial in level ${levelText(levelDb)}, ${dials.join(', ')}${why}.`;
}

/** What the verdict assumes when no profile says it; nothing otherwise. */
export function assumptionText({ forecast, settings }: ForecastedFile): string {
  return settings.executesIsSet ? '' : ` (assuming ${executesText(forecast)})`;
}

/** Whose pitch and depth the verdict is about. */
export function executesText({ executes, planner }: SideForecast): string {
  switch (executes) {
    case 'machine':
      return "the lathe's own automation";
    case 'plan':
      return `the plan (${planner})`;
    case 'fixed':
      return 'fixed pitch and depth';
  }
}
