import type { ForecastedFile } from '../forecast-result.js';
import type { Seconds } from '../units.js';
import type { PlacedBreach } from './broken-rules.js';
import type { Rules, SilenceRule } from './rules.js';

/**
 * What the rules say of the silence before and behind the sound. A silent file breaks none: that is a
 * finding of its own. Of one that has sound, but none as loud as the house calls sound, all of it is
 * silence before and behind. A saved motion has no sound to be asked: its silences are not judged.
 */
export function silenceBreaches(
  { soundEdges, forecast }: ForecastedFile,
  { headSilence, tailSilence, silenceDbfs }: Rules,
): { readonly breaches: PlacedBreach[]; readonly notJudged: ('rule-head' | 'rule-tail')[] } {
  const ends = [
    { id: 'rule-head', rule: headSilence },
    { id: 'rule-tail', rule: tailSilence },
  ] as const;
  const asked = ends.filter(({ rule }) => rule !== null);
  if (soundEdges === undefined) return { breaches: [], notJudged: asked.map(({ id }) => id) };
  const { durationSeconds, findings } = forecast;
  if (findings.some(({ id }) => id === 'silent')) return { breaches: [], notJudged: [] };
  const all = { headSeconds: durationSeconds, tailSeconds: durationSeconds };
  const { headSeconds, tailSeconds } = soundEdges ?? all;
  const breaches = asked.flatMap(({ id, rule }): PlacedBreach[] => {
    const found = id === 'rule-head' ? headSeconds : tailSeconds;
    if (rule === null || isWithin(found, rule)) return [];
    const atSeconds = id === 'rule-head' ? 0 : durationSeconds - tailSeconds;
    return [{ breach: { id, found, ...rule, silenceDbfs }, atSeconds }];
  });
  return { breaches, notJudged: [] };
}

function isWithin(found: Seconds, { least, most }: SilenceRule): boolean {
  return found >= (least ?? 0) && found <= (most ?? Number.POSITIVE_INFINITY);
}
