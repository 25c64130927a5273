import type { HotSpotEdges } from '../../../analysis/hot-spot-edges.js';
import type { MotionSummary } from '../../../analysis/motion.js';
import { type PlannedRows, plannedRows } from '../../../model/planned-rows.js';
import type { Seconds } from '../../../units.js';
import { takeFrom } from './byte-planes.js';
import { readEdge } from './edge-columns.js';
import { splitPageBytes } from './page-bytes.js';
import type { PageHead } from './page-head.js';
import { readSummary } from './summary-columns.js';

/** A side as the page's data hold it. */
export interface PageData {
  readonly head: PageHead;
  readonly motion: MotionSummary;
  /** The same however it is planned: a page does not change its silent turns. */
  readonly rows: PlannedRows;
  readonly spots: readonly {
    readonly spotSeconds: Seconds;
    readonly edges: HotSpotEdges;
  }[];
}

/** Reads what `pageData` wrote, once it is inflated. */
export function readPageData(bytes: Uint8Array): PageData {
  const { head: text, planes } = splitPageBytes(bytes);
  const head: PageHead = JSON.parse(text);
  const take = takeFrom(planes);
  const motion = readSummary(take, { ...head.motion, program: head.program });
  const spots = head.spots.map(({ spotSeconds, atSeconds, secondsPerSample, samples, turns }) => ({
    spotSeconds,
    edges: {
      atSeconds,
      secondsPerSample,
      turns: turns.map((turnsFromSpot) => ({
        turnsFromSpot,
        inner: readEdge(take, samples),
        outer: readEdge(take, samples),
      })),
    },
  }));
  return { head, motion, rows: plannedRows(motion, head.settings), spots };
}
