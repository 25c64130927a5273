import { existsSync, writeFileSync } from 'node:fs';

// A thread for tests of the pool: what it does is in the name of the file it is given.

/** @param {{ input: string }} job */
export async function file({ input: path }) {
  if (path.includes('throws')) throw new Error('thrown on purpose');
  if (path.includes('dies-late')) {
    setTimeout(() => {
      throw new Error('died on purpose');
    }, 1);
    await new Promise(() => {});
  }
  if (path.includes('eats-memory')) {
    const eaten = [];
    for (;;) eaten.push(Array.from({ length: 10_000 }, (_, n) => ({ n })));
  }
  if (path.includes('dies-once') && !existsSync(`${path}.died`)) {
    writeFileSync(`${path}.died`, '');
    throw new Error('died on purpose, once');
  }
  return { value: { name: path } };
}
