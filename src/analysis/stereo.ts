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
