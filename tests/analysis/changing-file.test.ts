import { appendFile, truncate, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { rowsBetween, rowsOfSide } from '../../src/analysis/motion-rows.js';
import { withSound } from '../../src/analysis/open-sound.js';
import type { Part } from '../../src/analysis/parts.js';
import { forecastParts, measurePart } from '../../src/forecast-side.js';
import { partsOfSide } from '../../src/side-parts.js';
import { settingsWith } from '../support/model-settings.js';
import { longWav, programWav } from '../support/side-files.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const CHANGED = 'changed-while-read';

async function sideOf(bytes: Uint8Array): Promise<string> {
  const path = join(await temporaryFolder(), 'side.wav');
  await writeFile(path, bytes);
  return path;
}

test.each<[string, (path: string) => Promise<void>, RegExp]>([
  ['grows', (path) => appendFile(path, 'more'), /found 176448 bytes, expected 176444 as when/],
  ['is written over', (path) => utimes(path, 1, 2), /found that it was written to/],
])('a file that %s while it is read gives no result', async (_, change, words) => {
  const path = await sideOf(programWav(1));
  const reading = withSound(path, async ({ source }) => {
    for await (const _ of source.read()) await change(path);
  });
  const message: unknown = expect.stringMatching(words);
  await expect(reading).rejects.toMatchObject({ path, code: CHANGED, message });
});

test('a file that is shorter or longer when its next part is read is no bug of furrow', async () => {
  const bytes = longWav(130);
  // Its length as a writer leaves it who does not yet know it: to the end of the file.
  bytes.fill(0xff, 40, 44);
  const path = await sideOf(bytes);
  const settings = settingsWith({});
  const [first, second] = await partsOfSide(path, settings);
  if (first === undefined || second === undefined) throw new Error('a file in one part');
  const request = { levelDb: 0, planner: 'turn-ahead' } as const;
  const rows = rowsOfSide([first, second], settings);
  const measure = (part: Part) => {
    const own = rowsBetween(rows, part.firstQuarter, part.endQuarter);
    return measurePart(path, settings, part, own, () => {});
  };
  const measured = { figures: await Promise.all([first, second].map(measure)), rows };

  await appendFile(path, new Uint8Array(4000));
  await expect(forecastParts(path, settings, request, measured)).rejects.toMatchObject({
    path,
    code: CHANGED,
  });
  await truncate(path, 1_000_000);
  await expect(measure(second)).rejects.toMatchObject({
    path,
    code: CHANGED,
    message: expect.stringContaining('found 249989 frames'),
  });
});
