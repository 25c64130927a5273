import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SideFit } from '../../src/fit/fit-result.js';
import { milderEllipticals, sideWide } from '../../src/fit/side-wide.js';
import { fitted, forecastOf, HARD_LATHE, hardProgram, writeProgram } from '../support/fit-side.js';
import { settingsWith } from '../support/model-settings.js';

const SETTINGS = settingsWith({ ...HARD_LATHE, ellipticalSteps: [100, 200] });
const NO_PITCH = { levelDb: 0, holds: null, missing: null };

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-test-'));
});
afterAll(async () => await rm(folder, { recursive: true }));

function positionsOf({ remedies }: Pick<SideFit, 'remedies'>): string[] {
  return remedies.flatMap(({ remedy }) =>
    remedy.kind === 'elliptical' ? [`${remedy.corner} Hz, order ${remedy.order}`] : [],
  );
}

describe('elliptical filters for the whole side', () => {
  it('are all tried where the strongest does something, the mildest told first', async () => {
    const path = await writeProgram(folder, 'wide.wav', hardProgram());
    const fit = await fitted(path, SETTINGS);
    expect(positionsOf(fit)).toEqual([
      '100 Hz, order 1',
      '100 Hz, order 2',
      '200 Hz, order 1',
      '200 Hz, order 2',
    ]);
    expect(fit.leftOut).not.toContain('needless-ellipticals');
  }, 20_000);

  it('are left at the strongest where the bass is one, and none of the others would gain a tenth', async () => {
    const { left } = hardProgram();
    const path = await writeProgram(folder, 'mono.wav', { left, right: left.slice() });
    const fit = await fitted(path, SETTINGS);
    expect(positionsOf(fit)).toEqual(['200 Hz, order 1', '200 Hz, order 2']);
    expect(fit.leftOut).toContain('needless-ellipticals');
    const before = await forecastOf(path, SETTINGS);
    for (const { ellipticalHz, ellipticalOrder } of [
      { ellipticalHz: 100, ellipticalOrder: 1 },
      { ellipticalHz: 100, ellipticalOrder: 2 },
    ] as const) {
      const after = await forecastOf(path, { ...SETTINGS, ellipticalHz, ellipticalOrder });
      expect(after.fixed.spare).toBeWithin(before.fixed.spare, 0.1e-3);
      expect(after.headroom.traceDb ?? -99).toBeWithin(before.headroom.traceDb ?? -99, 0.1);
    }
  }, 20_000);

  it('are none that take out less than the one that is in', () => {
    const settings = { ...SETTINGS, ellipticalHz: 100, ellipticalOrder: 1 } as const;
    const wide = sideWide(settings, NO_PITCH, null, false);
    const all = [...wide, ...milderEllipticals(settings)].filter(
      ({ kind }) => kind === 'elliptical',
    );
    expect(all).toEqual([
      { kind: 'elliptical', corner: 200, order: 1 },
      { kind: 'elliptical', corner: 200, order: 2 },
      { kind: 'elliptical', corner: 100, order: 2 },
    ]);
  });
});
