import type { QuarterColumns } from './forecast-types.js';
import { cutDepth } from './groove.js';
import { type PlannedSide, quarterStart } from './planned-side.js';
import { traceWalls } from './tracing.js';
import type { Verified } from './verify.js';

/** The quarters that the program touches, column by column, of the plan beside the others'. */
export function quarterColumns(
  side: PlannedSide,
  verified: Verified,
  machine: Verified,
  fixed: Verified,
): QuarterColumns {
  const { lead, programCount, settings, motion } = side;
  const { plan } = verified;
  const { facet, bend } = traceWalls(side, plan);
  const program = (row: Float64Array) => row.slice(lead, lead + programCount);
  const changed = (row: Float64Array, change: (of: number, quarter: number) => number) => {
    const column = program(row);
    for (let quarter = 0; quarter < column.length; quarter++) {
      column[quarter] = change(column[quarter]!, quarter);
    }
    return column;
  };
  const scaled = (row: Float64Array) => changed(row, (motionAt0Db) => plan.gain * motionAt0Db);
  return {
    atSeconds: changed(plan.pitch, (_, quarter) => quarterStart(side, lead + quarter)),
    radius: program(plan.radius),
    pitch: program(plan.cut),
    machinePitch: program(machine.plan.cut),
    fixedPitch: program(fixed.plan.cut),
    widthSet: changed(plan.halfWidth, (halfWidth) => 2 * halfWidth),
    widthMin: program(verified.widthMin),
    widthMax: program(verified.widthMax),
    cutDepthMax: changed(verified.widthMax, (width) => cutDepth(width, settings.bottomRadius)),
    land: program(verified.land),
    landNominal: program(verified.landNominal),
    machineLand: program(machine.land),
    fixedLand: program(fixed.land),
    approach: scaled(side.approachMax),
    approachLoose: scaled(side.approachLooseMax),
    lateral: scaled(side.lateralMax),
    lift: scaled(side.liftMax),
    sink: scaled(side.sinkMax),
    facetMax: program(facet),
    bendMin: changed(bend, (radius) => (Number.isFinite(radius) ? radius : Number.NaN)),
    lowCorrelation: motion.lowBand.correlation.slice(0, programCount),
    lowVerticalShare: motion.lowBand.verticalShare.slice(0, programCount),
    lowVertical: motion.lowBand.verticalAmplitude
      .slice(0, programCount)
      .map((motionAt0Db) => plan.gain * motionAt0Db),
  };
}
