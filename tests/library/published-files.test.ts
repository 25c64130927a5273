// What `npm pack` would take: all of dist, whatever lies there.
import { readdir, readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';

const DIST = new URL('../../dist/', import.meta.url);

// A chunk has its content's hash in its name, so that another build writes beside it, not over it.
test('no chunk of an older build is left to be published', async () => {
  const names = (await readdir(DIST)).filter((name) => /\.c?js$/.test(name));
  const texts = new Map<string, string>();
  for (const name of names) texts.set(name, await readFile(new URL(name, DIST), 'utf8'));
  const chunks = names.filter((name) => /-[\w-]{8}\.cjs$/.test(name));
  expect(chunks.length).toBeGreaterThan(0);
  const isLoaded = (chunk: string) =>
    names.some((name) => name !== chunk && texts.get(name)?.includes(`./${chunk}`));
  expect(chunks.filter((chunk) => !isLoaded(chunk))).toEqual([]);
});
