import { type CommonLevelSide, commonLevel } from '../model/common-level.js';
import { commonLevelToJson } from './common-level-json.js';
import { commonLevelSide } from './common-level-side.js';
import type { Failure } from './failure.js';
import { forecastDocument, forecastJson } from './json.js';
import type { Reporter, ReporterOptions } from './reporter.js';
import { sideToJson } from './side-json.js';
import type { SideJson } from './side-schema.js';
import { splitToJson } from './split-json.js';
import type { SplitJson } from './split-schema.js';

/** One document, written when all is known. */
export function jsonReporter(options: ReporterOptions): Reporter {
  // Only what is written is kept: the columns of many sides would fill the memory.
  const sides: SideJson[] = [];
  const failures: Failure[] = [];
  const levels: CommonLevelSide[] = [];
  const splits: SplitJson[] = [];
  return {
    side: (file) => {
      sides.push(sideToJson(file, options));
      levels.push(commonLevelSide(file));
      splits.push(...splitToJson(file));
      return '';
    },
    failure: (failure) => {
      failures.push(failure);
      return '';
    },
    end: () => {
      const common = options.commonLevel ? commonLevelToJson(commonLevel(levels)) : null;
      return forecastJson(forecastDocument(sides, failures, options.version, common, splits));
    },
  };
}
