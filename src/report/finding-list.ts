import type { ChalkInstance } from 'chalk';
import type { ForecastedFile } from '../forecast-result.js';
import type { Finding } from '../model/forecast-types.js';
import { findingText } from './finding-text.js';
import { type Form, findingKind, foldFindings, type Height } from './fold-findings.js';
import { headline } from './headline.js';
import type { Units } from './length-text.js';
import { timeText } from './place-text.js';
import { safeText } from './safe-text.js';
import { severityPaint } from './severity-paint.js';
import { wrapText } from './wrap-text.js';

export interface FindingListOptions {
  readonly units: Units;
  readonly paint: ChalkInstance;
  readonly columns: number;
  /** Lines there are. */
  readonly room: number;
}

/** Room for the longest label and two blanks. */
const LABEL = 9;
const INDENT = ' '.repeat(2 + LABEL);

/**
 * The findings in time order, those of the whole file first; what would mend one is said once an id.
 * As much as there is room for: see foldFindings.
 */
export function findingList(file: ForecastedFile, options: FindingListOptions): string[] {
  const findings = file.forecast.findings.toSorted(
    (one, other) => (one.atSeconds ?? -Infinity) - (other.atSeconds ?? -Infinity),
  );
  if (findings.length === 0) return [];
  const context = {
    settings: file.settings,
    units: options.units,
    tracks: file.hand?.tracks,
  };
  const texts = new Map(findings.map((each) => [each, findingText(each, context)]));
  const textOf = (finding: Finding, { isBrief, isMended }: Omit<Form, 'isCounted'>) => {
    const { where = '', what = '', remedy = '' } = texts.get(finding) ?? {};
    const told = isBrief ? headline(what) : what;
    return `${where === '' ? '' : `${where}: `}${told}${isMended ? ` ${remedy}` : ''}`;
  };
  const heights = new Map(findings.map((each): [Finding, number[]] => [each, []]));
  const height: Height = (finding, form) => {
    const known = heights.get(finding) ?? [];
    const at = (form.isBrief ? 1 : 0) + (form.isMended ? 2 : 0) + (form.isCounted ? 4 : 0);
    const rest = form.isBrief ? BRIEF_REST : LONGEST_REST;
    const text = () => textOf(finding, form) + (form.isCounted ? rest : '');
    known[at] ??= paragraph(finding, text(), options).length;
    return known[at];
  };
  const { shown, alike, leftOut, unmended, brief } = foldFindings(
    findings,
    options.room - 1,
    height,
  );
  const isToMend = ({ id, accepted }: Finding) => accepted === undefined && !unmended.has(id);
  const paragraphs = shown.map((finding, at) => {
    const kind = findingKind(finding);
    const isMended = shown.findIndex((one) => one.id === finding.id && isToMend(one)) === at;
    const isLast = shown.findLastIndex((one) => findingKind(one) === kind) === at;
    const text = textOf(finding, { isBrief: brief.has(kind), isMended });
    return paragraph(
      finding,
      text + (isLast ? restText(alike.get(kind) ?? [], brief.has(kind)) : ''),
      options,
    );
  });
  const isAll = shown.length === findings.length && unmended.size === 0;
  const without = leftOutText(leftOut);
  const all = isAll ? '' : ` (--details: all ${findings.length} and remedies)`;
  const title = `Findings in time order${without}${all}:`;
  return [...wrapText(title, '  ', '    ', options.columns).split('\n'), ...paragraphs.flat()];
}

/** A finding behind its severity; one that is accepted behind that, dimmed, with the reason. */
function paragraph(
  { accepted, severity }: Finding,
  text: string,
  { paint, columns }: FindingListOptions,
): string[] {
  const label = accepted === undefined ? severity : 'accepted';
  const painted = accepted === undefined ? severityPaint(severity, paint)(label) : label;
  const first = `  ${painted}${' '.repeat(LABEL - label.length)}`;
  const reason = accepted === undefined ? '' : ` Accepted: ${safeText(accepted.reason)}`;
  const lines = wrapText(`${text}${reason}`, first, INDENT, columns).split('\n');
  return accepted === undefined ? lines : lines.map((line) => paint.dim(line));
}

/** As long as what restText says of some dozens. */
const BRIEF_REST = ' And 99 more.';
const LONGEST_REST = ' And 99 more, 00:00.0 to 00:00.0.';

/** ` And 9 more, 01:06.0 to 04:50.3.` */
function restText(rest: readonly Finding[], isBrief: boolean): string {
  if (rest.length === 0) return '';
  if (isBrief) return ` And ${rest.length} more.`;
  const times = rest.flatMap(({ atSeconds }) => (atSeconds === null ? [] : [atSeconds]));
  const [first = '', last = ''] = [Math.min(...times), Math.max(...times)].map(timeText);
  const when =
    times.length === 0 ? '' : times.length === 1 ? `, at ${first}` : `, ${first} to ${last}`;
  return ` And ${rest.length} more${when}.`;
}

/** `, without 2 cautions, 1 note`: kinds that there is no room for. */
function leftOutText(leftOut: readonly Finding[]): string {
  if (leftOut.length === 0) return '';
  const open = leftOut.filter(({ accepted }) => accepted === undefined);
  const counts = (['caution', 'note'] as const).flatMap((severity) => {
    const count = open.filter((each) => each.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  const accepted = leftOut.length - open.length;
  if (accepted > 0) counts.push(`${accepted} accepted`);
  return `, without ${counts.join(', ')}`;
}
