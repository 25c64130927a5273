import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Settings } from '../settings.js';
import type { Metres, Seconds } from '../units.js';
import { executedSpiral } from './executed-spiral.js';
import type { SideForecast } from './forecast-types.js';
import type { HandSettings } from './side-plan-input.js';

/** What the lathe cuts, per quarter turn of the program, SI; of whichever plan is executed. */
export interface ExecutedColumns {
  readonly quarterSeconds: Seconds;
  readonly turnSeconds: Seconds;
  readonly durationSeconds: Seconds;
  readonly land: Float64Array;
  readonly approach: Float64Array;
  readonly approachLoose: Float64Array;
  /** Without modulation. */
  readonly widthSet: Float64Array;
  readonly lift: Float64Array;
  readonly sink: Float64Array;
  /** √2·|u̇| over the groove speed, worst sample. */
  readonly facet: Float64Array;
  /** Least V²/|ü|; NaN in silence. */
  readonly bend: Float64Array;
  /** Centre line at the start of each quarter, and at the end of the last. */
  readonly radius: Float64Array;
}

/**
 * The columns of a forecast for the plan that the lathe executes. Facets and bends of the forecast
 * are the plan's: they go with the groove speed and with its square, so with the radius.
 */
export function executedColumns(
  forecast: SideForecast,
  settings: Settings,
  hand?: HandSettings,
): ExecutedColumns {
  const { quarters, executes, durationSeconds } = forecast;
  const { radius, quarterSeconds } = executedSpiral(forecast, settings);
  // Inside the finishing groove nothing is cut, and a program is judged as if at its edge.
  const least = settings.finishingDiameter / 2;
  const slower = quarters.radius.map(
    (planned, quarter) => Math.max(planned, least) / Math.max(radius[quarter]!, least),
  );
  return {
    quarterSeconds,
    turnSeconds: QUARTERS_PER_TURN * quarterSeconds,
    durationSeconds,
    land: { machine: quarters.machineLand, plan: quarters.land, fixed: quarters.fixedLand }[
      executes
    ],
    approach: quarters.approach,
    approachLoose: quarters.approachLoose,
    // Fixed depth is the base width; the automation and the plan open it alike.
    widthSet:
      executes === 'fixed'
        ? quarters.atSeconds.map((at) => baseWidthAt(at, settings, hand))
        : quarters.widthSet,
    lift: quarters.lift,
    sink: quarters.sink,
    facet: quarters.facetMax.map((facet, quarter) => facet * slower[quarter]!),
    bend: quarters.bendMin.map((bend, quarter) => bend / slower[quarter]! ** 2),
    radius,
  };
}

function baseWidthAt(atSeconds: Seconds, settings: Settings, hand?: HandSettings): Metres {
  const step = hand?.baseWidth.findLast(({ fromSeconds }) => fromSeconds <= atSeconds);
  return step?.width ?? settings.baseWidth;
}
