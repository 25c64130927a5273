import type { CommonLevelJson } from './common-level-schema.js';
import type { Failure } from './failure.js';
import { FORMAT } from './forecast-format.js';
import type { ForecastJson } from './forecast-schema.js';
import { jsonText } from './json-text.js';
import type { SideJson } from './side-schema.js';
import type { SplitJson } from './split-schema.js';

/** An array of numbers that jsonText has spread over lines. */
const SPREAD = /\[\n\s+((?:[-+.\de]+|null)(?:,\n\s+(?:[-+.\de]+|null))*)\n\s+\]/g;

/** The whole result as one JSON text, a line a field; a column of numbers is one line. */
export function forecastJson(document: ForecastJson): string {
  // Inside a JSON string there is no line break, so the pattern meets only arrays.
  const text = jsonText(document, 2).replace(
    SPREAD,
    (_, numbers: string) => `[${numbers.replace(/\n\s+/g, ' ')}]`,
  );
  return `${text}\n`;
}

/** The document `furrow.forecast/1`; `common` only where asked for, `splits` where there are any. */
export function forecastDocument(
  sides: readonly SideJson[],
  failures: readonly Failure[],
  version: string,
  common: CommonLevelJson | null = null,
  splits: readonly SplitJson[] = [],
): ForecastJson {
  return {
    format: FORMAT,
    furrow: version,
    sides: [...sides],
    failures: failures.map(({ path, code, message }) => ({ path, code, message })),
    ...(common === null ? {} : { commonLevel: common }),
    ...(splits.length === 0 ? {} : { splits: [...splits] }),
  };
}
