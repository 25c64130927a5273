import type { HotSpotEdges } from '../../../analysis/hot-spot-edges.js';
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
  /** What the page's data keep of it. */
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

export type { HotSpotEdges } from '../../../analysis/hot-spot-edges.js';

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
