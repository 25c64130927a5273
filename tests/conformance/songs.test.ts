// Recordings: the songs of Debian's package fretsonfire-songs-sectoid (MIT licence), decoded by
// ffmpeg; rock, mastered loud. Asserted are laws of the planners, not figures of a former run.
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { expect, test } from 'vitest';
import { forecastJson } from '../support/forecast-json.js';
import { needProgram, needSongs, SONGS_FOLDER } from '../support/outside-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

/** Of each song: so that the test stays short. */
const SECONDS = 60;

/** The first minute of every song, as 44.1 kHz/16 bit WAV. */
async function songFiles(folder: string): Promise<string[]> {
  const songs = await readdir(SONGS_FOLDER, { withFileTypes: true });
  const names = songs.filter((entry) => entry.isDirectory()).map(({ name }) => name);
  const paths: string[] = [];
  for (const [index, name] of names.sort().entries()) {
    const path = join(folder, `song-${index}.wav`);
    const input = ['-nostdin', '-loglevel', 'error', '-i', join(SONGS_FOLDER, name, 'song.ogg')];
    await execa('ffmpeg', [...input, '-t', `${SECONDS}`, '-c:a', 'pcm_s16le', path]);
    paths.push(path);
  }
  return paths;
}

test('every song fits the laws of the planners', async (context) => {
  needSongs(context);
  needProgram('ffmpeg', context);
  const folder = await temporaryFolder();
  const paths = await songFiles(folder);
  expect(paths.length).toBeGreaterThan(0);
  const profile = join(folder, 'profile.json');
  await writeFile(profile, JSON.stringify({ timingTolerance: 0, speedTolerance: 0 }));

  for (const side of await forecastJson(paths, ['--level', '-6', '--profile', profile])) {
    expect(side.durationSeconds).toBeWithin(SECONDS, 0.03);
    // Land is reported as a lower bound, low by less than 1 µm.
    expect(side.plan.landMinUm, 'turn-ahead keeps 0.5 mil').toBeGreaterThan(11.7);
    // Rounded to 0.001 mm each.
    expect(side.plan.radiusUsedMm, 'turn-ahead never takes more radius').toBeLessThanOrEqual(
      side.machine.radiusUsedMm + 0.001,
    );
  }
});
