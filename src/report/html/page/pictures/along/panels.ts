import type { PageSide } from '../../page-side.js';
import { depthPanel, widthPanel } from './groove-panels.js';
import type { Panel } from './panel.js';
import { landPanel, pitchPanel } from './plan-panels.js';
import { bendPanel, facetPanel, lowBandPanel } from './tracing-panels.js';

/** Everything that is drawn along the side; limits are those of the profile. */
export function panelsOf(page: PageSide): Panel[] {
  return [
    pitchPanel(page),
    landPanel(page),
    widthPanel(page),
    depthPanel(page),
    bendPanel(page),
    facetPanel(page),
    lowBandPanel(page),
  ];
}
