import {
  type LowBand,
  type MotionSummary,
  QUARTERS_PER_TURN,
  type WallMotion,
} from '../../../analysis/motion.js';
import { coarseBins, filledRow, keptBins, largestOf, setCoarseBins } from './bin-rows.js';
import type { PageColumn, TakeColumn } from './byte-planes.js';
import {
  type BinMask,
  decidingBins,
  eitherMask,
  hullBins,
  laterMask,
  withoutMask,
} from './deciding-bins.js';
import { classOf, type LeastAsked } from './least-asked.js';
import { pooledColumns, pooledHistogram } from './pooled-histogram.js';
import { roundedLength, roundedNumber } from './rounded.js';

const WALL_ROWS = [
  'velocityPeak',
  'accelerationPeak',
  'velocityMeanSquare',
  'accelerationMeanSquare',
] as const satisfies readonly (keyof WallMotion)[];
const LOW_ROWS = [
  'correlation',
  'verticalShare',
  'strongestFrequency',
  'verticalAmplitude',
  'lateralAmplitude',
] as const satisfies readonly (keyof LowBand)[];

/**
 * What a page keeps of a motion summary, rounded and as float32, in the order in which `readSummary` takes it.
 * - `approachLoose`, `approach`, `lift`, `sink`: the bins that can decide over land or width;
 * - of all else that hangs on single bins, in steps of 1/255 of its quarter: what is asked at a hot
 *   spot only, in the bins that can be one and in those a turn outside of them;
 * - histograms: the classes that a limit can lie in;
 * - not kept: the phase of the low band.
 */
export function summaryColumns(motion: MotionSummary, asked: LeastAsked): PageColumn[] {
  const { approachLoose, approach, lift, sink, lateral, outward, inward } = motion;
  const loose = decidingBins(approachLoose);
  const near = eitherMask(loose, hullBins(approach));
  const [high, low] = [hullBins(lift), hullBins(sink)];
  const rest = coarseMasks(loose, high, low);
  const [liftMost, sinkMost] = [largestOf(lift), largestOf(sink)];
  const above = coarseBins(lift, rest.lift, negated(sinkMost), liftMost);
  const below = coarseBins(sink, rest.sink, negated(liftMost), sinkMost);
  const coarse = (row: Float64Array, mask: BinMask) => {
    const most = largestOf(row);
    return [
      Float32Array.from(most, roundedLength),
      coarseBins(row, mask, new Float64Array(most.length), most),
    ];
  };
  return [
    loose,
    keptBins(approachLoose, loose),
    near,
    keptBins(approach, near),
    high,
    keptBins(lift, high),
    low,
    keptBins(sink, low),
    above,
    below,
    ...coarse(lateral, rest.lateral),
    ...coarse(outward, rest.outward),
    ...coarse(inward, rest.inward),
    ...wallColumns(motion.left, asked),
    ...wallColumns(motion.right, asked),
    ...LOW_ROWS.map((name) => Float32Array.from(motion.lowBand[name], roundedNumber)),
  ];
}

/** The summary again. @param known what is no column */
export function readSummary(
  take: TakeColumn,
  known: Pick<MotionSummary, 'turnSeconds' | 'durationSeconds' | 'quarterCount' | 'program'>,
): MotionSummary {
  const { quarterCount } = known;
  const mask = () => take.uint16(quarterCount);
  const kept = (of: BinMask) => filledRow(take.float32(countOf(of)), of);
  const loose = mask();
  const approachLoose = kept(loose);
  const approach = kept(mask());
  const high = mask();
  const lift = kept(high);
  const low = mask();
  const sink = kept(low);
  const rest = coarseMasks(loose, high, low);
  const [liftMost, sinkMost] = [largestOf(lift), largestOf(sink)];
  const codes = (of: BinMask) => take.uint8(countOf(of));
  setCoarseBins(lift, rest.lift, codes(rest.lift), negated(sinkMost), liftMost);
  setCoarseBins(sink, rest.sink, codes(rest.sink), negated(liftMost), sinkMost);
  const coarse = (of: BinMask) => {
    const most = Float64Array.from(take.float32(quarterCount));
    const row = Float64Array.from({ length: lift.length }, (_, bin) => most[bin >> 4] ?? 0);
    setCoarseBins(row, of, codes(of), new Float64Array(quarterCount), most);
    return row;
  };
  const lateral = coarse(rest.lateral);
  const outward = coarse(rest.outward);
  const inward = coarse(rest.inward);
  const left = readWall(take, quarterCount);
  const right = readWall(take, quarterCount);
  const row = () => Float64Array.from(take.float32(quarterCount));
  const lowBand = {
    correlation: row(),
    verticalShare: row(),
    strongestFrequency: row(),
    verticalAmplitude: row(),
    lateralAmplitude: row(),
    phase: new Float64Array(quarterCount).fill(Number.NaN),
  };
  const bins = { approach, approachLoose, lift, sink, lateral, outward, inward };
  return { ...known, ...bins, left, right, lowBand };
}

/** Where each row is kept in steps: at what may be a hot spot, or a turn outside of one. */
function coarseMasks(loose: BinMask, high: BinMask, low: BinMask) {
  const outside = laterMask(loose, QUARTERS_PER_TURN);
  const both = eitherMask(loose, outside);
  return {
    lift: withoutMask(both, high),
    sink: withoutMask(both, low),
    lateral: both,
    outward: loose,
    inward: outside,
  };
}

function wallColumns(wall: WallMotion, asked: LeastAsked): PageColumn[] {
  return [
    ...WALL_ROWS.map((name) => Float32Array.from(wall[name], roundedNumber)),
    ...pooledColumns(wall.edgeVelocityHistogram, classOf(asked.edgeVelocity)),
    ...pooledColumns(wall.accelerationHistogram, classOf(asked.acceleration)),
  ];
}

function readWall(take: TakeColumn, quarterCount: number): WallMotion {
  const row = () => Float64Array.from(take.float32(quarterCount));
  return {
    velocityPeak: row(),
    accelerationPeak: row(),
    velocityMeanSquare: row(),
    accelerationMeanSquare: row(),
    edgeVelocityHistogram: pooledHistogram(take, quarterCount),
    accelerationHistogram: pooledHistogram(take, quarterCount),
  };
}

function countOf(mask: BinMask): number {
  let count = 0;
  for (const bits of mask) for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}

function negated(row: Float64Array): Float64Array {
  return row.map((value) => -value);
}
