import {
  BINS_PER_QUARTER,
  begun,
  HISTOGRAM_CLASSES,
  type Histogram,
  type MotionSummary,
  QUARTERS_PER_TURN,
  type WallMotion,
} from '../../src/analysis/motion.js';

/** The summary of a silent program, every row its own. */
export function emptyMotion(durationSeconds: number, turnSeconds = 1.8): MotionSummary {
  const quarters = QUARTERS_PER_TURN * (begun(durationSeconds / turnSeconds) + 1);
  const bins = () => new Float64Array(quarters * BINS_PER_QUARTER);
  const column = () => new Float64Array(quarters);
  return {
    turnSeconds,
    durationSeconds,
    quarterCount: quarters,
    approach: bins(),
    approachLoose: bins(),
    lift: bins(),
    sink: bins(),
    lateral: bins(),
    outward: bins(),
    inward: bins(),
    left: stillWall(quarters),
    right: stillWall(quarters),
    lowBand: {
      correlation: column(),
      phase: column(),
      verticalShare: column(),
      strongestFrequency: column(),
      verticalAmplitude: column(),
      lateralAmplitude: column(),
    },
    program: {
      meanSquare: [0.01, 0.01],
      mean: [0, 0],
      samplePeak: [0.5, 0.5],
      truePeak: [0.5, 0.5],
      loudnessLufs: -20,
      clippedRuns: 0,
      firstClipSeconds: null,
      longestClip: null,
      correlation: 0.5,
      identicalChannels: false,
      ultrasonicMeanSquare: 0,
      silence: { count: 0, seconds: 0, first: [] },
      jumps: { count: 0, largest: [] },
    },
  };
}

function stillWall(quarters: number): WallMotion {
  return {
    velocityPeak: new Float64Array(quarters),
    accelerationPeak: new Float64Array(quarters),
    velocityMeanSquare: new Float64Array(quarters),
    accelerationMeanSquare: new Float64Array(quarters),
    edgeVelocityHistogram: stillHistogram(quarters),
    accelerationHistogram: stillHistogram(quarters),
  };
}

function stillHistogram(quarters: number): Histogram {
  return {
    topClass: new Int16Array(quarters).fill(-64),
    counts: new Uint32Array(quarters * HISTOGRAM_CLASSES),
  };
}
