import { fixed, frequencyText, shareText } from '../../../length-text.js';
import type { PageHead } from '../../data/page-head.js';
import { element } from './element.js';

/** What went into the measurement itself: shown, since it matters, but not to be changed here. */
export function bakedRows({ settings }: PageHead): HTMLElement {
  const rows = [
    ['Speed', `${Number(fixed(settings.rpm, 2))} rpm`],
    ['Speed tolerance', shareText(settings.speedTolerance)],
    ['Elliptical', settings.ellipticalHz === null ? 'out' : frequencyText(settings.ellipticalHz)],
  ].map(([name = '', value = '']) =>
    element('div', {}, element('dt', {}, name), element('dd', {}, value)),
  );
  const why = 'Measured with the audio: to change these, forecast it again.';
  return element('div', { class: 'baked' }, element('dl', {}, ...rows), element('p', {}, why));
}
