import type { ForecastedFile } from '../../forecast-result.js';
import { htmlDocument } from '../html/document.js';
import { type Markup, markup } from '../html/markup.js';
import type { Units } from '../length-text.js';
import { programLengthText } from '../program-text.js';
import { executesText } from '../set-up-text.js';
import { cautionSections } from './caution-sections.js';
import { CUT_SHEET_STYLE } from './cut-sheet-style.js';
import { dialSection } from './dial-section.js';
import { microscopeSection } from './microscope-section.js';
import { runningSection } from './running-section.js';

/** Pages to lie beside the lathe as one file that needs nothing else, a sheet of A4 a side. */
export function cutSheet(pages: readonly Markup[], version: string): string {
  const none = markup`<p>No side could be forecast.</p>`;
  return htmlDocument({
    title: 'Cut sheet – furrow',
    body: markup`${pages.length === 0 ? none : pages}<footer>furrow ${version}</footer>`,
    style: CUT_SHEET_STYLE,
  });
}

/** The page of a side: what to dial in, what happens when, what to measure, who has done it. */
export function cutSheetPage(file: ForecastedFile, units: Units): Markup {
  const { forecast } = file;
  return markup`<article class="sheet">
<header><p class="kind">Cut sheet</p><h1>${file.name}</h1><p class="verdict">${forecast.verdict}</p>
<p class="facts">${programLengthText(file, units)} For ${executesText(forecast)}.</p>
<div class="record">${blanks(['record', 'side', 'lathe and head', 'stylus', 'lacquer'])}</div></header>
${dialSection(file, units)}
${runningSection(file, units)}
${microscopeSection(file, units)}
${cautionSections(file, units)}
<div class="signed">${blanks(['cut by', 'date', 'looked at by', 'date'])}</div>
</article>`;
}

function blanks(names: readonly string[]): Markup[] {
  return names.map((name) => markup`<div class="field"><span>${name}</span></div>`);
}
