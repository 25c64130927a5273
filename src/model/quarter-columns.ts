import type { QuarterColumns } from './forecast-types.js';
import { cutDepth } from './groove.js';
import { type PlannedSide, quarterStart } from './planned-side.js';
import { traceWalls } from './tracing.js';
import type { Verified } from './verify.js';

/** Somewhere for a column: so many bytes, all 0. */
export type ColumnMemory = (bytes: number) => ArrayBufferLike;

/**
 * The quarters that the program touches, column by column, of the plan beside the others'.
 * @param memory where the columns are to lie
 */
export function quarterColumns(
  side: PlannedSide,
  verified: Verified,
  machine: Verified,
  fixed: Verified,
  memory: ColumnMemory = (bytes) => new ArrayBuffer(bytes),
): QuarterColumns {
  const { lead, programCount, settings, motion } = side;
  const { plan } = verified;
  const { facet, bend } = traceWalls(side, plan);
  const column = (row: Float64Array, from: number) => {
    const values = new Float64Array(memory(8 * programCount));
    values.set(row.subarray(from, from + programCount));
    return values;
  };
  const program = (row: Float64Array) => column(row, lead);
  const scaled = (motionAt0Db: Float64Array) => changed(motionAt0Db, (of) => plan.gain * of);
  return {
    atSeconds: changed(program(plan.pitch), (_, quarter) => quarterStart(side, lead + quarter)),
    radius: program(plan.radius),
    pitch: program(plan.cut),
    machinePitch: program(machine.plan.cut),
    fixedPitch: program(fixed.plan.cut),
    widthSet: changed(program(plan.halfWidth), (halfWidth) => 2 * halfWidth),
    widthMin: program(verified.widthMin),
    widthMax: program(verified.widthMax),
    cutDepthMax: changed(program(verified.widthMax), (width) =>
      cutDepth(width, settings.bottomRadius),
    ),
    land: program(verified.land),
    landNominal: program(verified.landNominal),
    machineLand: program(machine.land),
    fixedLand: program(fixed.land),
    approach: scaled(program(side.approachMax)),
    approachLoose: scaled(program(side.approachLooseMax)),
    lateral: scaled(program(side.lateralMax)),
    lift: scaled(program(side.liftMax)),
    sink: scaled(program(side.sinkMax)),
    facetMax: program(facet),
    bendMin: changed(program(bend), (radius) => (Number.isFinite(radius) ? radius : Number.NaN)),
    lowCorrelation: column(motion.lowBand.correlation, 0),
    lowVerticalShare: column(motion.lowBand.verticalShare, 0),
    lowVertical: scaled(column(motion.lowBand.verticalAmplitude, 0)),
  };
}

/** Changes a column's values in place. */
function changed(
  column: Float64Array,
  change: (value: number, quarter: number) => number,
): Float64Array {
  for (let quarter = 0; quarter < column.length; quarter++) {
    column[quarter] = change(column[quarter]!, quarter);
  }
  return column;
}
