import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { inventedProgram, louderBetween, RATE } from '../support/invented-program.js';
import { runInProcess } from '../support/run-in-process.js';
import { writeWav } from '../support/sheet-side.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const PCM = { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: RATE } as const;

async function reelTextOf(name: string, ...more: string[]) {
  const folder = await temporaryFolder();
  const program = louderBetween(inventedProgram(40, 5), 4, 12, 15);
  const side = await writeWav(folder, name, program, PCM);
  const reel = join(folder, 'reel.wav');
  const args = ['forecast', '--no-discovery', '--quiet', '--json', ...more, '--reel', reel, side];
  const { stdout } = await runInProcess(args);
  const text = await readFile(join(folder, 'reel.txt'), 'utf8');
  return {
    text,
    words: text.replaceAll(/\s+/g, ' '),
    json: forecastSchema.parse(JSON.parse(stdout)),
  };
}

describe('the text beside a reel', () => {
  test('names the least land of the forecast, where it lies and its diameter', async () => {
    const { words, text, json } = await reelTextOf('side.wav');
    const [spot] = json.sides[0]?.hotSpots ?? [];
    const land = (spot?.landUm ?? 0).toFixed(1);
    expect(words).toContain(`land ${land} µm (${(spot?.landNominalUm ?? 0).toFixed(1)} µm on a`);
    expect(words).toContain(`at diameter ${(spot?.diameterMm ?? 0).toFixed(1)} mm`);
    expect(text.split('\n').every((line) => line.length <= 80)).toBe(true);
  });

  test('has room for what is measured at each place, and says what to look for once', async () => {
    const { words } = await reelTextOf('side.wav');
    const places = words.match(/predicted land/g)?.length ?? 0;
    expect(places).toBeGreaterThanOrEqual(5);
    expect(words.match(/measured land ________/g)?.length).toBe(places);
    expect(words.match(/Least land: Measure/g)?.length).toBe(1);
    expect(words).toContain('A forecast is no substitute for a test cut');
  });

  test('tells how long the silence is, and lengths in inches and mil where wanted', async () => {
    const { words } = await reelTextOf('side.wav', '--units', 'us');
    expect(words).toContain('a turn of silence (1.80 s)');
    expect(words).toMatch(/diameter \d+\.\d{3} in at its first sample/);
    expect(words).not.toContain('µm');
  });

  test('a name cannot turn its lines around or add any', async () => {
    const { text } = await reelTextOf('side\u202e\nCut by nobody.wav');
    expect(text.split('\n')[0]).toContain('side\\u{202e}\\u{a}Cut by nobody.wav');
  });
});
