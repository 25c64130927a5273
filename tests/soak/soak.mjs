// @ts-check
import { parseArgs } from 'node:util';
import { killMoments } from './kill-moments.mjs';
import { soakWatch } from './soak-watch.mjs';

// Lets the built command run for long and be killed: npm run soak
// --files N through a watch, 2,000 unless said; --moments N at which each command is killed, 50.

/**
 * How much more memory the last 200 reports of the longest run may take than 200 once it is warm:
 * what is known of each file is kept, a kilobyte or two.
 */
const GROWTH = 1.1;

const { values } = parseArgs({
  options: {
    files: { type: 'string', default: '2000' },
    moments: { type: 'string', default: '50' },
  },
});
/** @type {string[]} */
const wrong = [];

for (const name of /** @type {const} */ (['forecast', 'watch'])) {
  const found = await killMoments(name, { moments: Number(values.moments), sides: 8 });
  say(
    `${name}, killed ${found.moments} times over ${found.files} older results: ` +
      `${found.broken.length} broken, ${found.mixed} kills between two results, ` +
      `${found.unfinished} unfinished files left, next run ${found.isRight ? 'right' : 'WRONG'}`,
  );
  if (found.broken.length > 0) wrong.push(`${name}: ${found.broken.join(', ')}`);
  if (!found.isRight) wrong.push(`${name}: the next run`);
}

const files = Number(values.files);
const began = performance.now();
const soaked = await soakWatch({ files, settleSeconds: 1, patience: 120_000 });
const { told, misfits, resident, exitCodes, strays } = soaked;
say(
  `watch, ${files} uploads in ${Math.round((performance.now() - began) / 1000)} s, ended twice: ` +
    `${soaked.expected} to report; ${told.examined} examined, ${told.same} known by content, ` +
    `${told.failed} failed, ${soaked.late} too slow to tell; exit codes ${exitCodes.join(', ')}; ${strays.length} unfinished files`,
);
for (const [kind, paths] of Object.entries(misfits)) {
  say(`  ${kind}: ${paths.length}`);
  // The lines of what was just written when the watch was killed may be missing: two jobs.
  if (paths.length > (kind === 'untold' ? 2 : 0)) wrong.push(`${kind}: ${paths.join(', ')}`);
}
for (const { reports, first, warm, last } of resident) {
  const [begins, holds, ends] = [first, warm, last].map((megabytes) => megabytes.toFixed(1));
  const between = reports < 1000 ? '' : `, ${holds} over those after 400`;
  say(`  a process of ${reports} reports: ${begins} MB over 200${between}, ${ends} over the last`);
}
const longest = resident.reduce((one, other) => (one.reports >= other.reports ? one : other));
if (longest.reports >= 1000 && longest.last > GROWTH * longest.warm) wrong.push('memory grows');
if (exitCodes.some((code) => code !== 0)) wrong.push(`exit codes ${exitCodes.join(', ')}`);
say(wrong.length === 0 ? 'all as it should be' : `WRONG: ${wrong.join('; ')}`);
process.exitCode = wrong.length === 0 ? 0 : 1;

/** @param {string} text */
function say(text) {
  process.stdout.write(`${text}\n`);
}
