import type { ForecastedFile } from '../forecast-result.js';
import type { Finding, FindingId } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import { limitIsAccepted } from './accepted-limit.js';
import { setUp } from './set-up.js';

/** What the client's text needs of a side; small, where a forecast with its columns is large. */
export interface ClientSide {
  readonly name: string;
  readonly durationSeconds: Seconds;
  /** Without those the house accepts. */
  readonly findings: readonly Finding[];
  /** How much quieter than asked it has to be cut, dB; null: no level holds. */
  readonly quieterDb: number | null;
  /** What is in the way of more level; null for nothing, and for what the house accepts. */
  readonly limitedBy: FindingId | null;
}

/**
 * It has to be quieter only if there is a fault at the level that was asked for. A fault of the
 * file itself is not the level's, so that the level may hold all the same.
 */
export function clientSide(file: ForecastedFile): ClientSide {
  const { levelDb, durationSeconds, headroom, findings } = file.forecast;
  const open = findings.filter(({ accepted }) => accepted === undefined);
  const hasFault = open.some(({ severity }) => severity === 'fault');
  const quieter = headroom.recommendedDb === null ? null : levelDb - setUp(file).levelDb;
  return {
    name: file.name,
    durationSeconds,
    findings: open,
    quieterDb: hasFault ? quieter : 0,
    limitedBy: limitIsAccepted(file.forecast, file.settings)
      ? null
      : (headroom.limitedBy?.id ?? null),
  };
}
