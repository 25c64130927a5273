import type { ForecastedFile } from '../forecast-result.js';
import type { CommonLevelSide } from '../model/common-level.js';
import type { Finding, PlanReport, SideForecast, Verdict } from '../model/forecast-types.js';
import type { Metres, Seconds } from '../units.js';
import { commonLevelSide } from './common-level-side.js';
import { worstFinding } from './folder-worst-finding.js';
import { levelHolds } from './level-holds.js';
import { executesText } from './set-up-text.js';

/** Where a program ends under one plan. */
export interface FolderEnd {
  readonly endDiameter: Metres;
  readonly spare: Metres;
}

/** A side as one row of a folder's table: a few numbers, so that hundreds of them are small. */
export interface FolderRow extends CommonLevelSide {
  readonly durationSeconds: Seconds;
  readonly verdict: Verdict;
  /** The level planned for. */
  readonly levelDb: number;
  readonly executes: SideForecast['executes'];
  /** What verdict, land and level are about, in words. */
  readonly holdsFor: string;
  readonly machine: FolderEnd;
  readonly plan: FolderEnd;
  /** Of what the lathe executes. */
  readonly executed: FolderEnd;
  readonly landMin: Metres;
  readonly worst: Finding | null;
  /** How many findings the house accepts. */
  readonly accepted: number;
}

export function folderRow(file: ForecastedFile): FolderRow {
  const { forecast } = file;
  const { executes } = forecast;
  const executed = forecast[executes];
  return {
    ...commonLevelSide(file),
    durationSeconds: forecast.durationSeconds,
    verdict: forecast.verdict,
    levelDb: forecast.levelDb,
    executes,
    holdsFor: executesText(forecast),
    machine: endOf(forecast.machine),
    plan: endOf(forecast.plan),
    executed: endOf(executed),
    landMin: executed.landMin,
    worst: worstFinding(forecast.findings),
    accepted: forecast.findings.filter(({ accepted }) => accepted !== undefined).length,
  };
}

/**
 * Whether a row does not say enough of a side: it is not clear, its level does not hold, or a
 * running order was asked for.
 */
export function needsDetails({ forecast }: ForecastedFile): boolean {
  return forecast.verdict !== 'clear' || !levelHolds(forecast) || forecast.order !== undefined;
}

function endOf({ endDiameter, spare }: PlanReport): FolderEnd {
  return { endDiameter, spare };
}
