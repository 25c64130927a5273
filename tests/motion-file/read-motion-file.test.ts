import { symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { encodeMotion } from '../../src/motion-file/encode-motion.js';
import { isMotionFile } from '../../src/motion-file/is-motion.js';
import { digestOf } from '../../src/motion-file/motion-digest.js';
import { DIGEST_AT, VERSION, VERSION_AT } from '../../src/motion-file/motion-layout.js';
import { readMotionFile } from '../../src/motion-file/read-motion-file.js';
import { emptyMotion } from '../support/empty-motion.js';
import { savedMotion } from '../support/saved-motion.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { wavBytes } from '../support/wav-writer.js';

const MOTION = encodeMotion(savedMotion(emptyMotion(2)));
const WAV = wavBytes({ words: [0, 0, 0, 0] });

test.each([
  ['a motion file', 'a.motion', MOTION, true],
  ['a motion file by another name', 'a.wav', MOTION, true],
  ['a WAV file', 'a.wav', WAV, false],
  ['a WAV file by the name of a motion', 'a.motion', WAV, false],
  ['a damaged file by the name of a motion', 'a.MOTION', Uint8Array.of(1, 2), true],
  ['an empty file by the name of a motion', 'a.motion', Uint8Array.of(), true],
  ['anything else', 'a.txt', Uint8Array.of(1, 2), false],
] as const)('%s is told by what it begins with', async (_, name, bytes, expected) => {
  const path = join(await temporaryFolder(), name);
  await writeFile(path, bytes);
  expect(await isMotionFile(path)).toBe(expected);
});

test('a motion file is read through a link, and its source is the path that was given', async () => {
  const folder = await temporaryFolder();
  await writeFile(join(folder, 'a.motion'), MOTION);
  const link = join(folder, 'link');
  await symlink('a.motion', link);
  const saved = await readMotionFile(link);
  expect(saved.source.path).toBe(link);
  expect(saved.motion).toEqual(emptyMotion(2));
});

test('what cannot be read is refused with the reason, another version by its number', async () => {
  const folder = await temporaryFolder();
  const path = join(folder, 'a.motion');
  await expect(readMotionFile(path)).rejects.toMatchObject({ code: 'not-found', path });
  await expect(isMotionFile(path)).rejects.toMatchObject({ code: 'not-found', path });
  await expect(readMotionFile(folder)).rejects.toMatchObject({ code: 'not-a-file' });
  await writeFile(path, WAV);
  await expect(readMotionFile(path)).rejects.toMatchObject({ code: 'not-motion' });

  const later = Uint8Array.from(MOTION);
  later[VERSION_AT] = VERSION + 1;
  await writeFile(path, later);
  const found = (version: number) =>
    `${path}: found a motion file of version ${version}, expected version ${VERSION}`;
  await expect(readMotionFile(path)).rejects.toMatchObject({
    code: 'motion-version',
    message: expect.stringContaining(`${found(VERSION + 1)}; use a later furrow`),
  });

  const earlier = Uint8Array.from(MOTION);
  earlier[VERSION_AT] = VERSION - 1;
  earlier.set(digestOf(earlier), DIGEST_AT);
  await writeFile(path, earlier);
  await expect(readMotionFile(path)).rejects.toMatchObject({
    code: 'motion-version',
    message: expect.stringContaining(`${found(VERSION - 1)}; save the motion again`),
  });

  const damaged = Uint8Array.from(MOTION);
  damaged[DIGEST_AT + 3] = 1;
  await writeFile(path, damaged);
  await expect(readMotionFile(path)).rejects.toMatchObject({ code: 'motion-damaged' });
});
