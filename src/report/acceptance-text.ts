import type { AcceptedEntry } from '../accepted/accepted-schema.js';
import type { AppliedAcceptances, VoidAcceptance, VoidReason } from '../accepted/apply-accepted.js';
import { timeText } from './place-text.js';
import { safeText } from './safe-text.js';

/** What is to be said of a side's acceptances that do not hold, one line each. */
export function acceptanceNotes({ file, voided, stale }: AppliedAcceptances): string[] {
  const name = safeText(file.name);
  return [
    ...voided.map(({ entry, why }) => `${name}: ${whatText(entry)} is void: ${whyText(why)}`),
    ...stale.map((entry) => `${name}: ${whatText(entry)} is for nothing: it is not found now`),
  ];
}

/** What does not hold any more, in sentences, where the side is told. */
export function voidText(voided: readonly VoidAcceptance[]): string {
  return voided
    .map(({ entry, why }) => `Void: ${whatText(entry)}, since ${whyText(why)}.`)
    .join(' ');
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
