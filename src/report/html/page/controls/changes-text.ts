import type { PageHead } from '../../data/page-head.js';
import { asForecast, type WhatIf } from '../what-if.js';
import { CHOICE_CONTROLS } from './choice-controls.js';
import { NUMBER_CONTROLS } from './number-controls.js';

/** What is tried otherwise than it was forecast: `Changed by hand: level -3 dB, disc 10-inch`. */
export function changesText(head: PageHead, whatIf: WhatIf): string {
  const begin = { ...asForecast(head), units: whatIf.units };
  const numbers = NUMBER_CONTROLS.flatMap(({ label, unit, shown }) => {
    const [was, is] = [shown(begin), shown(whatIf)];
    if (was === is) return [];
    return [`${label.toLowerCase()} ${Number(is.toFixed(3))} ${unit(whatIf.units)}`];
  });
  const choices = CHOICE_CONTROLS.flatMap(({ label, shown, choices: all }) => {
    const is = shown(whatIf);
    if (shown(begin) === is) return [];
    const [, text = is] = all.find(([value]) => value === is) ?? [];
    return [`${label.toLowerCase()} ${text}`];
  });
  return `Changed by hand: ${[...numbers, ...choices].join(', ')}`;
}
