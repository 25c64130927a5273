import type { MotionSummary } from '../../../src/analysis/motion.js';
import type { SideForecast } from '../../../src/model/forecast-types.js';
import { takeFrom, toPlanes } from '../../../src/report/html/data/byte-planes.js';
import { leastAsked } from '../../../src/report/html/data/least-asked.js';
import { roundedLength, roundedNumber } from '../../../src/report/html/data/rounded.js';
import { readSummary, summaryColumns } from '../../../src/report/html/data/summary-columns.js';
import type { Settings } from '../../../src/settings.js';

/** The summary as a page has it after its data were packed and taken out again. */
export function throughPage(motion: MotionSummary, settings: Settings, levelMost = 6) {
  const asked = leastAsked(settings, settings.finishingDiameter, levelMost);
  const planes = toPlanes(summaryColumns(motion, asked));
  return readSummary(takeFrom(planes), motion);
}

/** The summary with each number rounded, which is all that a page's data may do to it. */
export function roundedAsPage(motion: MotionSummary): MotionSummary {
  const row = (values: Float64Array, round = roundedLength) =>
    Float64Array.from(Float32Array.from(values, round));
  const numbers = (values: Float64Array) => row(values, roundedNumber);
  const { left, right, lowBand } = motion;
  const wall = (of: MotionSummary['left']) => ({
    ...of,
    velocityPeak: numbers(of.velocityPeak),
    accelerationPeak: numbers(of.accelerationPeak),
    velocityMeanSquare: numbers(of.velocityMeanSquare),
    accelerationMeanSquare: numbers(of.accelerationMeanSquare),
  });
  return {
    ...motion,
    approach: row(motion.approach),
    approachLoose: row(motion.approachLoose),
    lift: row(motion.lift),
    sink: row(motion.sink),
    lateral: row(motion.lateral),
    outward: row(motion.outward),
    inward: row(motion.inward),
    left: wall(left),
    right: wall(right),
    lowBand: {
      phase: numbers(lowBand.phase),
      correlation: numbers(lowBand.correlation),
      verticalShare: numbers(lowBand.verticalShare),
      strongestFrequency: numbers(lowBand.strongestFrequency),
      verticalAmplitude: numbers(lowBand.verticalAmplitude),
      lateralAmplitude: numbers(lowBand.lateralAmplitude),
    },
  };
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
    if (typeof value === 'number') {
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
