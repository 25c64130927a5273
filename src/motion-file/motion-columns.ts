import {
  BINS_PER_QUARTER,
  HISTOGRAM_CLASSES,
  type Histogram,
  type LowBand,
  type MotionSummary,
  type WallMotion,
} from '../analysis/motion.js';

/** Any of the arrays that a motion summary consists of. */
export type Column = Float64Array | Int16Array | Uint32Array;
export type ColumnType = 'float64' | 'int16' | 'uint32';

/** One column of a motion summary, whatever summary. */
export interface ColumnPlace {
  /** Where in the summary it stands, such as `left.velocityPeak`. */
  readonly name: string;
  readonly type: ColumnType;
  /** Entries a quarter turn. */
  readonly perQuarter: number;
  readonly of: (motion: MotionSummary) => Column;
}

/** Bytes of one entry. */
export const ENTRY_BYTES: Readonly<Record<ColumnType, number>> = {
  float64: 8,
  int16: 2,
  uint32: 4,
};

const BIN_NAMES = [
  'approach',
  'approachLoose',
  'lift',
  'sink',
  'lateral',
  'outward',
  'inward',
] as const satisfies readonly (keyof MotionSummary)[];

const WALL_NAMES = [
  'velocityPeak',
  'accelerationPeak',
  'velocityMeanSquare',
  'accelerationMeanSquare',
] as const satisfies readonly (keyof WallMotion)[];

const HISTOGRAM_NAMES = [
  'edgeVelocityHistogram',
  'accelerationHistogram',
] as const satisfies readonly (keyof WallMotion)[];

const LOW_BAND_NAMES = [
  'correlation',
  'phase',
  'verticalShare',
  'strongestFrequency',
  'verticalAmplitude',
  'lateralAmplitude',
] as const satisfies readonly (keyof LowBand)[];

/** All columns in the order in which a motion file holds them. */
export const COLUMNS: readonly ColumnPlace[] = [
  ...BIN_NAMES.map((name) => numbers(name, BINS_PER_QUARTER, (motion) => motion[name])),
  ...wallColumns('left'),
  ...wallColumns('right'),
  ...LOW_BAND_NAMES.map((name) => numbers(`lowBand.${name}`, 1, (motion) => motion.lowBand[name])),
];

function wallColumns(wall: 'left' | 'right'): ColumnPlace[] {
  return [
    ...WALL_NAMES.map((name) => numbers(`${wall}.${name}`, 1, (motion) => motion[wall][name])),
    ...HISTOGRAM_NAMES.flatMap((name) =>
      histogramColumns(`${wall}.${name}`, (motion) => motion[wall][name]),
    ),
  ];
}

function numbers(
  name: string,
  perQuarter: number,
  of: (motion: MotionSummary) => Float64Array,
): ColumnPlace {
  return { name, type: 'float64', perQuarter, of };
}

function histogramColumns(name: string, of: (motion: MotionSummary) => Histogram): ColumnPlace[] {
  return [
    {
      name: `${name}.topClass`,
      type: 'int16',
      perQuarter: 1,
      of: (motion) => of(motion).topClass,
    },
    {
      name: `${name}.counts`,
      type: 'uint32',
      perQuarter: HISTOGRAM_CLASSES,
      of: (motion) => of(motion).counts,
    },
  ];
}
