/** A coordinate of a path: a tenth of a pixel is finer than any screen shows, and shorter. */
export function coordinate(pixels: number): string {
  return String(Math.round(pixels * 10) / 10);
}

/** A line through points, as the `d` of a path; empty without points. */
export function linePath(points: Iterable<readonly [x: number, y: number]>): string {
  let path = '';
  for (const [x, y] of points) {
    path += `${path === '' ? 'M' : 'L'}${coordinate(x)} ${coordinate(y)}`;
  }
  return path;
}
