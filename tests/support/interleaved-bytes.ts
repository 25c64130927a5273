/** Raw 32-bit float frames of two channels, as a WAV file holds them. */
export function interleavedBytes(signal: {
  readonly left: ArrayLike<number>;
  readonly right: ArrayLike<number>;
}): Uint8Array {
  const both = new Float32Array(2 * signal.left.length);
  for (let frame = 0; frame < signal.left.length; frame++) {
    both[2 * frame] = signal.left[frame]!;
    both[2 * frame + 1] = signal.right[frame]!;
  }
  return new Uint8Array(both.buffer);
}
