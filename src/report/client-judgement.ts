import type { FindingId } from '../model/forecast-types.js';
import type { Problem } from './client-problems.js';
import type { ClientSide } from './client-side.js';
import { fixed } from './length-text.js';

/** Whether a side can be cut as it is, in a sentence or two. */
export function clientJudgement(side: ClientSide, problems: readonly Problem[]): string {
  const { quieterDb, limitedBy } = side;
  if (side.findings.some(({ id }) => id === 'silent') || quieterDb === null) {
    return problems.length === 0
      ? 'It cannot be cut as it is. The cutting room will look for a way; there is nothing for you ' +
          'to change yet.'
      : `It cannot be cut as it is. Please send a new file with ${changes(problems)}.`;
  }
  if (problems.some(({ ids }) => ids.includes('truncated'))) {
    return (
      'Part of it may be missing, so it should not be cut yet. Please send a new file with ' +
      `${changes(problems)}.`
    );
  }
  // Less than the text would show is nothing.
  if (quieterDb >= 0.05) {
    const lessLoud =
      `It can be cut as it is, but ${fixed(quieterDb, 1)} dB quieter than planned` +
      `${louderText(limitedBy)}.`;
    if (problems.length === 0) return lessLoud;
    const isMended = problems.some(({ ids }) => ids.some((id) => id === limitedBy));
    return isMended
      ? `${lessLoud} To have it louder, send it with ${changes(problems)}; what follows is about ` +
          'the planned loudness.'
      : `${lessLoud} ${better(problems)}${aboutLevel(problems)}`;
  }
  if (problems.length === 0) return 'It can be cut as it is. There is nothing to change.';
  return `It can be cut as it is. ${better(problems)}`;
}

function better(problems: readonly Problem[]): string {
  return problems.every(({ severity }) => severity === 'note')
    ? 'Something to know:'
    : `It would come out better with ${changes(problems)}.`;
}

/** Problems of what is cut are those at the planned loudness, and may be none at a lower one. */
function aboutLevel(problems: readonly Problem[]): string {
  return problems.some(({ ids }) => ids.some((id) => OF_LEVEL.has(id)))
    ? ' What follows is about the planned loudness.'
    : '';
}

const OF_LEVEL: ReadonlySet<FindingId> = new Set([
  'lift',
  'too-deep',
  'low-vertical',
  'too-long',
  'facet',
  'tight-bend',
]);

function changes({ length }: readonly Problem[]): string {
  return length === 1 ? 'this change' : 'these changes';
}

/** What more level would break, as a listener would say it. */
function louderText(limitedBy: FindingId | null): string {
  switch (limitedBy) {
    case 'too-long':
      return ', because any louder it would not fit on the disc';
    case 'overcut':
    case 'land-low':
    case 'pitch-limit':
      return ', because any louder the groove would run into itself';
    case 'lift':
    case 'too-deep':
      return ', because any louder its bass, which differs between the speakers, could not be cut';
    case 'facet':
    case 'tight-bend':
      return ', because any louder its brightest sounds would come out distorted';
    default:
      return '';
  }
}
