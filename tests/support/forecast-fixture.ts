import type { ForecastedFile } from '../../src/forecast-result.js';
import type { Finding, PlanReport, SideForecast } from '../../src/model/forecast-types.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';

/** An invented finding: a quarter second of too little land, on the left, in the bass. */
export function findingWith(changes: Partial<Finding> = {}): Finding {
  return {
    id: 'land-low',
    severity: 'caution',
    atSeconds: 192.44,
    untilSeconds: 192.44,
    value: 8.24e-6,
    limit: 12.7e-6,
    unit: 'metre',
    wall: 'left',
    frequency: 45.3,
    detail: null,
    ...changes,
  };
}

/** An invented plan of a side of twenty minutes. */
export function planWith(changes: Partial<PlanReport> = {}): PlanReport {
  return {
    radiusUsed: 0.0821234,
    startDiameter: 0.2921,
    endDiameter: 0.1278532,
    spare: 0.0036016,
    fits: true,
    pitchMin: 84.6666667e-6,
    pitchMean: 123.1851e-6,
    pitchMax: 310.04e-6,
    landMin: 8.24e-6,
    landMinAtSeconds: 192.44,
    widthMin: 25.4e-6,
    widthMinAtSeconds: -0.2,
    widthMax: 80e-6,
    cutDepthMax: 39.99e-6,
    facetMax: 0.61239,
    facetMaxAtSeconds: 1100.5,
    bendMin: 12.346e-6,
    bendMinAtSeconds: 1100.5,
    bendShareSpherical: 0.00234,
    bendShareLine: 0,
    ...changes,
  };
}

/** An invented side, with whatever a test wants to be different. */
export function forecastedFile(
  changes: Partial<ForecastedFile> = {},
  forecast: Partial<SideForecast> = {},
): ForecastedFile {
  const column = Float64Array.of(1e-6, 2.345e-6);
  const columns = {
    atSeconds: Float64Array.of(0, 0.45),
    radius: Float64Array.of(0.14605, 0.146),
    pitch: column,
    machinePitch: column,
    fixedPitch: column,
    widthSet: column,
    widthMin: column,
    widthMax: column,
    cutDepthMax: column,
    land: Float64Array.of(-1.004e-9, 5e-6),
    landNominal: column,
    machineLand: column,
    fixedLand: column,
    approach: column,
    approachLoose: column,
    lateral: column,
    lift: column,
    sink: column,
    facetMax: Float64Array.of(0.12344, 0.5),
    bendMin: Float64Array.of(Number.NaN, 2e-5),
    lowCorrelation: Float64Array.of(1, -0.5),
    lowVerticalShare: Float64Array.of(0, 0.25),
    lowVertical: Float64Array.of(0, 4e-6),
  };
  return {
    name: 'invented-side.wav',
    sources: [
      {
        path: 'sides/invented-side.wav',
        container: 'RIFF',
        encoding: 'pcm',
        bitDepth: 24,
        sampleRate: 96_000,
        channels: 2,
        frames: 115_200_000,
        durationSeconds: 1200,
      },
    ],
    settings: resolveProfile(),
    program: {
      meanSquare: [0.01, 0.03],
      mean: [0, 0],
      samplePeak: [0.5, 0.9],
      truePeak: [0.5, 1],
      loudnessLufs: -14.234,
      clippedRuns: 0,
      firstClipSeconds: null,
      longestClip: null,
      correlation: 0.7,
      identicalChannels: false,
      ultrasonicMeanSquare: 0,
      silence: { count: 0, seconds: 0, first: [] },
      jumps: { count: 0, largest: [] },
    },
    readFrom: 'audio',
    motion: null,
    audioSha256: null,
    ...changes,
    forecast: {
      durationSeconds: 1200,
      turns: 666.6666667,
      levelDb: 0,
      planner: 'turn-ahead',
      executes: 'machine',
      verdict: 'caution',
      plan: planWith(),
      machine: planWith({ endDiameter: 0.1206612, spare: 5.6e-6 }),
      fixed: planWith({ landMin: -30e-6, fits: false, spare: -0.001 }),
      tightest: { radiusUsed: 0.0801 },
      headroom: {
        fillDb: 0.71,
        traceDb: 1.9,
        recommendedDb: 0.5,
        limitedBy: { id: 'too-long', atSeconds: null },
      },
      headLoad: {
        left: { oneSecond: 2_134_567.8, tenSeconds: 987_654.3, limitRatio: null },
        right: { oneSecond: 1_900_000, tenSeconds: 0, limitRatio: null },
      },
      hotSpots: [
        {
          atSeconds: 192.44,
          turn: 106.911,
          radius: 0.1329,
          land: 8.24e-6,
          landNominal: 14.9e-6,
          pitch: 131.2e-6,
          cause: 'lateral-low',
          frequency: 45.3,
          wall: 'both',
          overcutDepth: 0,
          reachesContact: false,
          survives: { speed: 0.0012, depth: 2.1e-6, delay: null },
        },
      ],
      findings: [findingWith()],
      quarters: columns,
      ...forecast,
    },
  };
}
