import type { ForecastedFile } from '../forecast-result.js';
import type { PlanReport } from '../model/forecast-types.js';
import type { Metres, MetresPerTurn } from '../units.js';

/** What is drawn along a side, one value a quarter turn. */
export interface ChartSeries {
  /** Whose plan the verdict is about. */
  readonly pitch: Float64Array;
  /** The one it is compared with. */
  readonly otherPitch: Float64Array;
  readonly land: Float64Array;
  /** At the start of each quarter and at the end of the last. */
  readonly radius: Float64Array;
}

const QUARTERS_PER_TURN = 4;

/** The columns of what is executed, beside the pitch of the plan or, if that is it, the machine. */
export function chartSeries({ forecast, settings }: ForecastedFile): ChartSeries {
  const { executes, quarters } = forecast;
  const { land, machineLand, fixedLand } = quarters;
  const start = settings.startDiameter / 2;
  const pitch = bandless(quarters.pitch, forecast.plan);
  const machinePitch = bandless(quarters.machinePitch, forecast.machine);
  switch (executes) {
    case 'machine':
      return {
        pitch: machinePitch,
        otherPitch: pitch,
        land: machineLand,
        radius: spiral(start, quarters.machinePitch),
      };
    case 'plan':
      return { pitch, otherPitch: machinePitch, land, radius: spiral(start, quarters.pitch) };
    case 'fixed':
      return {
        pitch: bandless(quarters.fixedPitch, forecast.fixed),
        otherPitch: pitch,
        land: fixedLand,
        radius: spiral(start, quarters.fixedPitch),
      };
  }
}

/** A marker band as wide as the plan is at its widest: in full it would leave no room for the rest. */
function bandless(pitch: Float64Array, { pitchMax }: PlanReport): Float64Array {
  return pitch.map((each) => Math.min(each, pitchMax));
}

/** r after each quarter turn: r − p/4, as the pitch is held over a quarter. */
function spiral(start: Metres, pitch: Float64Array<ArrayBufferLike>): Float64Array {
  const radius = new Float64Array(pitch.length + 1).fill(start);
  let at: MetresPerTurn = start;
  for (const [quarter, each] of pitch.entries()) {
    at -= each / QUARTERS_PER_TURN;
    radius[quarter + 1] = at;
  }
  return radius;
}
