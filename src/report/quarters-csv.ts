import type { QuarterColumns } from '../model/forecast-types.js';
import { type Cell, csvText } from './csv.js';
import { quartersToJson } from './plan-json.js';

/** The columns per quarter turn, named and rounded as in the JSON, a row a quarter; ASCII. */
export function quartersCsv(file: {
  readonly forecast: { readonly quarters: QuarterColumns };
}): string {
  const json = quartersToJson(file.forecast.quarters);
  const columns = Object.entries(json).map(
    ([name, values]) => [name, (quarter: number): Cell => values[quarter] ?? null] as const,
  );
  return csvText(Object.fromEntries(columns), json.atSeconds.keys());
}
