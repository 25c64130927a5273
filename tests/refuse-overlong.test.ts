import { truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { forecastFile } from '../src/forecast-side.js';
import { resolveProfile } from '../src/profile/resolve-profile.js';
import { partsOfSide } from '../src/side-parts.js';
import { temporaryFolder } from './support/temporary-folder.js';
import { wavBytes } from './support/wav-writer.js';

const RATE = 8000;
/** 16384 turns of 1.8 s. */
const MOST_FRAMES = 16384 * 1.8 * RATE;

test('more turns than six sides have are refused before any is measured', async () => {
  const path = join(await temporaryFolder(), 'side.wav');
  const head = wavBytes({
    words: [],
    bitDepth: 8,
    channels: 1,
    sampleRate: RATE,
    dataSize: 2 ** 32 - 2,
  });
  await writeFile(path, head);
  // Holes: nothing of it lies on the disk.
  await truncate(path, head.length + MOST_FRAMES);
  const settings = resolveProfile();
  await expect(partsOfSide(path, settings)).resolves.toHaveLength(1);
  await truncate(path, head.length + MOST_FRAMES + 1);
  const request = { levelDb: 0, planner: 'turn-ahead' } as const;
  await expect(forecastFile(path, settings, request)).rejects.toMatchObject({
    code: 'overlong',
    message: `${path}: found 16385 turns of sound, expected at most 16384, more than a side has; cut the file into sides`,
  });
  await expect(partsOfSide(path, { ...settings, rpm: 10 })).resolves.toHaveLength(1);
});
