import type { AcceptedEntry } from '../accepted/accepted-schema.js';
import type { AppliedAcceptances, VoidAcceptance, VoidReason } from '../accepted/apply-accepted.js';
import { timeText } from './place-text.js';
import { safeText } from './safe-text.js';

/**
 * What is to be said of a side's acceptances that do not hold, one line a reason: those that are
 * void are counted, since the side itself tells them; those for nothing are told nowhere else.
 */
export function acceptanceNotes({ file, voided, stale }: AppliedAcceptances): string[] {
  const name = safeText(file.name);
  return [
    ...byReason(voided).map(([why, entries]) => {
      const ids = [...new Set(entries.map(({ id }) => id))].join(', ');
      const count = `${entries.length} acceptance${entries.length === 1 ? ' is' : 's are'} void`;
      return `${name}: ${count} (${ids}): ${whyText(why)}`;
    }),
    ...(stale.length === 0 ? [] : [`${name}: accepted, but not found now: ${listText(stale)}`]),
  ];
}

/** What does not hold any more, a sentence a reason, where the side is told. */
export function voidText(voided: readonly VoidAcceptance[]): string {
  return byReason(voided)
    .map(([why, entries]) => `Void acceptances, since ${whyText(why)}: ${listText(entries)}.`)
    .join(' ');
}

function byReason(voided: readonly VoidAcceptance[]): [VoidReason, AcceptedEntry[]][] {
  const reasons = new Set(voided.map(({ why }) => why));
  return Array.from(reasons, (reason) => [
    reason,
    voided.flatMap(({ entry, why }) => (why === reason ? [entry] : [])),
  ]);
}

/** `overcut at 01:06.0, 02:24.1–02:25.0 (kisses); too-long (agreed)`. */
function listText(entries: readonly AcceptedEntry[]): string {
  const places = new Map<string, { head: string; tail: string; spans: string[] }>();
  for (const { id, reason, fromSeconds, untilSeconds } of entries) {
    const tail = ` (${safeText(reason)})`;
    const alike = places.get(`${id}${tail}`) ?? { head: id, tail, spans: [] };
    places.set(`${id}${tail}`, alike);
    if (fromSeconds === null || untilSeconds === null) continue;
    const [from, until] = [timeText(fromSeconds), timeText(untilSeconds)];
    alike.spans.push(from === until ? from : `${from}–${until}`);
  }
  return Array.from(places.values(), ({ head, tail, spans }) => {
    const at = spans.length === 0 ? '' : ` at ${spans.join(', ')}`;
    return `${head}${at}${tail}`;
  }).join('; ');
}

function whyText(why: VoidReason): string {
  switch (why) {
    case 'audio-changed':
      return 'the sound is not the one that was accepted';
    case 'audio-unknown':
      return 'it is not known whether the sound is the one that was accepted';
    case 'outgrown':
      return 'the finding has grown beyond what was accepted';
  }
}
