import type { ChalkInstance } from 'chalk';
import type { Failure } from './failure.js';
import { jsonReporter } from './json-reporter.js';
import type { Units } from './length-text.js';
import { ndjsonReporter } from './ndjson-reporter.js';
import { scaleReporter } from './scale-reporter.js';
import { terminalReporter } from './terminal-reporter.js';
import type { ToldFile } from './told-file.js';

/** Turns results, in the order they are told, into text. */
export interface Reporter {
  side(file: ToldFile): string;
  failure(failure: Failure): string;
  /** What comes after the last. */
  end(): string;
}

export interface ReporterOptions {
  readonly units: Units;
  readonly paint: ChalkInstance;
  /** Of the terminal; left out where there is none. */
  readonly columns?: number;
  /** Nothing beyond ASCII, but for names. */
  readonly ascii: boolean;
  /** Whether more than one input is told. */
  readonly isFolder: boolean;
  readonly details: boolean;
  readonly brief: boolean;
  readonly commonLevel: boolean;
  readonly quarters: boolean;
  readonly version: string;
}

export type ReporterName = 'terminal' | 'scale' | 'json' | 'ndjson';

export const REPORTERS: Readonly<Record<ReporterName, (options: ReporterOptions) => Reporter>> = {
  terminal: terminalReporter,
  scale: scaleReporter,
  json: jsonReporter,
  ndjson: ndjsonReporter,
};
