// @ts-check
import { writeFileSync } from 'node:fs';
import { ffmpegLoudness } from './ffmpeg-loudness.mjs';
import { loudnessSignals } from './loudness-signals.mjs';
import { ffmpegReplayCurve, soxReplayCurve } from './replay-curves.mjs';
import { runProgram } from './run-program.mjs';

// Writes what the outside programs say today into expected/, each with the program's version:
// node tests/reference-signals/record.mjs

record('sox-riaa', versionLine('sox', '--version'), {
  curves: [88_200, 96_000].map(soxReplayCurve),
});
record('ffmpeg-riaa', versionLine('ffmpeg', '-version'), {
  curves: [96_000].map(ffmpegReplayCurve),
});
record('ffmpeg-loudness', versionLine('ffmpeg', '-version'), {
  readings: loudnessSignals().map(ffmpegLoudness),
});

/**
 * @param {string} name of the file
 * @param {string} program with its version
 * @param {object} figures
 */
function record(name, program, figures) {
  const text = JSON.stringify({ program, ...figures }, null, 1);
  writeFileSync(new URL(`expected/${name}.json`, import.meta.url), `${text}\n`);
}

/**
 * The first line a program says of itself, up to its version.
 * @param {string} program
 * @param {string} flag
 */
function versionLine(program, flag) {
  const line = runProgram(program, [flag]).stdout.toString('utf8').split('\n')[0] ?? '';
  return line
    .replace(/ Copyright.*/, '')
    .replace(/\s+/g, ' ')
    .trim();
}
