import type { Seconds } from '../units.js';

/** Where the edges of the turns around a hot spot run, the same angles in each. */
export interface HotSpotEdges {
  /** Program time of sample 0 in the turn of the hot spot. */
  readonly atSeconds: Seconds;
  readonly secondsPerSample: Seconds;
  /** From the outside in; a turn that is not cut is left out. */
  readonly turns: readonly EdgeTurn[];
}

/** One turn's edges, displacement only: half-width and pitch come from the plan. */
export interface EdgeTurn {
  /** −1 lies one turn outside the hot spot, cut one turn earlier; 1 one turn inside. */
  readonly turnsFromSpot: -1 | 0 | 1;
  /** √2·u_L, m at level 0 dB. */
  readonly inner: Float32Array;
  /** √2·u_R, m at level 0 dB. */
  readonly outer: Float32Array;
}
