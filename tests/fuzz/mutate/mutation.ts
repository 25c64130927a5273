import type { Draw } from './draw.js';

/** A file with one thing wrong; null where this cannot be done to it. */
export type Mutation = (bytes: Uint8Array, draw: Draw) => Uint8Array | null;

/** A mutation, and how often it is to come beside the others. */
export type Weighed = readonly [weight: number, mutation: Mutation];

/** One of them, by its weight. */
export function oneOf(mutations: readonly Weighed[]): Mutation {
  const total = mutations.reduce((sum, [weight]) => sum + weight, 0);
  return (bytes, draw) => {
    let left = draw.below(total);
    for (const [weight, mutation] of mutations) {
      left -= weight;
      if (left < 0) return mutation(bytes, draw);
    }
    return null;
  };
}
