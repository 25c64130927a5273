import type { Finding, FindingId, Severity } from '../model/forecast-types.js';
import type { ClientSide } from './client-side.js';
import { isWithin, joinedSpans, type Span } from './client-times.js';
import { type ClientWords, clientWords, type Group } from './client-words.js';

/** One thing the client can mend, at all the times it occurs. */
export interface Problem {
  /** Of all findings that the change mends. */
  readonly ids: readonly FindingId[];
  readonly severity: Severity;
  /** Empty for the whole file. */
  readonly spans: readonly Span[];
  readonly words: ClientWords;
}

const WORST_FIRST = ['fault', 'caution', 'note'] as const satisfies readonly Severity[];

/**
 * What the client can mend, the worst first, then as it comes. One kind is told once; so is what is
 * mended by what was told before, at times that were told before.
 */
export function clientProblems({ findings, durationSeconds }: ClientSide): Problem[] {
  const problems: Problem[] = [];
  for (const group of groupsOf(findings)) {
    const words = clientWords(group, durationSeconds);
    if (words === null) continue;
    const spans = joinedSpans(group.findings, durationSeconds);
    const told = problems.findIndex(
      (one) =>
        words.cure !== undefined && one.words.cure === words.cure && isWithin(spans, one.spans),
    );
    const before = problems[told];
    if (before === undefined) {
      problems.push({ ids: [group.id], severity: group.severity, spans, words });
    } else {
      problems[told] = { ...before, ids: [...before.ids, group.id] };
    }
  }
  return problems;
}

/** What the same words are for: an id, at one severity, on one channel where there is only one. */
function groupsOf(findings: readonly Finding[]): Group[] {
  const groups = new Map<string, Finding[]>();
  for (const severity of WORST_FIRST) {
    for (const finding of findings.filter((one) => one.severity === severity)) {
      const key = `${severity} ${finding.id}`;
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [finding]);
      else group.push(finding);
    }
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first === undefined
      ? []
      : [{ id: first.id, severity: first.severity, first, findings: group }];
  });
}
