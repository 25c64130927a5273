/** A pair of signals at one rate, entry n of both at the same time. */
export interface Stereo {
  readonly left: Float64Array;
  readonly right: Float64Array;
}

/** Does the same to both channels. */
export function mapStereo(
  signal: Stereo,
  operation: (channel: Float64Array) => Float64Array,
): Stereo {
  return { left: operation(signal.left), right: operation(signal.right) };
}

/** One after the other. */
export function joinStereo(first: Stereo, next: Stereo): Stereo {
  return { left: joined(first.left, next.left), right: joined(first.right, next.right) };
}

function joined(before: Float64Array, after: Float64Array): Float64Array {
  const both = new Float64Array(before.length + after.length);
  both.set(before);
  both.set(after, before.length);
  return both;
}
