import type { SideFit } from '../fit/fit-result.js';
import type { BasePitchFit } from '../model/fit-base-pitch.js';
import { clockText } from './fit-remedy-text.js';
import { limitText } from './headroom-text.js';
import { fixed, levelText, type Units } from './length-text.js';
import { safePitchText } from './safe-pitch-text.js';

/** How loud the side goes, and what each passage costs that holds it down; a sentence each. */
export function limitTexts(fit: SideFit): string[] {
  const { limits, settings, planners, executed, headrooms } = fit;
  const own = headrooms[planners.indexOf(executed)];
  // Silence has no level.
  if (own === undefined || fit.findings.some(({ id }) => id === 'silent')) return [];
  const { fillDb, traceDb, recommendedDb } = own;
  const level = (decibels: number | null) =>
    decibels === null
      ? 'nowhere from -12 to +12 dB'
      : decibels >= 12
        ? 'up to +12.0 dB or more'
        : `up to ${levelText(decibels)}`;
  const dial = recommendedDb === null ? '' : `; dial in at most ${levelText(recommendedDb)}`;
  const holds =
    level(fillDb) === level(traceDb)
      ? `Fits and is without a fault ${level(fillDb)}`
      : `Fits ${level(fillDb)}, without a fault ${level(traceDb)}`;
  return [
    `${holds}${dial}.`,
    ...limits.map(({ id, atSeconds, untilSeconds, levelDb, withoutDb }, at) => {
      const lasts = fixed(untilSeconds - atSeconds, 1);
      const cost = levelText(withoutDb - levelDb).replace('+', '');
      const then = withoutDb >= 12 ? '+12.0 dB or more' : levelText(withoutDb);
      const seconds = `${lasts} s at ${clockText(atSeconds, settings)}`;
      const start = at === 0 ? '' : 'Then ';
      return `${start}${seconds} cost ${cost} by ${limitText(id)}: without them ${then}.`;
    }),
  ];
}

/** The base pitches that hold the wanted level, or what is missing. */
export function basePitchText(
  { levelDb, holds, missing }: BasePitchFit,
  { settings, findings }: SideFit,
  units: Units,
): string {
  if (findings.some(({ id }) => id === 'silent')) return '';
  const pitch = (value: number) => safePitchText(value, settings.pitchStep, units);
  const at = levelText(levelDb);
  if (holds !== null) {
    return `Base pitch for ${at}: from ${pitch(holds.widest)} to ${pitch(holds.tightest)}.`;
  }
  if (missing === null) return '';
  const { faults } = missing;
  const [first] = faults;
  if (first === undefined) return '';
  const where =
    first.atSeconds === null || first.id === 'too-long'
      ? ''
      : ` at ${clockText(first.atSeconds, settings)}`;
  const more = faults.length > 1 ? ` and ${faults.length - 1} more` : '';
  return `No base pitch holds ${at}: at ${pitch(missing.pitch)} it is limited by ${limitText(first.id)}${where}${more}.`;
}
