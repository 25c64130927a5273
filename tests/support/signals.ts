import type { Stereo } from '../../src/analysis/stereo.js';

/** A steady tone: `amplitude` is its peak, full scale 1; `phase` that of its sine at frame 0. */
export interface Tone {
  readonly hz: number;
  readonly amplitude: number;
  readonly phase?: number;
}

/** The sum of steady tones, sampled. */
export function tones(parts: readonly Tone[], frames: number, rate: number): Float64Array {
  const sum = new Float64Array(frames);
  for (const { hz, amplitude, phase = 0 } of parts) {
    const angle = (2 * Math.PI * hz) / rate;
    for (let frame = 0; frame < frames; frame++) {
      sum[frame]! += amplitude * Math.sin(angle * frame + phase);
    }
  }
  return sum;
}

/**
 * Numbers from 0 up to 1 that look random and are the same for the same seed.
 * Source: a linear congruential generator, modulus 2^32, multiplier 1664525, increment 1013904223
 * (Numerical Recipes, from memory); its upper 24 bits.
 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state >>> 8) / 2 ** 24;
  };
}

/** White noise between −amplitude and amplitude. */
export function noise(frames: number, seed: number, amplitude: number): Float64Array {
  const next = seeded(seed);
  return Float64Array.from({ length: frames }, () => amplitude * (2 * next() - 1));
}

/** Raised cosine: 0 up to `from`, 1 from `until` on. */
export function rising(place: number, from: number, until: number): number {
  const share = Math.min(1, Math.max(0, (place - from) / (until - from)));
  return 0.5 - 0.5 * Math.cos(Math.PI * share);
}

/** A signal that rises and falls over so many frames at its ends. */
export function faded(signal: Float64Array, frames: number): Float64Array {
  const end = signal.length;
  return signal.map(
    (value, frame) => value * rising(frame, 0, frames) * rising(end - frame, 0, frames),
  );
}

export function inBoth(signal: Float64Array): Stereo {
  return { left: signal, right: signal };
}

export function scaled(signal: Float64Array, factor: number): Float64Array {
  return signal.map((value) => factor * value);
}
