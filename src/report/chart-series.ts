import type { ForecastedFile } from '../forecast-result.js';
import { landTolerance } from '../model/planned-side.js';
import type { Settings } from '../settings.js';
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
  const { pitch, machinePitch, land, machineLand, approachLoose } = quarters;
  const start = settings.startDiameter / 2;
  switch (executes) {
    case 'machine':
      return {
        pitch: machinePitch,
        otherPitch: pitch,
        land: machineLand,
        radius: spiral(start, machinePitch),
      };
    case 'plan':
      return { pitch, otherPitch: machinePitch, land, radius: spiral(start, pitch) };
    case 'fixed': {
      const base = pitch.map(() => settings.basePitch);
      const fixedLand = approachLoose.map((loose) => landAtBase(settings, loose));
      return { pitch: base, otherPitch: pitch, land: fixedLand, radius: spiral(start, base) };
    }
  }
}

/** land = p − w₀ − approachLoose − tolerances, where neither pitch nor depth moves. */
function landAtBase(settings: Settings, approachLoose: Metres): Metres {
  return settings.basePitch - settings.baseWidth - approachLoose - landTolerance(settings);
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
