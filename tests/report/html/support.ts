import type { MotionSummary } from '../../../src/analysis/motion.js';
import type { SideForecast } from '../../../src/model/forecast-types.js';
import { movedWall } from '../../../src/model/moved-wall.js';
import { type PlannedRows, plannedRows } from '../../../src/model/planned-rows.js';
import { codeMotion } from '../../../src/report/html/data/code-motion.js';
import { keepMotion } from '../../../src/report/html/data/keep-motion.js';
import { emptyKept } from '../../../src/report/html/data/kept-motion.js';
import { keptSummary } from '../../../src/report/html/data/kept-summary.js';
import { leastAsked } from '../../../src/report/html/data/least-asked.js';
import { rangeDecoder, rangeEncoder } from '../../../src/report/html/data/range-coder.js';
import { roundedLength, roundedNumber } from '../../../src/report/html/data/rounded.js';
import type { Settings } from '../../../src/settings.js';

/** What a forecast is made of. */
interface Known {
  readonly motion: MotionSummary;
  readonly rows: PlannedRows;
}

/** The summary as a page has it after its data were packed and taken out again. */
export function throughPage(motion: MotionSummary, settings: Settings, levelMost = 6): Known {
  const written = keepMotion(motion, leastAsked(settings, settings.finishingDiameter, levelMost));
  const coder = rangeEncoder();
  codeMotion(coder, written);
  const read = emptyKept(motion.quarterCount, written.leastClasses);
  codeMotion(rangeDecoder(coder.finish()), read);
  const { motion: kept, movedWallAt } = keptSummary(read, motion);
  return { motion: kept, rows: plannedRows(kept, settings, movedWallAt) };
}

/**
 * The summary with each number rounded, and what no page shows left out, which is all that a page's
 * data may do to it; which wall moves is told by the summary as it is.
 */
export function roundedAsPage(motion: MotionSummary, settings: Settings): Known {
  const { left, right, lowBand } = motion;
  const unknown = new Float64Array(motion.quarterCount).fill(Number.NaN);
  const wall = (of: MotionSummary['left']) => ({
    ...of,
    velocityPeak: of.velocityPeak.map(roundedNumber),
    accelerationPeak: of.accelerationPeak.map(roundedNumber),
    velocityMeanSquare: of.velocityMeanSquare.map(roundedNumber),
    accelerationMeanSquare: of.accelerationMeanSquare.map(roundedNumber),
  });
  const rounded = {
    ...motion,
    approach: motion.approach.map(roundedLength),
    approachLoose: motion.approachLoose.map(roundedLength),
    lift: motion.lift.map(roundedLength),
    sink: motion.sink.map(roundedLength),
    lateral: motion.lateral.map(roundedLength),
    outward: motion.outward.map(roundedLength),
    inward: motion.inward.map(roundedLength),
    left: wall(left),
    right: wall(right),
    lowBand: {
      strongestFrequency: lowBand.strongestFrequency.map(roundedNumber),
      verticalAmplitude: lowBand.verticalAmplitude.map(roundedLength),
      phase: unknown,
      correlation: unknown,
      verticalShare: unknown,
      lateralAmplitude: unknown,
    },
  };
  const rows = plannedRows(rounded, settings, (bin) => movedWall(motion, bin));
  return { motion: rounded, rows };
}

/**
 * Every number of a forecast, in one order, and everything else of it as text.
 * @param isAsked for a path such as `.hotSpots.0.land`
 */
export function told(
  forecast: Partial<SideForecast>,
  isAsked: (path: string) => boolean = () => true,
): { numbers: number[]; words: string[] } {
  const numbers: number[] = [];
  const words: string[] = [];
  const walk = (value: unknown, path: string): void => {
    if (!isAsked(path)) return;
    if (typeof value === 'number' && !Number.isNaN(value)) {
      numbers.push(value);
      words.push(path);
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, of] of Object.entries(value)) walk(of, `${path}.${key}`);
    } else {
      words.push(`${path}=${String(value)}`);
    }
  };
  walk(forecast, '');
  return { numbers, words };
}
