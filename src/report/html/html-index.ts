import type { Failure } from '../failure.js';
import {
  diameterText,
  largeLengthText,
  lengthText,
  levelText,
  type Units,
} from '../length-text.js';
import { timeText } from '../place-text.js';
import { htmlDocument } from './document.js';
import type { IndexRow } from './index-row.js';
import { type Markup, markup } from './markup.js';
import type { PageAssets } from './page-assets.js';
import { scroller } from './sections/scroller.js';

export interface HtmlIndexOptions {
  readonly units: Units;
  readonly assets: PageAssets;
  readonly version: string;
  /** Files that could not be read; they are named below the sides. */
  readonly failures?: readonly Failure[];
}

const WORST_FIRST = ['fault', 'caution', 'clear'] as const;

const HEADS = ['side', 'verdict', 'lasts', 'level that holds', 'ends at', 'spare', 'least land'];
/** Columns of texts, not figures. */
const LEFT: readonly number[] = [1, HEADS.length];

/**
 * Many sides on one page, each leading to its own: the worst first, by verdict, then by the level
 * that holds, then by land. It runs nothing.
 */
export function htmlIndex(rows: readonly IndexRow[], options: HtmlIndexOptions): string {
  const { units, assets, version, failures = [] } = options;
  const sorted = rows.toSorted(worstFirst);
  const withMends = rows.some(({ mends }) => mends !== null);
  const heads = withMends ? [...HEADS, 'what would mend it'] : HEADS;
  const table = markup`<table class="figures index"><caption>The worst first. End, spare and land are of what each lathe executes, at the planned level.</caption>
<thead><tr>${heads.map((head, at) => markup`<th scope="col"${LEFT.includes(at) && markup` class="left"`}>${head}</th>`)}</tr></thead>
<tbody>${sorted.map((row) => sideRow(row, units))}</tbody></table>`;
  const body = markup`<header class="masthead"><p class="kind">Forecast of ${rows.length} ${rows.length === 1 ? 'side' : 'sides'}</p><h1>${summary(rows)}</h1></header>
<main>${scroller('The sides', table)}${failures.length > 0 && failureList(failures)}</main>
<footer>furrow ${version}</footer>`;
  return htmlDocument({ title: `${summary(rows)} – furrow`, body, style: assets.style });
}

function sideRow(row: IndexRow, units: Units): Markup {
  const { counts, executed } = row;
  const found = (['fault', 'caution', 'note'] as const)
    .filter((severity) => counts[severity] > 0)
    .map((severity) => `${counts[severity]} ${severity}${counts[severity] === 1 ? '' : 's'}`);
  return markup`<tr class="${row.verdict}"><th scope="row"><a href="${safeHref(row.href)}">${row.name}</a></th>
<td class="left"><b class="severity">${row.verdict}</b> ${found.join(', ')}</td><td>${timeText(row.durationSeconds)}</td><td>${levelThatHolds(row)}</td>
<td>${diameterText(executed.endDiameter, units)}</td><td>${largeLengthText(executed.spare, units)}</td><td>${lengthText(executed.landMin, units)}</td>${row.mends !== null && markup`<td class="left mends">${row.mends}</td>`}</tr>`;
}

function levelThatHolds({ recommendedDb, isSilent }: IndexRow): string {
  if (isSilent) return '–';
  return recommendedDb === null ? 'none' : levelText(recommendedDb);
}

/** Only a place beside the index: whatever has a scheme of its own leads nowhere. */
function safeHref(href: string): string {
  return /^[a-z][a-z0-9+.-]*:|^[/\\]{2}/i.test(href) ? '#' : href;
}

function failureList(failures: readonly Failure[]): Markup {
  const items = failures.map(({ message }) => markup`<li>${message}</li>`);
  return markup`<section aria-labelledby="failures"><h2 id="failures">Could not be read</h2><ul>${items}</ul></section>`;
}

function summary(rows: readonly IndexRow[]): string {
  const counts = WORST_FIRST.map((verdict) => ({
    verdict,
    count: rows.filter((row) => row.verdict === verdict).length,
  })).filter(({ count }) => count > 0);
  if (counts.length === 0) return 'No side';
  return counts.map(({ verdict, count }) => `${count} ${WORDS[verdict]}`).join(', ');
}

const WORDS = { fault: 'at fault', caution: 'with cautions', clear: 'clear' } as const;

function worstFirst(one: IndexRow, other: IndexRow): number {
  const level = ({ recommendedDb, levelDb }: IndexRow) =>
    recommendedDb === null ? -1e9 : recommendedDb - levelDb;
  return (
    WORST_FIRST.indexOf(one.verdict) - WORST_FIRST.indexOf(other.verdict) ||
    level(one) - level(other) ||
    one.executed.landMin - other.executed.landMin
  );
}
