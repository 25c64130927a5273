import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import { folderHints, type Hint } from '../../../src/intake/watch/folder-hints.js';
import { temporaryFolder } from '../../support/temporary-folder.js';

/** Hints of a new folder, as they come. */
async function hinted() {
  const root = await temporaryFolder();
  const [told, troubles]: [Hint[], string[]] = [[], []];
  const hints = folderHints(root, {
    hint: (hint) => told.push(hint),
    trouble: (message) => troubles.push(message),
  });
  onTestFinished(hints.close);
  return { root, told, troubles, hints };
}

test('a folder that cannot be watched is told, is none of those that are, and can be later', async () => {
  const { root, troubles, hints } = await hinted();
  expect(hints.watch('later')).toBe(false);
  expect(hints.all()).toEqual([]);
  expect(troubles).toEqual([expect.stringContaining('ENOENT')]);
  await mkdir(join(root, 'later'));
  expect(hints.watch('later')).toBe(true);
  expect(hints.has('later')).toBe(true);
});

test('what happens in a folder is told by its path, until the folder is forgotten', async () => {
  const { root, told, hints } = await hinted();
  await mkdir(join(root, 'sub'));
  for (const folder of ['', 'sub']) hints.watch(folder);
  await writeFile(join(root, 'sub/1.wav'), 'one');
  for (let tries = 0; tries < 500 && told.length === 0; tries++) await setTimeout(10);
  expect(told).toContainEqual({ path: 'sub/1.wav', isMove: true });
  hints.forget('sub');
  told.length = 0;
  await writeFile(join(root, 'sub/2.wav'), 'two');
  await writeFile(join(root, '3.wav'), 'three');
  for (let tries = 0; tries < 500 && told.length === 0; tries++) await setTimeout(10);
  expect(new Set(told.map(({ path }) => path))).toEqual(new Set(['3.wav']));
});
