import type { ForecastedFile } from '../../../forecast-result.js';
import { cautionsOf } from '../../cautions.js';
import { type Markup, markup } from '../markup.js';

/** What has to be said before the side is cut. */
export function cautionSection(file: ForecastedFile): Markup {
  const items = cautionsOf(file).map((caution) => markup`<li>${caution}</li>`);
  return markup`<section class="cautions" aria-labelledby="cautions"><h2 id="cautions">Before the cut</h2><ul>${items}</ul></section>`;
}
