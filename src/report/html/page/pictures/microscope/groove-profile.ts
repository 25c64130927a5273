/** How finely the round bottom is drawn. */
const ARC_STEPS = 8;

/**
 * The surface across one groove from its inner to its outer edge, m, z positive up: down the inner
 * wall at 45°, round the bottom of radius ρ, up the outer wall. The arc meets the walls ρ/√2 from
 * the middle; its centre lies √2·ρ over the apex. A groove too narrow for the arc is what of the
 * arc lies under the surface; none at all has no points.
 */
export function grooveProfile(
  inner: number,
  outer: number,
  bottomRadius: number,
): [number, number][] {
  const half = (outer - inner) / 2;
  if (!(half > 0)) return [];
  const middle = (inner + outer) / 2;
  const centre = Math.SQRT2 * bottomRadius - half;
  const reach = Math.min(bottomRadius / Math.SQRT2, half);
  const onArc = (x: number) => Math.min(0, centre - Math.sqrt(bottomRadius ** 2 - x ** 2));
  const bottom = Array.from({ length: ARC_STEPS + 1 }, (_, step): [number, number] => {
    const x = reach * ((2 * step) / ARC_STEPS - 1);
    return [middle + x, onArc(x)];
  });
  return [[inner, 0], ...bottom, [outer, 0]];
}
