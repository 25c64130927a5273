import type { ForecastedFile } from '../../../forecast-result.js';
import type { Finding, Severity } from '../../../model/forecast-types.js';
import { findingText } from '../../finding-text.js';
import type { Units } from '../../length-text.js';
import { type Markup, markup } from '../markup.js';
import { goButton } from './go-button.js';
import { scroller } from './scroller.js';

/** Findings that are printed; what is more is counted. */
const PRINTED = 6;
/** Findings that are listed; a side with more has other worries. */
const LISTED = 400;
const WORST_FIRST = ['fault', 'caution', 'note'] as const satisfies readonly Severity[];

/** Every finding in time order, those of the whole file first; on paper the worst. */
export function findingSection(file: ForecastedFile, units: Units): Markup {
  const { findings } = file.forecast;
  const printed = new Set(worstFirst(findings).slice(0, PRINTED));
  const listed = new Set(worstFirst(findings).slice(0, LISTED));
  const rows = findings
    .filter((finding) => listed.has(finding))
    .toSorted((one, other) => (one.atSeconds ?? -Infinity) - (other.atSeconds ?? -Infinity))
    .map((finding) => row(finding, printed.has(finding), file, units));
  const onScreen = findings.length > listed.size ? String(listed.size) : 'all';
  const table = markup`<table class="findings"><caption>In time order.${
    findings.length > listed.size &&
    markup`<span class="screen-only"> The worst ${listed.size} of ${findings.length}.</span>`
  }${
    findings.length > printed.size &&
    markup`<span class="paper-only"> The worst ${printed.size} of ${findings.length}; ${onScreen} are on the screen.</span>`
  }</caption>
<thead><tr><th scope="col">severity</th><th scope="col">at</th><th scope="col">what, and what would mend it</th></tr></thead>
<tbody>${rows}</tbody></table>`;
  return markup`<section class="all-findings" aria-labelledby="findings"><h2 id="findings">Findings</h2>${
    findings.length === 0 ? markup`<p>Nothing found.</p>` : scroller('Findings', table, 'tall')
  }</section>`;
}

function row(finding: Finding, isPrinted: boolean, file: ForecastedFile, units: Units): Markup {
  const { accepted, atSeconds, severity } = finding;
  const { where, what, remedy } = findingText(finding, { settings: file.settings, units });
  const label = accepted === undefined ? severity : 'accepted';
  const reason = accepted !== undefined && markup` <em>Accepted: ${accepted.reason}</em>`;
  const place = where === '' ? '' : `${where}: `;
  return markup`<tr class="${label}${isPrinted ? '' : ' screen-only'}"><td><span class="severity">${label}</span></td><td>${
    atSeconds === null ? 'whole file' : goButton(atSeconds)
  }</td><td>${place}${what} <span class="remedy">${remedy}</span>${reason}</td></tr>`;
}

/** Those that the house accepts come last. */
function worstFirst(findings: readonly Finding[]): Finding[] {
  const rank = ({ severity, accepted }: Finding) =>
    (accepted === undefined ? 0 : WORST_FIRST.length) + WORST_FIRST.indexOf(severity);
  return findings.toSorted((one, other) => rank(one) - rank(other));
}
