/** A place in a picture, pixels. */
export type Point = readonly [x: number, y: number];

/**
 * A line through fewer points that is nowhere more than `tolerance` above or below the one through
 * all of them. From the last kept point the slopes that pass every point since within the tolerance
 * are a wedge; where it closes, the point before is kept.
 * @param points x rising
 */
export function simplified(points: readonly Point[], tolerance: number): Point[] {
  const [first] = points;
  if (first === undefined) return [];
  const kept: Point[] = [first];
  let anchor = first;
  let before = first;
  let lowest = Number.NEGATIVE_INFINITY;
  let highest = Number.POSITIVE_INFINITY;
  for (const point of points.slice(1)) {
    const slope = (point[1] - anchor[1]) / (point[0] - anchor[0]);
    if (slope < lowest || slope > highest) {
      kept.push(before);
      anchor = before;
      lowest = Number.NEGATIVE_INFINITY;
      highest = Number.POSITIVE_INFINITY;
    }
    const run = point[0] - anchor[0];
    lowest = Math.max(lowest, (point[1] - anchor[1] - tolerance) / run);
    highest = Math.min(highest, (point[1] - anchor[1] + tolerance) / run);
    before = point;
  }
  if (before !== first) kept.push(before);
  return kept;
}
