import type { PageHead } from '../../data/page-head.js';
import type { WhatIf } from '../what-if.js';
import type { Change, Control } from './control.js';
import { element } from './element.js';
import type { NumberControl } from './number-controls.js';

/** A number with its label and unit, and a slider where a hand wants one. */
export function numberRow(control: NumberControl, head: PageHead, change: Change): Control {
  const { name, label, slides } = control;
  const unit = element('span', { class: 'unit', 'aria-hidden': 'true' });
  const box = element('input', { type: 'number', id: name, inputmode: 'decimal' });
  const slider = element('input', { type: 'range', class: 'slider' });
  const error = element('p', { class: 'error', id: `${name}-error`, role: 'alert' });
  const row = element(
    'div',
    { class: 'control' },
    element('label', { for: name }, label),
    element('span', { class: 'number' }, box, unit),
    ...(slides ? [slider] : []),
    error,
  );

  const take = (input: HTMLInputElement) => {
    const [least, most] = [Number(box.min), Number(box.max)];
    const value = input.valueAsNumber;
    const isFit = Number.isFinite(value) && value >= least && value <= most;
    error.textContent = isFit ? '' : `${label}: from ${box.min} to ${box.max} ${unit.textContent}`;
    box.setAttribute('aria-invalid', String(!isFit));
    if (isFit) change((whatIf) => control.tried(whatIf, value));
  };
  box.addEventListener('input', () => take(box));
  slider.addEventListener('input', () => take(slider));

  const show = (whatIf: WhatIf) => {
    const step = control.step(whatIf.units);
    const digits = Math.max(0, Math.ceil(-Math.log10(step)));
    const [least, most] = control.ends(head, whatIf);
    const ends = { min: down(least, digits), max: up(most, digits) };
    const value = Number(control.shown(whatIf).toFixed(digits + 1));
    unit.textContent = control.unit(whatIf.units);
    for (const input of [box, slider]) {
      Object.assign(input, ends);
      input.step = input === box ? 'any' : String(step);
      if (document.activeElement !== input || input === slider) input.value = String(value);
    }
    const spoken = `${label}, ${unit.textContent}`;
    box.setAttribute('aria-label', spoken);
    slider.setAttribute('aria-label', `${spoken}, slider`);
    if (document.activeElement === box) return;
    error.textContent = '';
    box.setAttribute('aria-invalid', 'false');
  };
  box.addEventListener('change', () => change((whatIf) => whatIf));
  return { element: row, show };
}

/** Ends are shown rounded inwards but for what rounding adds, so that they can be typed. */
function down(value: number, digits: number): string {
  return String(Number((Math.ceil(value * 10 ** digits - 1e-6) / 10 ** digits).toFixed(digits)));
}

function up(value: number, digits: number): string {
  return String(Number((Math.floor(value * 10 ** digits + 1e-6) / 10 ** digits).toFixed(digits)));
}
