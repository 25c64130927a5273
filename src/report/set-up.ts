import type { ForecastedFile } from '../forecast-result.js';
import type { Settings } from '../settings.js';
import type { Hertz, Metres, MetresPerTurn } from '../units.js';

/** What the engineer dials in before the cut. */
export interface SetUp {
  readonly levelDb: number;
  readonly basePitch: MetresPerTurn;
  readonly width: Metres;
  readonly meterReading: number | null;
  readonly ellipticalHz: Hertz | null;
}

/**
 * The level is the planned one, or the recommended one if that is lower: never louder than what
 * the plan was made for. It is rounded down to a step of the level control. Where no level holds
 * it is the planned one, and the text names none. The pitch is the base pitch, rounded up to a step
 * of the pitch control: wider is safe.
 */
export function setUp({ settings, forecast }: ForecastedFile): SetUp {
  const recommended = forecast.headroom.recommendedDb ?? Number.POSITIVE_INFINITY;
  return {
    levelDb: floorToStep(Math.min(forecast.levelDb, recommended), settings.levelStep),
    basePitch: ceilToStep(settings.basePitch, settings.pitchStep),
    width: settings.baseWidth,
    meterReading: meterReading(settings.depthMeter, settings.baseWidth),
    ellipticalHz: settings.ellipticalHz,
  };
}

/** The largest multiple of `step` that is at most `level`, but for what rounding adds to it. */
export function floorToStep(level: number, step: number): number {
  return Math.floor(level / step + 1e-9) * step;
}

/** The least multiple of `step` that is at least `pitch`, but for what rounding takes from it. */
export function ceilToStep(pitch: MetresPerTurn, step: MetresPerTurn | null): MetresPerTurn {
  return step === null ? pitch : Math.ceil(pitch / step - 1e-9) * step;
}

/** The reading a width stands for, linear between the table's rows; null outside of them. */
export function meterReading(table: Settings['depthMeter'], width: Metres): number | null {
  for (const [index, above] of (table ?? []).entries()) {
    const below = table?.[index - 1] ?? above;
    // A width typed in mil may differ from the table's in its last bit.
    const isHere = width >= below.width * (1 - 1e-9) && width <= above.width * (1 + 1e-9);
    if (!isHere) continue;
    const share = below === above ? 0 : (width - below.width) / (above.width - below.width);
    return below.reading + share * (above.reading - below.reading);
  }
  return null;
}
