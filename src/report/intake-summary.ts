import type { IntakeCounts } from './intake-document.js';

/** How many files there were of what, in a line. */
export function intakeSummary({ files, failures, ...verdicts }: IntakeCounts): string {
  const counts = (['fault', 'caution', 'clear'] as const).flatMap((verdict) =>
    verdicts[verdict] === 0 ? [] : [`${verdicts[verdict]} ${verdict}`],
  );
  const judged = files === 0 ? 'no file judged' : `${files} file${files === 1 ? '' : 's'} judged`;
  const unread = failures === 0 ? '' : `; ${failures} could not be read`;
  return `${judged}${counts.length === 0 ? '' : `: ${counts.join(', ')}`}${unread}`;
}
