import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { rowsBetween, rowsOfSide } from '../src/analysis/motion-rows.js';
import { forecastFile, forecastParts, measurePart } from '../src/forecast-side.js';
import { partsOfSide } from '../src/side-parts.js';
import { settingsWith } from './support/model-settings.js';
import { longWav } from './support/side-files.js';
import { temporaryFolder } from './support/temporary-folder.js';

test('a side in parts is forecast like the whole file, its columns not copied between threads', async () => {
  const path = join(await temporaryFolder(), 'side.wav');
  await writeFile(path, longWav(130));
  const settings = settingsWith({ silentTurns: 2 });
  const request = { levelDb: 2, planner: 'turn-ahead' } as const;
  const parts = await partsOfSide(path, settings);
  expect(parts.length).toBeGreaterThan(1);
  const rows = rowsOfSide(parts, settings);
  const figures = await Promise.all(
    parts.map((part) => {
      const own = rowsBetween(rows, part.firstQuarter, part.endQuarter);
      return measurePart(path, settings, part, own, () => {});
    }),
  );
  const inParts = await forecastParts(path, settings, request, { figures, rows });
  const whole = await forecastFile(path, settings, request);
  expect(inParts).toEqual(whole);
  for (const column of Object.values(inParts.forecast.quarters)) {
    expect(column.length).toBeGreaterThan(0);
    expect(column.buffer).toBeInstanceOf(SharedArrayBuffer);
  }
  // Of a library's caller, who may hand them on.
  for (const column of Object.values(whole.forecast.quarters)) {
    expect(column.buffer).toBeInstanceOf(ArrayBuffer);
  }
});
