import type { HotSpotEdges } from '../../../analysis/hot-spot-edges.js';
import type { MotionSummary } from '../../../analysis/motion.js';
import { type PlannedRows, plannedRows } from '../../../model/planned-rows.js';
import type { Seconds } from '../../../units.js';
import { codeEdges, edgeOfSteps } from './code-edge.js';
import { codeMotion } from './code-motion.js';
import { emptyKept } from './kept-motion.js';
import { keptSummary } from './kept-summary.js';
import { splitPageBytes } from './page-bytes.js';
import type { PageHead } from './page-head.js';
import { rangeDecoder } from './range-coder.js';

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
  const { head: text, coded } = splitPageBytes(bytes);
  const head: PageHead = JSON.parse(text);
  const coder = rangeDecoder(coded);
  const kept = emptyKept(head.motion.quarterCount, head.leastClasses);
  codeMotion(coder, kept);
  const { motion, movedWallAt } = keptSummary(kept, { ...head.motion, program: head.program });
  const read = head.spots.map(({ samples, turns }) =>
    turns.map((turnsFromSpot) => ({
      turnsFromSpot,
      inner: new Int32Array(samples),
      outer: new Int32Array(samples),
    })),
  );
  codeEdges(
    coder,
    read.flat().flatMap(({ inner, outer }) => [inner, outer]),
  );
  const spots = head.spots.map(({ spotSeconds, atSeconds, secondsPerSample }, spot) => ({
    spotSeconds,
    edges: {
      atSeconds,
      secondsPerSample,
      turns: (read[spot] ?? []).map(({ turnsFromSpot, inner, outer }) => ({
        turnsFromSpot,
        inner: edgeOfSteps(inner),
        outer: edgeOfSteps(outer),
      })),
    },
  }));
  return { head, motion, rows: plannedRows(motion, head.settings, movedWallAt), spots };
}
