import type { ForecastedFile } from '../forecast-result.js';
import type { Settings } from '../settings.js';
import { ceilToStep, floorToStep } from '../steps.js';
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
 * What to dial in, each in the machine's own steps and rounded to the safe side.
 * - Level: the planned one, or the recommended one if that is lower: never louder than what the plan
 *   was made for; rounded down, since less motion needs less of everything. Where no level holds it
 *   is the planned one, and the text names none.
 * - Pitch: rounded up, since a wider pitch leaves more land; a profile's is planned so already.
 * - Width: as planned. Wider would take land and narrower would be lost sooner when the cutter
 *   lifts, so neither side is safe; `depthTolerance` covers what setting it leaves.
 * - Elliptical: rounded up to a position, see safeCorner.
 */
export function setUp(file: ForecastedFile): SetUp {
  const { settings, forecast } = file;
  const { basePitch, width, ellipticalHz } = startOf(file);
  const recommended = forecast.headroom.recommendedDb ?? Number.POSITIVE_INFINITY;
  return {
    levelDb: floorToStep(Math.min(forecast.levelDb, recommended), settings.levelStep),
    basePitch: ceilToStep(basePitch, settings.pitchStep),
    width,
    meterReading: meterReading(settings.depthMeter, width),
    ellipticalHz: safeCorner(ellipticalHz, settings.ellipticalSteps),
  };
}

/** Base pitch, width and corner at the first sample: the profile's, or what a sheet sets there. */
export function startOf({ settings, hand }: ForecastedFile) {
  const pitch = hand?.basePitch.findLast(({ fromSeconds }) => fromSeconds <= 0);
  const width = hand?.baseWidth.findLast(({ fromSeconds }) => fromSeconds <= 0);
  const elliptical = hand?.tracks[0]?.elliptical;
  return {
    basePitch: pitch?.pitch ?? settings.basePitch,
    width: width?.width ?? settings.baseWidth,
    ellipticalHz: elliptical === undefined ? settings.ellipticalHz : elliptical.corner,
  };
}

/**
 * The lowest position at or above a corner: a higher one takes out more of the vertical motion, so
 * that less of the groove is lost to lift and less of the coating to depth. Above the last position
 * there is no safe one: the highest.
 */
export function safeCorner(corner: Hertz | null, steps: readonly Hertz[] | null): Hertz | null {
  if (corner === null || steps === null || steps.length === 0) return corner;
  const above = steps.filter((step) => step >= corner);
  return above.length > 0 ? Math.min(...above) : Math.max(...steps);
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
