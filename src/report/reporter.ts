import type { ChalkInstance } from 'chalk';
import type { Failure } from './failure.js';
import type { Units } from './length-text.js';
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

type MakeReporter = (options: ReporterOptions) => Reporter;

/** Each is loaded only where it is asked for. */
const LOADERS: Readonly<Record<ReporterName, () => Promise<MakeReporter>>> = {
  terminal: async () => (await import('./terminal-reporter.js')).terminalReporter,
  scale: async () => (await import('./scale-reporter.js')).scaleReporter,
  json: async () => (await import('./json-reporter.js')).jsonReporter,
  ndjson: async () => (await import('./ndjson-reporter.js')).ndjsonReporter,
};

export async function reporterOf(name: ReporterName, options: ReporterOptions): Promise<Reporter> {
  return (await LOADERS[name]())(options);
}
