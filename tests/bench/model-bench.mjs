// @ts-check
import { forecastFile, resolveProfile } from '../../dist/index.js';
import { headroom } from '../../dist/model/level.js';
import { planSide } from '../../dist/model/plan.js';
import { plannedSide } from '../../dist/model/planned-side.js';
import { verify } from '../../dist/model/verify.js';
import { benchSide } from './bench-side.mjs';

const RUNS = 20;

/**
 * What the model takes on the summary of a side, warm.
 * @param {{ seconds: number, rate: number }} side
 * @returns {Promise<{ planMilliseconds: number, headroomMilliseconds: number }>} medians
 */
export async function benchModel(side) {
  const settings = resolveProfile();
  const request = { levelDb: 0, planner: /** @type {const} */ ('turn-ahead'), keepMotion: true };
  const { motion } = await forecastFile(benchSide(side), settings, request);
  if (motion === null) throw new Error('no motion was kept');
  const planned = plannedSide(motion, settings);
  return {
    planMilliseconds: median(() => verify(planned, planSide(planned, 'turn-ahead', 0))),
    headroomMilliseconds: median(() => headroom(planned, 'turn-ahead')),
  };
}

/** @param {() => unknown} work */
function median(work) {
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((one, other) => one - other)[RUNS / 2] ?? Number.NaN;
}
