import type { ForecastedFile } from '../forecast-result.js';
import type { SideForecast } from '../model/forecast-types.js';
import { limitIsAccepted } from './accepted-limit.js';
import { fixed, frequencyText, levelText, type Units } from './length-text.js';
import { levelHolds } from './level-holds.js';
import { safePitchText } from './safe-pitch-text.js';
import { type SetUp, setUp, startOf } from './set-up.js';
import { widthText } from './width-text.js';

const SILENT = 'nothing to dial in, since there is no sound to cut.';

/**
 * What to dial in, as a sentence; where that is not what was planned, why; and if no level holds,
 * that.
 */
export function setUpText(file: ForecastedFile, units: Units): string {
  const set = setUp(file);
  const { forecast, settings } = file;
  if (forecast.findings.some(({ id }) => id === 'silent')) return SILENT;
  const dials = [
    `base pitch ${safePitchText(set.basePitch, settings.pitchStep, units)}`,
    `groove ${widthText(set.width, units)}`,
    ...meterTexts(file, set),
    set.ellipticalHz === null ? 'elliptical out' : `elliptical ${frequencyText(set.ellipticalHz)}`,
  ];
  const notes = [...levelNote(file, set), ...stepNotes(file, set, units)].join('; ');
  const why = notes === '' ? '' : ` ${notes.charAt(0).toUpperCase()}${notes.slice(1)}.`;
  if (forecast.headroom.recommendedDb === null) {
    return `no level from -12 to +12 dB holds. The rest to dial in: ${dials.join(', ')}.${why}`;
  }
  return `dial in level ${stepLevelText(set.levelDb, settings.levelStep)}, ${dials.join(', ')}.${why}`;
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

/** Where the house has a table of its meter: the reading, or that the width lies outside of it. */
function meterTexts({ settings }: ForecastedFile, { meterReading }: SetUp): string[] {
  if (settings.depthMeter === null) return [];
  if (meterReading === null) return ["outside the depth meter's table"];
  return [`depth meter ${Number(fixed(meterReading, 2))}`];
}

/** Why the level is not the planned one. */
function levelNote({ forecast, settings }: ForecastedFile, { levelDb }: SetUp): string[] {
  const { recommendedDb } = forecast.headroom;
  if (recommendedDb === null || levelDb >= forecast.levelDb) return [];
  const planned = levelText(forecast.levelDb, hundredths(forecast.levelDb));
  const why = levelHolds(forecast)
    ? 'is no step of the control'
    : limitIsAccepted(forecast, settings)
      ? 'holds only with what is accepted'
      : 'does not hold';
  return [`the planned ${planned} ${why}`];
}

/** What the steps of the controls make different from what was planned. */
function stepNotes(file: ForecastedFile, set: SetUp, units: Units): string[] {
  const { pitchStep } = file.settings;
  const { basePitch, ellipticalHz } = startOf(file);
  const isWider = set.basePitch > basePitch * (1 + 1e-9);
  const isOther = ellipticalHz !== null && set.ellipticalHz !== ellipticalHz;
  return [
    ...(isWider
      ? [
          `the pitch is planned at ${safePitchText(basePitch, pitchStep, units)}, ` +
            'the next step up takes more radius than is told here',
        ]
      : []),
    ...(isOther
      ? [
          `the elliptical was forecast at ${frequencyText(ellipticalHz)}, which is no position of it`,
        ]
      : []),
  ];
}

/** A level with as many digits as its step has, so that a quarter of a decibel stays one. */
function stepLevelText(levelDb: number, step: number): string {
  return levelText(levelDb, hundredths(step));
}

/** Digits beyond the first that a number of decibels needs: 0 or 1. */
function hundredths(decibels: number): 0 | 1 {
  return Math.abs(decibels * 10 - Math.round(decibels * 10)) > 1e-6 ? 1 : 0;
}
