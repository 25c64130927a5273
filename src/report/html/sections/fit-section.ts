import type { SideFit, WeighedRemedy } from '../../../fit/fit-result.js';
import { spanOf } from '../../../fit/remedy.js';
import { formatRows } from '../../fit-format-table.js';
import { basePitchText, limitTexts } from '../../fit-limit-text.js';
import { fitNotes, REMEDIES_TITLE } from '../../fit-notes.js';
import { REMEDY_HEADS, remedyCells, toldRemedies } from '../../fit-remedy-table.js';
import type { Units } from '../../length-text.js';
import { timeText } from '../../place-text.js';
import { type Markup, markup, type Piece } from '../markup.js';
import { cellTable } from './cell-table.js';
import { goButton } from './go-button.js';
import { levelChart } from './level-chart.js';
import { levelTable } from './level-table.js';

/** Remedies that are printed, as many as the second sheet has room for. */
const PRINTED = 9;

/** How loud and how long the side can be, and what would mend it, in the words of `furrow fit`. */
export function fitSection(fit: SideFit, units: Units): Markup {
  const isSilent = fit.findings.some(({ id }) => id === 'silent');
  return markup`<section class="part-fit" aria-labelledby="h-fit"><h2 id="h-fit">How loud, how long, and what would mend it</h2>
<p class="screen-only hint">Of the side as it was forecast: the controls of What if do not change it.</p>
${!isSilent && markup`<div class="fit-levels">${levelChart(fit, units)}${levelTable(fit, units)}</div>`}
${limits(fit, units)}
${formats(fit, units)}
${remedies(fit, units)}
<p class="paper-only">The settings are on the screen.</p></section>`;
}

/** How loud it goes and what holds the level down; each time leads to its place. */
function limits(fit: SideFit, units: Units): Markup {
  const [holds, ...costs] = limitTexts(fit);
  const pitch = basePitchText(fit.basePitch, fit, units);
  const items = [
    ...(holds === undefined ? [] : [holds]),
    ...costs.map((cost, at) => withPlace(cost, fit.limits[at]?.atSeconds ?? null)),
    ...(pitch === '' ? [] : [pitch]),
  ];
  return markup`<ul class="limits">${items.map((item) => markup`<li>${item}</li>`)}</ul>`;
}

function withPlace(text: string, atSeconds: number | null): Piece {
  if (atSeconds === null) return text;
  const time = timeText(atSeconds);
  const place = text.indexOf(time);
  if (place === -1) return text;
  return [text.slice(0, place), goButton(atSeconds), text.slice(place + time.length)];
}

function formats(fit: SideFit, units: Units): Markup {
  const caption = 'Other discs and speeds; * is the side’s own.';
  return cellTable({ name: 'Discs and speeds', caption, cells: formatRows(fit, units) });
}

function remedies(fit: SideFit, units: Units): Markup {
  const told = toldRemedies(fit, false);
  const printed = new Set(told.toSorted(bestFirst).slice(0, PRINTED));
  const rows = told.map((weighed) => [where(weighed), ...remedyCells(weighed, fit, units)]);
  const notes = fitNotes(fit).map((note) => markup`<p class="hint">${note}</p>`);
  const left =
    told.length > printed.size &&
    markup`<span class="paper-only"> The ${printed.size} that mend most, of ${told.length}; all are on the screen.</span>`;
  const table = cellTable({
    name: 'Remedies',
    caption: [`${REMEDIES_TITLE}.`, left],
    cells: [['where', ...REMEDY_HEADS], ...rows],
    left: 2,
    isPrinted: (row) => {
      const weighed = told[row];
      return weighed !== undefined && printed.has(weighed);
    },
  });
  return markup`${told.length > 0 && table}${notes}`;
}

function bestFirst(one: WeighedRemedy, other: WeighedRemedy): number {
  return other.mends.length - one.mends.length || one.cost - other.cost;
}

function where({ remedy }: WeighedRemedy): Piece {
  const span = spanOf(remedy);
  if (span === null) return 'all';
  return [goButton(span.fromSeconds), `–${timeText(span.untilSeconds)}`];
}
