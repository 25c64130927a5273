import type { ForecastedFile } from '../../src/forecast-result.js';
import { sideToJson } from '../../src/report/side-json.js';

/** A side's JSON with its quarters, but for what only audio can tell and where it was read from. */
export function forecastText(file: ForecastedFile): string {
  const side = sideToJson(file, { quarters: true });
  const sources = side.sources.map((source) => ({ ...source, path: 'the source' }));
  const hotSpots = side.hotSpots.map(({ survives, ...spot }) => ({
    ...spot,
    survives: survives === null ? null : { ...survives, speedPercent: 'asks for audio' },
  }));
  return JSON.stringify({ ...side, sources, hotSpots, readFrom: 'anywhere' });
}
