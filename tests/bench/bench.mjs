// @ts-check
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { benchSide, SIDE_MINUTES } from './bench-side.mjs';
import { bestOf } from './best-of.mjs';

// Times whole processes side by side on one long side: npm run bench

const RUNS = 5;
const furrow = fileURLToPath(new URL('../../bin/furrow.js', import.meta.url));
const side = benchSide();

const long = await bestOf(RUNS, [
  ['furrow forecast', process.execPath, furrow, 'forecast', side, '--no-discovery', '--json'],
  ['sox riaa stats', 'sox', side, '-n', 'riaa', 'stats'],
  ['ffmpeg ebur128', 'ffmpeg', ...quietFfmpeg(side)],
]);
const short = await bestOf(RUNS, [
  ['furrow --version', process.execPath, furrow, '--version'],
  ['node -e 0', process.execPath, '-e', '0'],
]);

say(`${SIDE_MINUTES} minutes, 96 kHz, 24 bit, stereo; best of ${RUNS} rounds after a warm-up`);
say(`${process.platform} ${process.arch}, ${cpus().length} × ${cpus()[0]?.model.trim()}`);
say(`Node ${process.version}\n`);
say(row('', 'seconds', 'x real time', 'of furrow', 'peak MB'));
for (const rows of [long, short]) {
  const own = rows[0]?.seconds ?? Number.NaN;
  for (const { name, seconds, peakBytes } of rows) {
    const speed = rows.length === 3 ? ((SIDE_MINUTES * 60) / seconds).toFixed(0) : '';
    const ratio = (seconds / own).toFixed(2);
    say(row(name, seconds.toFixed(3), speed, ratio, (peakBytes / 1e6).toFixed(0)));
  }
}

/** @param {string} path */
function quietFfmpeg(path) {
  const input = ['-hide_banner', '-nostdin', '-nostats', '-loglevel', 'error', '-i', path];
  return [...input, '-af', 'ebur128=peak=true', '-f', 'null', '-'];
}

/** @param {string[]} cells */
function row(...cells) {
  return cells.map((cell, column) => (column === 0 ? cell.padEnd(18) : cell.padStart(13))).join('');
}

/** @param {string} line */
function say(line) {
  process.stdout.write(`${line}\n`);
}
