import { type CommonLevelSide, commonLevel } from '../model/common-level.js';
import type { Verdict } from '../model/forecast-types.js';
import { commonLevelToJson } from './common-level-json.js';
import { commonLevelSide } from './common-level-side.js';
import { failureLine, sideLine, summaryLine } from './ndjson.js';
import type { Reporter, ReporterOptions } from './reporter.js';
import { splitToJson } from './split-json.js';
import type { SplitJson } from './split-schema.js';

/** A line a result, as soon as its turn has come; then a summary. */
export function ndjsonReporter(options: ReporterOptions): Reporter {
  const verdicts: Verdict[] = [];
  const levels: CommonLevelSide[] = [];
  const splits: SplitJson[] = [];
  let failures = 0;
  return {
    side: (file) => {
      verdicts.push(file.forecast.verdict);
      levels.push(commonLevelSide(file));
      splits.push(...splitToJson(file));
      return sideLine(file, options);
    },
    failure: (failure) => {
      failures += 1;
      return failureLine(failure);
    },
    end: () => {
      const common = options.commonLevel ? commonLevelToJson(commonLevel(levels)) : null;
      return summaryLine(verdicts, failures, options.version, common, splits);
    },
  };
}
