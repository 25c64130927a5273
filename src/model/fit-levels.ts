import type { Planner } from '../settings.js';
import { type Judgement, judge } from './fit-judge.js';
import type { SourceFacts } from './forecast-types.js';
import type { PlannedSide } from './planned-side.js';

/** The levels that are laid against the spare radius, dB, and their step where none is known. */
const LOWEST_DB = -6;
const HIGHEST_DB = 6;

/** One level, by each of the planners that were asked. */
export interface LevelRow {
  readonly levelDb: number;
  /** In the order of the planners. */
  readonly judgements: readonly Judgement[];
}

/** Level against spare: what each planner makes of the side from −6 to +6 dB. */
export function levelRows(
  side: PlannedSide,
  planners: readonly Planner[],
  source: SourceFacts,
): LevelRow[] {
  return levels(side.settings.levelStep).map((levelDb) => ({
    levelDb,
    judgements: planners.map((planner) => judge(side, planner, levelDb, source)),
  }));
}

/**
 * Whole steps of the level control, none finer than half a decibel: a step that is, is taken as
 * often as makes half a decibel or more.
 */
function levels(levelStep: number): number[] {
  const step = levelStep * Math.max(1, Math.ceil(0.5 / levelStep - 1e-9));
  const first = Math.ceil(LOWEST_DB / step - 1e-9);
  const last = Math.floor(HIGHEST_DB / step + 1e-9);
  // Adding 0 turns −0 into 0.
  return Array.from({ length: last - first + 1 }, (_, at) => (first + at) * step + 0);
}
