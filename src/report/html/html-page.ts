import type { HotSpotEdges } from '../../analysis/hot-spot-edges.js';
import type { MotionSummary } from '../../analysis/motion.js';
import type { SideFit } from '../../fit/fit-result.js';
import type { ForecastedFile } from '../../forecast-result.js';
import { fitSentence } from '../fit-sentence.js';
import { type PageDataOptions, pageData } from './data/page-data.js';
import { htmlDocument } from './document.js';
import { markup } from './markup.js';
import type { PageAssets } from './page-assets.js';
import { fitSection } from './sections/fit-section.js';
import { headSection } from './sections/head-section.js';
import { reportSections } from './sections/report-sections.js';

export interface HtmlOptions extends PageDataOptions {
  readonly assets: PageAssets;
  readonly version: string;
  /** What would mend the side, if that was asked too. */
  readonly fit?: SideFit;
}

/**
 * A side as one file that opens without a network: text that stands by itself, and pictures and
 * controls that a browser works out from the motion summary in it.
 * @param edges around each of `microscopePlaces(file)`, in order, as `readMicroscope` reads them; null,
 *   or an empty list, where there are none, as from saved motion
 */
export function htmlPage(
  file: ForecastedFile & { readonly motion: MotionSummary },
  edges: readonly (HotSpotEdges | null)[],
  options: HtmlOptions,
): string {
  const { units, assets, version, fit } = options;
  const body = markup`<a class="skip" href="#report">To the tables</a>
<div class="top">
<header class="masthead">
<p class="kind">Forecast of a side${fit !== undefined && ', and what would mend it'}</p>
<h1>${file.name}</h1>
${fit !== undefined && markup`<p class="fit-sentence">${fitSentence(fit, units)} <a class="screen-only" href="#h-fit">Why, and what else</a></p>`}
<p id="changed" hidden></p>
<div id="head">${headSection(file, units)}</div>
</header>
<section class="part-disc" aria-labelledby="h-disc"><h2 id="h-disc">From above, to scale</h2><div id="from-above"></div></section>
</div>
<main>
<p class="needs-life">The pictures and the controls need a browser that runs the script in this file; the tables do not.</p>
<div class="desk">
<section class="part-unrolled" aria-labelledby="h-unrolled"><h2 id="h-unrolled">The side unrolled</h2><div id="unrolled"></div></section>
<section class="part-along" aria-labelledby="h-along"><h2 id="h-along">Along the side</h2><div id="along"></div></section>
<section id="what-if" aria-label="What if"></section>
</div>
${fit !== undefined && fitSection(fit, units)}
<section class="part-microscope" aria-labelledby="h-microscope"><h2 id="h-microscope">Under the microscope</h2><div id="microscope"></div></section>
<div id="report">${reportSections(file, units)}</div>
</main>
<footer>furrow ${version}</footer>`;
  return htmlDocument({
    title: `${file.name} – furrow`,
    body,
    style: assets.style,
    script: assets.script,
    data: pageData(file, edges, options),
  });
}
