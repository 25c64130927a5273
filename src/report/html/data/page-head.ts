import type { EdgeTurn } from '../../../analysis/hot-spot-edges.js';
import type { MotionSummary, ProgramChecks } from '../../../analysis/motion.js';
import type { ForecastedFile, SourceFile } from '../../../forecast-result.js';
import type { Finding, Headroom, SideForecast, Survives } from '../../../model/forecast-types.js';
import type { HandSettings } from '../../../model/side-plan-input.js';
import type { Planner, Settings } from '../../../settings.js';
import type { Seconds } from '../../../units.js';
import type { Units } from '../../length-text.js';
import type { LeastClasses } from './kept-motion.js';

/** What a page knows beside its columns, as JSON. */
export interface PageHead {
  readonly name: string;
  readonly sources: readonly SourceFile[];
  readonly truncated: boolean;
  readonly readFrom: ForecastedFile['readFrom'];
  readonly settings: Settings;
  readonly program: ProgramChecks;
  /** What the operator sets by hand along the side; null where there is nothing. */
  readonly hand: HandSettings | null;
  readonly motion: Pick<MotionSummary, 'turnSeconds' | 'durationSeconds' | 'quarterCount'>;
  readonly leastClasses: LeastClasses;
  readonly levelDb: number;
  readonly planner: Planner;
  readonly units: Units;
  /** The levels that can be tried, dB. */
  readonly levels: { readonly least: number; readonly most: number };
  readonly headroom: Headroom;
  readonly tightest: SideForecast['tightest'];
  /** What the hot spots of the file's own forecast survive. */
  readonly survives: readonly (Pick<Survives, 'speed'> & { readonly atSeconds: Seconds })[];
  /** What the house has accepted of the file's own findings. */
  readonly accepted: readonly Finding[];
  /** The words that begin the equivalent command, up to the options. */
  readonly command: readonly string[];
  /** What is given to it: files. */
  readonly paths: readonly string[];
  readonly spots: readonly KeptSpot[];
}

/** The edges kept around one hot spot; their samples come after what is kept of the summary. */
export interface KeptSpot {
  /** The hot spot's own place. */
  readonly spotSeconds: Seconds;
  /** Of sample 0. */
  readonly atSeconds: Seconds;
  readonly secondsPerSample: Seconds;
  readonly samples: number;
  readonly turns: readonly EdgeTurn['turnsFromSpot'][];
}
