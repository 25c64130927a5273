import type { MotionSummary } from '../../../analysis/motion.js';
import type { SideForecast } from '../../../model/forecast-types.js';
import type { PlannedSide } from '../../../model/planned-side.js';
import type { Verified } from '../../../model/verify.js';
import type { Settings } from '../../../settings.js';
import type { Units } from '../../length-text.js';

/** What every picture is drawn from: one side as the page knows it at this moment. SI. */
export interface PageSide {
  readonly name: string;
  readonly settings: Settings;
  /** As the page's data hold it: float32, widened to float64. */
  readonly motion: MotionSummary;
  readonly side: PlannedSide;
  readonly machine: Verified;
  readonly plan: Verified;
  /** The one that the verdict is about. */
  readonly executed: Verified;
  readonly forecast: SideForecast;
  readonly units: Units;
  /** Edges around each hot spot, in their order; null where they are not kept. */
  readonly microscope: readonly (HotSpotEdges | null)[];
}

/** Where the edges of the turns around a hot spot run, the same angles in each. */
export interface HotSpotEdges {
  /** Program time of sample 0 of the turn of the hot spot. */
  readonly atSeconds: number;
  readonly secondsPerSample: number;
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

/** A picture of the side: drawn anew by `update`, its cursor moved by `show`. */
export interface Picture {
  readonly element: HTMLElement;
  update(side: PageSide): void;
  show(place: { readonly atSeconds: number } | null): void;
}

/** What a picture tells the page. */
export interface PictureEvents {
  /** The cursor is over a place; null: over none. */
  hover(atSeconds: number | null): void;
  /** The reader wants to see this place in all pictures. */
  go(atSeconds: number): void;
}

export type MakePicture = (document: Document, events: PictureEvents) => Picture;
