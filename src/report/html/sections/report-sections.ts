import type { ForecastedFile } from '../../../forecast-result.js';
import type { Units } from '../../length-text.js';
import { type Markup, markup } from '../markup.js';
import { cautionSection } from './caution-section.js';
import { findingSection } from './finding-section.js';
import { hotSpotSection } from './hot-spot-section.js';
import { planSection } from './plan-section.js';
import { settingsSection } from './settings-section.js';

/** Everything below the pictures: the same whether a page is written or recomputed. */
export function reportSections(file: ForecastedFile, units: Units): Markup {
  return markup`${cautionSection(file)}
${planSection(file, units)}
${hotSpotSection(file, units)}
${findingSection(file, units)}
${settingsSection(file.settings)}`;
}
