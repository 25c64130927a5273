import type { PageHead } from '../data/page-head.js';
import type { Markup } from '../markup.js';
import { headSection } from '../sections/head-section.js';
import { reportSections } from '../sections/report-sections.js';
import { changesText } from './controls/changes-text.js';
import { type Recomputed, withSurvivedSpeed } from './recompute.js';
import { asForecast, isSameForecast, type WhatIf } from './what-if.js';

/** Shows all that is text. */
export type ShowReport = (whatIf: WhatIf, now: Recomputed) => void;

/**
 * As long as nothing is tried, the text is the one that was written with the page: of places that
 * tie, rounded numbers may name another. Of the speed error that places hold to, only the audio knows.
 */
export function reportShower(head: PageHead): ShowReport {
  const places = ['head', 'report'].flatMap((id) => document.getElementById(id) ?? []);
  const written = places.map((place) => place.innerHTML);
  return (whatIf, { file, side: { units } }) => {
    const isAsForecast = isSameForecast(whatIf, asForecast(head));
    const shown = isAsForecast
      ? { ...file, forecast: withSurvivedSpeed(file.forecast, head) }
      : { ...file, readFrom: 'motion' as const };
    const anew = (): readonly Markup[] => [headSection(shown, units), reportSections(shown, units)];
    const texts = isAsForecast && units === head.units ? written : anew().map(({ html }) => html);
    for (const [at, place] of places.entries()) {
      // Every text in markup is escaped: see markup.ts.
      if (place.innerHTML !== texts[at]) place.innerHTML = texts[at] ?? '';
    }
    const changed = document.getElementById('changed');
    if (changed === null) return;
    changed.hidden = isAsForecast;
    changed.textContent = isAsForecast ? '' : `${changesText(head, whatIf)}.`;
  };
}
