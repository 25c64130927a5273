import type { ForecastedFile } from '../forecast-result.js';
import type { FindingId } from '../model/forecast-types.js';
import { limitIsAccepted } from './accepted-limit.js';
import { levelText } from './length-text.js';
import { placeText } from './place-text.js';

/** No higher level is looked at, so one as high as this is not a limit. */
const HIGHEST_DB = 12;
const HIGHEST = '+12.0 dB or more (highest looked at)';

/** How loud the side can go and what limits it; empty for silence, which has no level. */
export function headroomText({ forecast, settings }: ForecastedFile): string {
  if (forecast.findings.some(({ id }) => id === 'silent')) return '';
  const { fillDb, traceDb, recommendedDb, limitedBy } = forecast.headroom;
  const none = 'nowhere from -12 to +12 dB';
  const level = (decibels: number | null) =>
    decibels === null ? none : isHighest(decibels) ? HIGHEST : `up to ${levelText(decibels)}`;
  const recommended =
    recommendedDb === null
      ? 'Headroom: no level from -12 to +12 dB holds'
      : `Headroom: ${isHighest(recommendedDb) ? HIGHEST : `at most ${levelText(recommendedDb)}`}`;
  const by =
    limitedBy === null
      ? ''
      : `, limited by ${limitIsAccepted(forecast, settings) ? 'a finding that is accepted: ' : ''}` +
        limitText(limitedBy.id) +
        (limitedBy.atSeconds === null ? '' : ` at ${placeText(limitedBy.atSeconds, settings)}`);
  // Where length is what limits, no other fault says nothing of the whole.
  const isLonger = fillDb === null || (traceDb !== null && traceDb > fillDb);
  const without = isLonger ? 'apart from its length without a fault' : 'without a fault';
  const both =
    isHighest(fillDb) && isHighest(traceDb)
      ? ''
      : ` Fits ${level(fillDb)}; ${without} ${level(traceDb)}.`;
  return `${recommended}${by}.${both}`;
}

function isHighest(decibels: number | null): boolean {
  return decibels !== null && decibels >= HIGHEST_DB;
}

export function limitText(id: FindingId): string {
  switch (id) {
    case 'too-long':
      return 'the room on the disc';
    case 'tight-bend':
      return 'bends under the playback tip';
    case 'facet':
      return "the cutter's facets";
    case 'lift':
      return 'the groove getting too narrow';
    case 'too-deep':
      return 'the depth of the coating';
    case 'overcut':
    case 'land-low':
      return 'land';
    case 'pitch-limit':
      return 'how far the pitch can open';
    default:
      return id;
  }
}
