/**
 * How a schema is to be asked that a run asks a few times only: otherwise zod first compiles it,
 * which takes several times as long as the answers.
 */
export const ASKED_ONCE = { jitless: true } as const;
