// @ts-check
import { cpus } from 'node:os';
import { benchFolder, benchSide, repeatedSide } from './bench-side.mjs';
import { bestOf } from './best-of.mjs';
import { benchModel } from './model-bench.mjs';
import { ffmpegMeter, furrow, soxMeter } from './programs.mjs';

// Times whole processes side by side and holds them against the bars: npm run bench
// `npm run bench -- long start` runs only these.

const RUNS = 5;
const HIGH = { seconds: 1200, rate: 96_000 };
const LOW = { seconds: 1200, rate: 44_100 };

/** What is measured under which name; each tells its rows and gives its bars. */
const BENCHES = { long, low, one, lengths, folder, start, model };
/** @typedef {readonly [claim: string, measured: number, bar: number, atLeast?: boolean]} Bar */

const wanted = process.argv.slice(2);
say(`${process.platform} ${process.arch}, ${cpus().length} × ${cpus()[0]?.model.trim()}`);
say(`Node ${process.version}; best of ${RUNS} rounds after a warm-up`);
/** @type {Bar[]} */
const bars = [];
for (const [name, bench] of Object.entries(BENCHES)) {
  if (wanted.length === 0 || wanted.includes(name)) bars.push(...(await bench()));
}
say('\nBars');
for (const [claim, measured, bar, atLeast = false] of bars) {
  const holds = atLeast ? measured >= bar : measured <= bar;
  const limit = `${atLeast ? '≥' : '≤'} ${bar}`;
  say(
    `${holds ? 'holds' : 'OVER '}  ${measured.toFixed(2).padStart(8)}  ${limit.padEnd(7)} ${claim}`,
  );
}

/** A 20-minute side on all cores. */
async function long() {
  const path = benchSide(HIGH);
  const [own, sox, ffmpeg] = await timed('20 minutes, 96 kHz, 24 bit, stereo', 20, [
    ['furrow', ...furrow('forecast', path, '--no-discovery', '--json')],
    ['sox riaa stats', ...soxMeter(path)],
    ['ffmpeg ebur128', ...ffmpegMeter(path)],
  ]);
  return bar([
    ['96 kHz: of sox riaa stats', ratio(own, sox), 0.6],
    ['96 kHz: of ffmpeg ebur128', ratio(own, ffmpeg), 0.2],
  ]);
}

/** The same at 44.1 kHz. */
async function low() {
  const path = benchSide(LOW);
  const [own, sox] = await timed('20 minutes, 44.1 kHz, 24 bit, stereo', 20, [
    ['furrow', ...furrow('forecast', path, '--no-discovery', '--json')],
    ['sox riaa stats', ...soxMeter(path)],
  ]);
  return bar([['44.1 kHz: of sox riaa stats', ratio(own, sox), 1]]);
}

/** One job at a time. */
async function one() {
  const path = benchSide(HIGH);
  const [own, sox] = await timed('20 minutes, 96 kHz, 24 bit, stereo, one job', 20, [
    ['furrow --jobs 1', ...furrow('forecast', path, '--no-discovery', '--json', '--jobs', '1')],
    ['sox riaa stats', ...soxMeter(path)],
  ]);
  return bar([['one job, 96 kHz: of sox riaa stats', ratio(own, sox), 1.1]]);
}

/** Time and memory as sides grow. */
async function lengths() {
  const five = { seconds: 300, rate: HIGH.rate };
  const sides = [benchSide(five), benchSide(HIGH), repeatedSide(HIGH, 3), repeatedSide(HIGH, 7)];
  const minutes = [5, 20, 60, 140];
  const rows = await timed(
    'lengths, 96 kHz, 24 bit',
    null,
    sides.map((path, index) => [
      `${minutes[index]} minutes`,
      ...furrow('forecast', path, '--no-discovery', '--json'),
    ]),
  );
  const [short, , hour] = rows;
  return bar([
    ...rows.map(({ name, peakBytes }) => memoryBar(name, peakBytes)),
    ['a minute of 60 against a minute of 5', ratio(hour, short) / 12, 1.1],
  ]);
}

/** Many files: two jobs against one. */
async function folder() {
  const path = benchFolder({ seconds: 180, rate: HIGH.rate }, 40);
  const [two, single] = await timed('forty sides of 3 minutes', 120, [
    ['--jobs 2', ...furrow('forecast', path, '--no-discovery', '--ndjson', '--jobs', '2')],
    ['--jobs 1', ...furrow('forecast', path, '--no-discovery', '--ndjson', '--jobs', '1')],
  ]);
  return bar([['forty sides: two jobs over one', ratio(single, two), 1.8, true]]);
}

/** What a start costs. */
async function start() {
  const [version, node, second] = await timed('start', null, [
    ['furrow --version', ...furrow('--version')],
    ['node -e 0', process.execPath, '-e', '0'],
    [
      '1 s file',
      ...furrow('forecast', benchSide({ seconds: 1, rate: 44_100 }), '--no-discovery', '--json'),
    ],
  ]);
  return bar([
    ['--version: of node -e 0', ratio(version, node), 2],
    ['1 s file: ms', 1000 * (second?.seconds ?? Number.NaN), 300],
  ]);
}

/** From a summary on. */
async function model() {
  const { planMilliseconds, headroomMilliseconds } = await benchModel({
    seconds: 1200,
    rate: 44_100,
  });
  return bar([
    ['turn-ahead and verification, 20 minutes: ms', planMilliseconds, 3],
    ['headroom, 20 minutes: ms', headroomMilliseconds, 60],
  ]);
}

/**
 * @param {string} title
 * @param {number | null} minutes of sound, for the speed
 * @param {Parameters<typeof bestOf>[1]} commands
 */
async function timed(title, minutes, commands) {
  const rows = await bestOf(RUNS, commands);
  say(`\n${title}`);
  say(row('', 'seconds', 'x real time', 'peak MB'));
  for (const { name, seconds, peakBytes } of rows) {
    const speed = minutes === null ? '' : ((minutes * 60) / seconds).toFixed(0);
    say(row(name, seconds.toFixed(3), speed, (peakBytes / 1e6).toFixed(0)));
  }
  return rows;
}

/** @param {{ seconds: number } | undefined} of @param {{ seconds: number } | undefined} by */
function ratio(of, by) {
  return (of?.seconds ?? Number.NaN) / (by?.seconds ?? Number.NaN);
}

/** @param {readonly Bar[]} list */
function bar(list) {
  return list;
}

/** @param {string} name @param {number} peakBytes @returns {Bar} */
function memoryBar(name, peakBytes) {
  return [`${name}: MB`, peakBytes / 1e6, 150];
}

/** @param {string[]} cells */
function row(...cells) {
  return cells.map((cell, column) => (column === 0 ? cell.padEnd(18) : cell.padStart(13))).join('');
}

/** @param {string} line */
function say(line) {
  process.stdout.write(`${line}\n`);
}
