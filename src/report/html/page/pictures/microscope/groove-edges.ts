import { valueAt } from '../../../../../model/nodes.js';
import type { HotSpotEdges, PageSide } from '../../page-side.js';
import { toleratedEdge } from './tolerated-edge.js';

/** Both edges of a groove along the cut, m; radial, positive towards the edge of the disc. */
export interface Groove {
  readonly turnsFromSpot: -1 | 0 | 1;
  readonly inner: Float64Array;
  readonly outer: Float64Array;
}

/** The grooves around a hot spot, from the outermost in. */
export interface Grooves {
  readonly atSeconds: number;
  readonly secondsPerSample: number;
  readonly count: number;
  readonly grooves: readonly Groove[];
  /** Where this turn and the one outside it are nearest; the middle where there is none outside. */
  readonly tightest: number;
  /** See toleratedEdge; null where there is no turn outside. */
  readonly tolerated: Float64Array | null;
}

/** What of a side the grooves hang on. */
export type GroovePlan = Pick<PageSide, 'side' | 'executed' | 'motion' | 'settings'>;

/**
 * Where the edges lie, measured from this turn's centre line at the same angle:
 * e_in = c − h + g·√2·u_L, e_out = c + h + g·√2·u_R, with c = A(t) one turn outside, 0 here,
 * −A(t + T) one turn inside; h and A are those of the plan that is executed.
 */
export function grooveEdges(page: GroovePlan, edges: HotSpotEdges): Grooves {
  const { side, executed, motion } = page;
  const { plan } = executed;
  const count = Math.min(...edges.turns.map(({ inner }) => inner.length));
  const grooves = edges.turns
    .toSorted((one, other) => one.turnsFromSpot - other.turnsFromSpot)
    .map(({ turnsFromSpot, inner, outer }): Groove => {
      const edge = (row: Float32Array, sign: -1 | 1) =>
        Float64Array.from(row.subarray(0, count), (displacement, sample) => {
          const here = edges.atSeconds + sample * edges.secondsPerSample;
          const cutAt = here + turnsFromSpot * motion.turnSeconds;
          const halfWidth = valueAt(side, plan.halfWidth, cutAt);
          const advance = valueAt(side, plan.advance, Math.max(here, cutAt));
          return -turnsFromSpot * advance + sign * halfWidth + plan.gain * displacement;
        });
      return { turnsFromSpot, inner: edge(inner, -1), outer: edge(outer, 1) };
    });
  const { atSeconds, secondsPerSample } = edges;
  const [outside] = grooves;
  const tolerated =
    outside?.turnsFromSpot === -1
      ? toleratedEdge(outside, page.settings, motion.turnSeconds, secondsPerSample)
      : null;
  const tightest = nearest(grooves, count);
  return { atSeconds, secondsPerSample, count, grooves, tightest, tolerated };
}

/** Land between two neighbours at a sample, the outer one first; negative is an overcut. */
export function landBetween(outside: Groove, inside: Groove, sample: number): number {
  return (outside.inner[sample] ?? Number.NaN) - (inside.outer[sample] ?? Number.NaN);
}

function nearest(grooves: readonly Groove[], count: number): number {
  const middle = Math.floor(count / 2);
  const outside = grooves.find(({ turnsFromSpot }) => turnsFromSpot === -1);
  const here = grooves.find(({ turnsFromSpot }) => turnsFromSpot === 0);
  if (outside === undefined || here === undefined) return middle;
  let place = middle;
  for (let sample = 0; sample < count; sample++) {
    if (landBetween(outside, here, sample) < landBetween(outside, here, place)) place = sample;
  }
  return place;
}
