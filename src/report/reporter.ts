import type { ChalkInstance } from 'chalk';
import type { ForecastedFile } from '../forecast-result.js';
import type { Verdict } from '../model/forecast-types.js';
import { cautionsOf, cautionText } from './caution-text.js';
import type { Failure } from './failure.js';
import { forecastDocument, forecastJson } from './json.js';
import type { Units } from './length-text.js';
import { failureLine, sideLine, summaryLine } from './ndjson.js';
import { sideToJson } from './side-json.js';
import type { SideJson } from './side-schema.js';
import { sideText } from './terminal.js';

/** Turns results, in the order they are told, into text. */
export interface Reporter {
  side(file: ForecastedFile): string;
  failure(failure: Failure): string;
  /** What comes after the last. */
  end(): string;
}

export interface ReporterOptions {
  readonly units: Units;
  readonly paint: ChalkInstance;
  readonly quarters: boolean;
  readonly version: string;
}

export type ReporterName = 'terminal' | 'json' | 'ndjson';

export const REPORTERS: Readonly<Record<ReporterName, (options: ReporterOptions) => Reporter>> = {
  terminal: terminalReporter,
  json: jsonReporter,
  ndjson: ndjsonReporter,
};

/** Failures are for the other stream. */
function terminalReporter(options: ReporterOptions): Reporter {
  const cautions = new Set<string>();
  return {
    side: (file) => {
      for (const caution of cautionsOf(file)) cautions.add(caution);
      return `${sideText(file, options)}\n`;
    },
    failure: () => '',
    end: () => cautionText(cautions),
  };
}

function jsonReporter(options: ReporterOptions): Reporter {
  // Only what is written is kept: the columns of many sides would fill the memory.
  const sides: SideJson[] = [];
  const failures: Failure[] = [];
  return {
    side: (file) => {
      sides.push(sideToJson(file, options));
      return '';
    },
    failure: (failure) => {
      failures.push(failure);
      return '';
    },
    end: () => forecastJson(forecastDocument(sides, failures, options.version)),
  };
}

function ndjsonReporter(options: ReporterOptions): Reporter {
  const verdicts: Verdict[] = [];
  let failures = 0;
  return {
    side: (file) => {
      verdicts.push(file.forecast.verdict);
      return sideLine(file, options);
    },
    failure: (failure) => {
      failures += 1;
      return failureLine(failure);
    },
    end: () => summaryLine(verdicts, failures, options.version),
  };
}
