import type { SideFit } from '../fit/fit-result.js';
import { type BasePitchFit, isOfThePitch, isTightestLookedAt } from '../model/fit-base-pitch.js';
import type { Headroom } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import { clockText } from './fit-remedy-text.js';
import { limitText } from './headroom-text.js';
import { fixed, levelText, type Units } from './length-text.js';
import { safePitchText } from './safe-pitch-text.js';
import { trackPlace } from './track-place.js';

const NO_LEVEL = 'no level from -12 to +12 dB';

/** How loud the side goes, and what each passage costs that holds it down; a sentence each. */
export function limitTexts(fit: SideFit): string[] {
  const { limits, planners, executed, headrooms } = fit;
  const own = headrooms[planners.indexOf(executed)];
  // Silence has no level.
  if (own === undefined || fit.findings.some(({ id }) => id === 'silent')) return [];
  return [
    holdsText(own, fit),
    ...(limits.length === 0 ? noPassageText(own, fit) : []),
    ...limits.map(({ id, atSeconds, untilSeconds, levelDb, withoutDb }, at) => {
      const lasts = fixed(untilSeconds - atSeconds, 1);
      const cost = levelText(withoutDb - levelDb).replace('+', '');
      const then = withoutDb >= 12 ? '+12.0 dB or more' : levelText(withoutDb);
      const seconds = `${lasts} s at ${placeIn(atSeconds, fit, untilSeconds)}`;
      const start = at === 0 ? '' : 'Then ';
      return `${start}${seconds} cost ${cost} by ${limitText(id)}: without them ${then}.`;
    }),
  ];
}

function holdsText({ fillDb, traceDb, recommendedDb, limitedBy }: Headroom, fit: SideFit): string {
  const upTo = (decibels: number) =>
    decibels >= 12 ? 'up to +12.0 dB or more' : `up to ${levelText(decibels)}`;
  const fits = fillDb === null ? `Fits at ${NO_LEVEL}` : `Fits ${upTo(fillDb)}`;
  if (traceDb === null) {
    const by =
      limitedBy === null || limitedBy.atSeconds === null
        ? ''
        : `: at -12.0 dB it is limited by ${limitText(limitedBy.id)} at ${placeIn(limitedBy.atSeconds, fit)}`;
    return `${fits}; ${NO_LEVEL} is without a fault${by}.`;
  }
  const dial = recommendedDb === null ? '' : `; dial in at most ${levelText(recommendedDb)}`;
  if (fillDb === traceDb) return `Fits and is without a fault ${upTo(traceDb)}${dial}.`;
  // Where length is what limits, no other fault says nothing of the whole.
  const without =
    fillDb === null || fillDb < traceDb
      ? 'apart from its length without a fault'
      : 'without a fault';
  return `${fits}, ${without} ${upTo(traceDb)}${dial}.`;
}

/** Where the level is limited at a place, and leaving its seconds out makes it no higher. */
function noPassageText({ traceDb, limitedBy }: Headroom, fit: SideFit): string[] {
  if (traceDb === null || traceDb >= 12 || limitedBy === null) return [];
  if (limitedBy.id === 'too-long' || limitedBy.atSeconds === null) return [];
  const where = placeIn(limitedBy.atSeconds, fit).replace(/,$/, '');
  const limit = `Limited by ${limitText(limitedBy.id)} at ${where}`;
  return [`${limit}; without those seconds alone it holds no more than 0.1 dB more.`];
}

/**
 * A time of the side, with the track of a sheet that is heard then; what begins in a gap, by whole
 * quarter turns, with the track in its middle.
 */
function placeIn(
  atSeconds: Seconds,
  { settings, tracks }: SideFit,
  untilSeconds: Seconds = atSeconds,
): string {
  const heard = (seconds: Seconds) => (tracks.length > 1 ? trackPlace(seconds, tracks) : null);
  const place = heard(atSeconds) ?? heard((atSeconds + untilSeconds) / 2);
  const at = clockText(atSeconds, settings);
  return place === null ? at : `${at}, track ${place.number},`;
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
    const widest = pitch(holds.widest);
    const range = isTightestLookedAt(holds.tightest, settings.pitchStep)
      ? `${widest} or any tighter`
      : `from ${widest} to ${pitch(holds.tightest)}`;
    return `Base pitch for ${at}: ${range}.`;
  }
  if (missing === null) return '';
  const { faults } = missing;
  // What does not fit at the tightest pitch there is fits at none, whatever else is wrong there.
  const long = faults.find(({ id }) => id === 'too-long');
  if (long !== undefined) {
    return `No base pitch holds ${at}: even ${pitch(missing.pitch)} takes more room than there is.`;
  }
  const ofPitch = faults.filter(isOfThePitch);
  const [first] = ofPitch.length === 0 ? faults : ofPitch;
  if (first === undefined) return '';
  const where = first.atSeconds === null ? '' : ` at ${clockText(first.atSeconds, settings)}`;
  const more = faults.length > 1 ? ` and ${faults.length - 1} more` : '';
  const limit = `${limitText(first.id)}${where}${more}`;
  if (ofPitch.length === 0) return `No base pitch holds ${at}, since none mends ${limit}.`;
  return `No base pitch holds ${at}: at ${pitch(missing.pitch)} it is limited by ${limit}.`;
}
