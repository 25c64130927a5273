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
    ...(stale.length === 0
      ? []
      : [`${name}: for nothing, since not found now: ${stale.map(whatText).join('; ')}`]),
  ];
}

/** What does not hold any more, a sentence a reason, where the side is told. */
export function voidText(voided: readonly VoidAcceptance[]): string {
  return byReason(voided)
    .map(([why, entries]) => {
      const what = entries.map(whatText).join('; ');
      return `Void, since ${whyText(why)}: ${what}.`;
    })
    .join(' ');
}

function byReason(voided: readonly VoidAcceptance[]): [VoidReason, AcceptedEntry[]][] {
  const reasons = new Set(voided.map(({ why }) => why));
  return Array.from(reasons, (reason) => [
    reason,
    voided.flatMap(({ entry, why }) => (why === reason ? [entry] : [])),
  ]);
}

function whatText({ id, fromSeconds, untilSeconds, reason }: AcceptedEntry): string {
  const place =
    fromSeconds === null || untilSeconds === null
      ? ''
      : ` from ${timeText(fromSeconds)} to ${timeText(untilSeconds)}`;
  return `the acceptance of ${id}${place} (${safeText(reason)})`;
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
