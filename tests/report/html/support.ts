import type { MotionSummary } from '../../../src/analysis/motion.js';
import type { SideForecast } from '../../../src/model/forecast-types.js';
import { takeFrom, toPlanes } from '../../../src/report/html/data/byte-planes.js';
import { leastAsked } from '../../../src/report/html/data/least-asked.js';
import { readSummary, summaryColumns } from '../../../src/report/html/data/summary-columns.js';
import type { Settings } from '../../../src/settings.js';

/** The summary as a page has it after its data were packed and taken out again. */
export function throughPage(motion: MotionSummary, settings: Settings, levelMost = 6) {
  const asked = leastAsked(settings, settings.finishingDiameter, levelMost);
  const planes = toPlanes(summaryColumns(motion, asked));
  return readSummary(takeFrom(planes), motion);
}

/** The summary with each number rounded to float32, which is all that a page's data may do to it. */
export function roundedToFloat32(motion: MotionSummary): MotionSummary {
  const row = (values: Float64Array) => Float64Array.from(Float32Array.from(values));
  const { left, right, lowBand } = motion;
  const wall = (of: MotionSummary['left']) => ({
    ...of,
    velocityPeak: row(of.velocityPeak),
    accelerationPeak: row(of.accelerationPeak),
    velocityMeanSquare: row(of.velocityMeanSquare),
    accelerationMeanSquare: row(of.accelerationMeanSquare),
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
      phase: row(lowBand.phase),
      correlation: row(lowBand.correlation),
      verticalShare: row(lowBand.verticalShare),
      strongestFrequency: row(lowBand.strongestFrequency),
      verticalAmplitude: row(lowBand.verticalAmplitude),
      lateralAmplitude: row(lowBand.lateralAmplitude),
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
