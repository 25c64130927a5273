import type { ForecastedFile } from '../../forecast-result.js';
import type { Finding, FindingId } from '../../model/forecast-types.js';
import { cautionsOf } from '../cautions.js';
import { findingText } from '../finding-text.js';
import { type Markup, markup } from '../html/markup.js';
import type { Units } from '../length-text.js';

/** Kinds of findings that a page has room for. */
const KINDS = 4;
const WORST_FIRST = ['fault', 'caution', 'note'];

/** What was found, the worst of each kind, and what has to be said before any cut. */
export function cautionSections(file: ForecastedFile, units: Units): Markup {
  const kinds = worstOfKinds(file.forecast.findings);
  const items = kinds.slice(0, KINDS).map(({ finding, more }) => {
    const { where, what } = findingText(finding, {
      settings: file.settings,
      units,
      tracks: file.hand?.tracks,
    });
    const place = where === '' ? '' : `${where}: `;
    return markup`<li class="${finding.severity}"><b>${finding.severity}</b> ${place}${what}${more > 0 && ` And ${more} more.`}</li>`;
  });
  const left = kinds.length - items.length;
  const rest = left > 0 && markup`<li>${left} milder kinds are in the report.</li>`;
  const none = markup`<p>Nothing found that keeps it from being cut.</p>`;
  return markup`<section class="found"><h2>Look out for</h2>${kinds.length === 0 ? none : markup`<ul>${items}${rest}</ul>`}</section>
<section class="cautions"><p>${cautionsOf(file).join(' ')}</p></section>`;
}

/** Lines that the list takes at most: two a kind, and one for what has no room. */
export function findingLines(findings: readonly Finding[]): number {
  const kinds = worstOfKinds(findings).length;
  return 2 * Math.min(kinds, KINDS) + (kinds > KINDS ? 1 : 0);
}

interface Kind {
  readonly finding: Finding;
  /** How many more there are of it. */
  readonly more: number;
}

/** Faults first; what the house accepts, and notes, are left to the report. */
function worstOfKinds(findings: readonly Finding[]): Kind[] {
  const open = findings.filter(
    ({ accepted, severity }) => accepted === undefined && severity !== 'note',
  );
  const sorted = open.toSorted(
    (one, other) => WORST_FIRST.indexOf(one.severity) - WORST_FIRST.indexOf(other.severity),
  );
  const kinds = new Map<FindingId, Kind>();
  for (const finding of sorted) {
    const known = kinds.get(finding.id);
    kinds.set(
      finding.id,
      known === undefined ? { finding, more: 0 } : { ...known, more: known.more + 1 },
    );
  }
  return [...kinds.values()];
}
