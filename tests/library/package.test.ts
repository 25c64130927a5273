// The package as another program gets it: by its name, through its exports, as it was built.
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import * as furrow from 'furrow';
import { describe, expect, test } from 'vitest';
import { runFurrow, withFolder } from '../support/run-furrow.js';
import { wavBytes } from '../support/wav-writer.js';

/** Three seconds of an invented chord, louder on the left. */
const CHORD = wavBytes({
  sampleRate: 48_000,
  words: Array.from({ length: 2 * 3 * 48_000 }, (_, index) => {
    const angle = (2 * Math.PI * Math.floor(index / 2)) / 48_000;
    const chord = Math.sin(angle * 110) + Math.sin(angle * 277) + Math.sin(angle * 1661);
    return Math.round((index % 2 === 0 ? 8000 : 5000) * chord);
  }),
});

async function withChord<T>(use: (path: string, folder: string) => Promise<T>): Promise<T> {
  return await withFolder(async (folder) => {
    const path = join(folder, 'chord.wav');
    await writeFile(path, CHORD);
    return await use(path, folder);
  });
}

const REQUEST = { levelDb: -2, planner: 'turn-ahead' } as const;

describe('the package', () => {
  test('forecasts a file into JSON that keeps to the published schema (ajv)', async () => {
    await withChord(async (path, folder) => {
      const settings = furrow.resolveProfile({ flags: { rpm: 45, executes: 'plan' } });
      const forecasted = await furrow.forecastFile(path, settings, REQUEST);
      const side = furrow.sideToJson(forecasted, { quarters: true });
      const text = furrow.forecastJson(furrow.forecastDocument([side], [], furrow.furrowVersion()));
      const published = await runFurrow(['schema', 'forecast'], { cwd: folder });
      const validate = new Ajv2020({ strict: true, strictTypes: false, allowUnionTypes: true });
      const schema: unknown = JSON.parse(published.stdout);
      if (typeof schema !== 'object' || schema === null) throw new Error('no schema');
      validate.validate(schema, JSON.parse(text));
      expect(validate.errors ?? null).toBeNull();
      const { sides } = furrow.forecastSchema.parse(JSON.parse(text));
      expect(sides).toMatchObject([{ durationSeconds: 3, turns: 2.25, levelDb: -2 }]);
      expect(sides[0]?.headLoad.left.oneSecondM2PerS4).toBeGreaterThan(0);
    });
  });

  test('forecasts the sides of a sheet as the command does', async () => {
    await withChord(async (path, folder) => {
      const tracks = [
        { name: 'One', file: path },
        { name: 'Two', file: path, gapSeconds: 1, trimDb: -3 },
      ];
      const sheet = { format: 'furrow.sheet/1', sides: [{ name: 'A', levelDb: -2, tracks }] };
      await writeFile(join(folder, 'sheet.json'), JSON.stringify(sheet));
      const file = await furrow.readSheet(join(folder, 'sheet.json'));
      const laid = await furrow.layOutSide(file, 0, furrow.sideSettings(file, 0, {}));
      if (!('side' in laid)) throw laid.failures[0];
      const { settings, levelDb } = laid.side;
      const forecasted = await furrow.forecastFile(laid.side, settings, { ...REQUEST, levelDb });
      const ran = await runFurrow(['side', 'sheet.json', '--no-discovery', '--json'], {
        cwd: folder,
      });
      const [side] = furrow.forecastSchema.parse(JSON.parse(ran.stdout)).sides;
      const own = furrow.sideToJson(forecasted, { quarters: false });
      expect(own.durationSeconds).toBe(7);
      expect(own.tracks?.map(({ name }) => name)).toEqual(['One', 'Two']);
      expect(own).toEqual(side);
    });
  });

  test('gives what the command gives', async () => {
    await withChord(async (path, folder) => {
      const forecasted = await furrow.forecastFile(path, furrow.resolveProfile(), REQUEST);
      const ran = await runFurrow(
        ['forecast', 'chord.wav', '--no-discovery', '--level', '-2', '--json'],
        { cwd: folder },
      );
      const [side] = furrow.forecastSchema.parse(JSON.parse(ran.stdout)).sides;
      const own = furrow.sideToJson(forecasted, { quarters: false });
      const sources = own.sources.map((source) => ({ ...source, path: 'chord.wav' }));
      expect({ ...own, sources }).toEqual(side);
    });
  });

  test('takes audio block by block and answers at any level from one summary', async () => {
    await withChord(async (path) => {
      const settings = furrow.resolveProfile();
      const { format, frames, dataOffset, truncated } = await furrow.readWavHeader(path);
      expect({ format, frames, truncated }).toEqual({
        format: { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: 48_000 },
        frames: 144_000,
        truncated: false,
      });
      const sound = (await readFile(path)).subarray(dataOffset);
      const analyser = await furrow.createAnalyser(format, frames, settings);
      const middle = 4 * 70_001;
      expect(analyser.push(sound.subarray(0, middle))).toBe(-1);
      expect(analyser.push(sound.subarray(middle))).toBe(-1);
      const motion = analyser.finish();
      const source = { ...format, truncated };
      const at = (levelDb: number): furrow.SideForecast =>
        furrow.forecastSide(motion, settings, { levelDb, planner: 'turn-ahead', source });
      const { forecast } = await furrow.forecastFile(path, settings, REQUEST);
      expect(at(-2).plan).toEqual(forecast.plan);
      expect(at(4).plan.radiusUsed).toBeGreaterThan(forecast.plan.radiusUsed);
    });
  });

  test('streams a file through withWav and readFrames', async () => {
    await withChord(async (path) => {
      const bytes = await furrow.withWav(path, async (wav) => {
        let sum = 0;
        for await (const block of furrow.readFrames(wav)) sum += block.length;
        return sum;
      });
      expect(bytes).toBe(144_000 * 4);
    });
  });

  test('tells a bad file by its own class of error', async () => {
    await withFolder(async (folder) => {
      const path = join(folder, 'bad.wav');
      await writeFile(path, 'no sound');
      const forecast = furrow.forecastFile(path, furrow.resolveProfile(), REQUEST);
      await expect(forecast).rejects.toBeInstanceOf(furrow.InputError);
    });
  });
});
