import { expect, test } from 'vitest';
import { kernelIsAvailable } from '../../src/analysis/kernel/load-kernel.js';
import { emptyRows } from '../../src/analysis/motion-rows.js';
import { createPartAnalyser } from '../../src/analysis/part-analyser.js';
import { wholeProgram } from '../../src/analysis/parts.js';
import { programOf } from '../../src/analysis/program.js';
import { sharedMemory } from '../../src/analysis/row-memory.js';
import { doubles, settingsWith } from './summary-of.js';

const FORMAT = doubles(44_100);
/** 1.5 turns at 33 1/3 rpm: two begun ones and one of silence, 12 quarters. */
const FRAMES = 2.7 * 44_100;

test.skipIf(!(await kernelIsAvailable())).each([11, 13])(
  'a part of 12 quarters is not measured into rows of %i, and the reason says so',
  async (quarters) => {
    const settings = settingsWith();
    const part = wholeProgram(programOf(FORMAT, FRAMES), settings);
    const rows = emptyRows(quarters, sharedMemory);
    const measured = createPartAnalyser(FORMAT, FRAMES, part, settings, rows);
    await expect(measured).rejects.toThrow(/^a part of \d+ bins has rows for \d+$/);
    const fit = { ...emptyRows(12, sharedMemory), lowBand: rows.lowBand };
    await expect(createPartAnalyser(FORMAT, FRAMES, part, settings, fit)).rejects.toThrow(
      `a part of 12 quarters of the low band has rows for ${quarters}`,
    );
  },
);
