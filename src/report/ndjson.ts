import type { Verdict } from '../model/forecast-types.js';
import type { CommonLevelJson } from './common-level-schema.js';
import type { Failure } from './failure.js';
import { FORMAT } from './forecast-format.js';
import type { Line } from './forecast-schema.js';
import { jsonText } from './json-text.js';
import { type JsonOptions, sideToJson } from './side-json.js';
import type { SplitJson } from './split-schema.js';
import type { ToldFile } from './told-file.js';

/** A side as one line. */
export function sideLine(file: ToldFile, options: JsonOptions): string {
  return line({ format: FORMAT, type: 'side', ...sideToJson(file, options) });
}

/** A failure as one line. */
export function failureLine({ path, code, message }: Failure): string {
  return line({ format: FORMAT, type: 'failure', path, code, message });
}

/** The last line: how many there were of what; `common` only where asked for, `splits` if any. */
export function summaryLine(
  verdicts: readonly Verdict[],
  failures: number,
  version: string,
  common: CommonLevelJson | null,
  splits: readonly SplitJson[],
): string {
  const count = (verdict: Verdict) => verdicts.filter((each) => each === verdict).length;
  return line({
    format: FORMAT,
    type: 'summary',
    furrow: version,
    sides: verdicts.length,
    clear: count('clear'),
    caution: count('caution'),
    fault: count('fault'),
    failures,
    ...(common === null ? {} : { commonLevel: common }),
    ...(splits.length === 0 ? {} : { splits: [...splits] }),
  });
}

function line(value: Line): string {
  return `${jsonText(value)}\n`;
}
