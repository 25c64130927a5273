import type { SideForecast } from '../model/forecast-types.js';

/**
 * Whether the side fits and traces at the level it was asked for. The recommended level is a step of
 * the control, and may be lower without that.
 */
export function levelHolds({ levelDb, headroom }: SideForecast): boolean {
  const { fillDb, traceDb } = headroom;
  return fillDb !== null && traceDb !== null && Math.min(fillDb, traceDb) >= levelDb;
}
