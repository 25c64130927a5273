/**
 * Phase left over when the delay that fits it best is taken out, degrees:
 * φ(f) − f·Σ(f·φ)/Σ(f²).
 */
export function delayFree(hz: readonly number[], degrees: readonly number[]): number[] {
  const slope = dot(hz, degrees) / dot(hz, hz);
  return degrees.map((value, point) => value - slope * hz[point]!);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, index) => sum + value * b[index]!, 0);
}
