import type { Grooves } from './groove-edges.js';

/** What is seen: a stretch of the cut and the radii from one groove's edge to another's, m. */
export interface Field {
  readonly firstSample: number;
  readonly lastSample: number;
  readonly innermost: number;
  readonly outermost: number;
}

/** Beyond the outer edges that are seen, as a share of the height. */
const MARGIN = 0.06;

/**
 * The field over all samples, or, for a length along the cut, that stretch of it with the tightest
 * place in the middle, as far as there are samples.
 * @param metresPerSample along the groove
 */
export function fieldOf(grooves: Grooves, length: number, metresPerSample: number): Field {
  const half = Math.max(1, Math.round(length / metresPerSample / 2));
  const firstSample = Math.max(0, grooves.tightest - half);
  const lastSample = Math.min(grooves.count - 1, grooves.tightest + half);
  let innermost = Number.POSITIVE_INFINITY;
  let outermost = Number.NEGATIVE_INFINITY;
  for (const { inner, outer } of grooves.grooves) {
    for (const edge of inner.subarray(firstSample, lastSample + 1)) {
      innermost = Math.min(innermost, edge);
    }
    for (const edge of outer.subarray(firstSample, lastSample + 1)) {
      outermost = Math.max(outermost, edge);
    }
  }
  const margin = MARGIN * (outermost - innermost);
  return { firstSample, lastSample, innermost: innermost - margin, outermost: outermost + margin };
}
