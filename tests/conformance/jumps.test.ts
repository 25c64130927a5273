// Recordings: npm's supersonic-scsynth-samples (CC0), and the songs of Debian's package
// fretsonfire-songs-sectoid (MIT licence), decoded by ffmpeg: rock, mastered loud, which has been
// through a lossy codec. The eight files of the songs, 27 minutes, were found to hold no jump.
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { expect, test } from 'vitest';
import { JumpList, type Jumps } from '../../src/analysis/jump-list.js';
import { JumpFinder } from '../../src/analysis/jumps.js';
import { wholeProgram } from '../../src/analysis/parts.js';
import { programOf } from '../../src/analysis/program.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { needProgram, needSongs, SONGS_FOLDER } from '../support/outside-program.js';
import { type Recording, realRecordings } from '../support/real-recordings.js';

const RATE = 44_100;

function jumpsIn(sound: Stereo): Jumps {
  const format = { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: RATE } as const;
  const program = programOf(format, sound.left.length);
  const list = new JumpList(program, wholeProgram(program, resolveProfile()));
  const finder = new JumpFinder(0, (jump) => list.add(jump));
  finder.push(sound);
  finder.finish();
  return list.finish();
}

function soundOf(words: Int32Array | Int16Array, bitDepth: number): Stereo {
  const frames = words.length / 2;
  const sound = { left: new Float64Array(frames), right: new Float64Array(frames) };
  for (let frame = 0; frame < frames; frame++) {
    sound.left[frame] = (words[2 * frame] ?? 0) / 2 ** (bitDepth - 1);
    sound.right[frame] = (words[2 * frame + 1] ?? 0) / 2 ** (bitDepth - 1);
  }
  return sound;
}

const recordings = await realRecordings();
const soundIn = ({ words, bitDepth }: Recording): Stereo => soundOf(words, bitDepth);

test('recordings jump where they were cut, and in those that are made of cuts and clicks', () => {
  // Sliced beats, glitches that are meant, and a needle in a worn groove.
  const cut = /^(arovane_beat_|glitch_|loop_breakbeat|vinyl_hiss)/;
  let inside = 0;
  let atEnds = 0;
  for (const recording of recordings) {
    const sound = soundIn(recording);
    const last = sound.left.length - 1;
    for (const { frame } of jumpsIn(sound).largest) {
      if (frame === 0 || frame === last) atEnds++;
      else {
        inside++;
        expect(recording.name).toMatch(cut);
      }
    }
  }
  expect(recordings.length).toBeGreaterThan(100);
  expect([inside > 0, atEnds > 0]).toEqual([true, true]);
});

test('a sample at 6 dB under full scale is found in nine of ten recordings, at its place', () => {
  const long = recordings.filter(({ words }) => words.length > 2 * RATE);
  const found = long.filter((recording) => {
    const { left, right } = soundIn(recording);
    const at = Math.floor(left.length / 2);
    left[at] = (left[at] ?? 0) + 0.5;
    return jumpsIn({ left, right }).largest.some(({ frame, channel }) => {
      return Math.abs(frame - at) <= 1 && channel === 0;
    });
  });
  expect(long.length).toBeGreaterThan(50);
  expect(found.length).toBeGreaterThanOrEqual(0.9 * long.length);
});

test('the first half minute of each song holds no jump', async (context) => {
  needSongs(context);
  needProgram('ffmpeg', context);
  const songs = await readdir(SONGS_FOLDER, { withFileTypes: true });
  const folders = songs.filter((entry) => entry.isDirectory()).map(({ name }) => name);
  const paths = folders.map((name) => join(SONGS_FOLDER, name, 'song.ogg'));
  expect(paths.length).toBeGreaterThan(2);
  for (const path of paths) {
    const output = ['-t', '30', '-ar', `${RATE}`, '-ac', '2', '-f', 's16le', '-'];
    const args = ['-nostdin', '-loglevel', 'error', '-i', path, ...output];
    const { stdout } = await execa('ffmpeg', args, { encoding: 'buffer', maxBuffer: 2 ** 28 });
    const words = new Int16Array(Uint8Array.from(stdout).buffer);
    const sound = soundOf(words, 16);
    // It ends in the middle of the music.
    const inside = jumpsIn(sound).largest.filter(({ frame }) => frame < sound.left.length - 1);
    expect(inside, path).toEqual([]);
  }
});
