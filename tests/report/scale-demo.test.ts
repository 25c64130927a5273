import { join } from 'node:path';
import { Chalk } from 'chalk';
import { expect, test } from 'vitest';
import { calmSide } from '../../examples/demo/sides.mjs';
import { writeWav } from '../../examples/demo/write-wav.mjs';
import { forecastFile } from '../../src/forecast-side.js';
import { readProfile } from '../../src/profile/profile-file.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { scaleText } from '../../src/report/scale-text.js';
import { temporaryFolder } from '../support/temporary-folder.js';

test("the calm demo side's scale is the sum of the machine's pitches", async () => {
  const { file: name, tape } = calmSide();
  const path = join(await temporaryFolder(), name);
  writeWav(path, tape);
  const settings = resolveProfile({ file: await readProfile('examples/furrow.profile.json') });
  const file = await forecastFile(path, settings, { levelDb: 0, planner: 'turn-ahead' });
  const text = scaleText(file, { units: 'metric', paint: new Chalk({ level: 0 }) });
  const { machine, hotSpots, quarters } = file.forecast;

  // 45 rpm: 180 whole quarter turns a minute, each a quarter of its pitch further in.
  for (const minute of [1, 2, 3]) {
    const radius = quarters.machinePitch.slice(0, 180 * minute).reduce((sum, p) => sum + p / 4, 0);
    const diameter = (settings.startDiameter - 2 * radius) * 1000;
    const [, read] = new RegExp(`0${minute}:00 +([\\d.]+) mm`).exec(text) ?? [];
    expect(Number(read)).toBeWithin(diameter, 0.0501);
  }
  const [, end] = /03:20\.0 +([\d.]+) mm +the program ends/.exec(text) ?? [];
  expect(Number(end)).toBeWithin(machine.endDiameter * 1000, 0.0501);
  expect(text.match(/^> /gm)).toHaveLength(hotSpots.length);
  expect(hotSpots.length).toBeGreaterThan(0);
}, 60_000);
