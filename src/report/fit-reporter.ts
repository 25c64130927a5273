import type { SideFit } from '../fit/fit-result.js';
import { cautionText, HEAD_LIMIT, TEST_CUT } from './caution-text.js';
import type { Failure } from './failure.js';
import { fitDocument, fitToJson } from './fit-json.js';
import type { SideFitJson } from './fit-schema.js';
import { type FitTextOptions, fitText } from './fit-text.js';

export interface FitReporterOptions extends FitTextOptions {
  readonly json: boolean;
  readonly version: string;
}

/** Turns fits, in the order they are told, into text. */
export interface FitReporter {
  side(fit: SideFit): string;
  failure(failure: Failure): string;
  /** What comes after the last. */
  end(): string;
}

/** Text as sides are done, or one JSON document when all are. */
export function fitReporter(options: FitReporterOptions): FitReporter {
  const { json, version } = options;
  if (!json) {
    let told = 0;
    return {
      side: (fit) => {
        told += 1;
        return fitText(fit, options);
      },
      // Told on the other stream.
      failure: () => '',
      end: () => (told === 0 ? '' : cautionText(new Set([HEAD_LIMIT, TEST_CUT]), options.columns)),
    };
  }
  // Only what is written is kept: the columns of many sides would fill the memory.
  const sides: SideFitJson[] = [];
  const failures: Failure[] = [];
  return {
    side: (fit) => {
      sides.push(fitToJson(fit));
      return '';
    },
    failure: (failure) => {
      failures.push(failure);
      return '';
    },
    end: () => `${JSON.stringify(fitDocument(sides, failures, version), null, 2)}\n`,
  };
}
