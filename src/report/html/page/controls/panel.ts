import { diameterText } from '../../../length-text.js';
import type { PageHead } from '../../data/page-head.js';
import { equivalentCommand } from '../equivalent-command.js';
import type { Recomputed } from '../recompute.js';
import { asForecast, isSameForecast, type WhatIf } from '../what-if.js';
import { bakedRows } from './baked-rows.js';
import { changesText } from './changes-text.js';
import { CHOICE_CONTROLS } from './choice-controls.js';
import { choiceRow } from './choice-row.js';
import type { Change } from './control.js';
import { copyText } from './copy-text.js';
import { element } from './element.js';
import { keyFigures } from './key-figures.js';
import { NUMBER_CONTROLS } from './number-controls.js';
import { numberRow } from './number-row.js';

export interface Panel {
  readonly element: HTMLElement;
  show(whatIf: WhatIf, now: Recomputed): void;
  /** Shows what is tried before it is known what comes of it. */
  wait(whatIf: WhatIf): void;
  /** Says to a screen reader what came of it, once the hand rests. */
  say(now: Recomputed): void;
}

const WAITING = 'The tightest plan takes a moment; it follows when the hand rests.';

/** `furrow side` cannot be asked for one side of several. */
const OF_ALL_SIDES = 'It forecasts every side of the sheet, all at this level.';

/** The controls that say what is tried, and the figures that follow first. */
export function panel(head: PageHead, change: Change): Panel {
  const begin = asForecast(head);
  const numbers = NUMBER_CONTROLS.map((control) => numberRow(control, head, change));
  const choices = CHOICE_CONTROLS.map((control) => choiceRow(control, head, change));
  const controls = [...numbers.slice(0, 4), ...choices, ...numbers.slice(4)];
  const rest = element(
    'details',
    { class: 'more' },
    element('summary', {}, 'Tolerances and diameters'),
    ...numbers.slice(4).map(({ element: row }) => row),
    bakedRows(head),
  );
  const figures = keyFigures();
  const reset = element('button', { type: 'button', id: 'reset' }, 'Reset');
  reset.addEventListener('click', () => change(() => begin));
  const command = element('code', {
    id: 'command',
    tabindex: 0,
    role: 'group',
    'aria-label': 'Equivalent command',
  });
  const copied = element('span', { class: 'copied', role: 'status' });
  const copy = element('button', { type: 'button', id: 'copy' }, 'Copy the command');
  copy.addEventListener('click', () => {
    void copyText(command).then((done) => {
      copied.textContent = done ? 'Copied.' : 'Marked: copy it with the keyboard.';
    });
  });
  const shell = element(
    'details',
    { class: 'more' },
    element('summary', {}, 'The same as a command'),
    command,
    copy,
    copied,
    ...(head.command.includes('side') ? [element('p', {}, OF_ALL_SIDES)] : []),
  );
  const state = element('p', { class: 'state' });
  const spoken = element('p', { class: 'spoken', role: 'status' });
  const form = element(
    'form',
    { 'aria-label': 'What if' },
    ...numbers.slice(0, 4).map(({ element: row }) => row),
    ...choices.map(({ element: row }) => row),
    rest,
    element('div', { class: 'buttons' }, reset),
    shell,
  );
  form.addEventListener('submit', (event) => event.preventDefault());
  const wait = (whatIf: WhatIf) => {
    for (const control of controls) control.show(whatIf);
    state.textContent = WAITING;
  };
  const show = (whatIf: WhatIf, now: Recomputed) => {
    for (const control of controls) control.show(whatIf);
    const isChanged = !isSameForecast(whatIf, begin);
    reset.disabled = !isChanged;
    state.textContent = isChanged ? `${changesText(head, whatIf)}.` : 'As it was forecast.';
    command.textContent = equivalentCommand(head, whatIf);
    copied.textContent = '';
    figures.show(now);
  };
  const all = element(
    'details',
    { class: 'what-if-body' },
    element('summary', {}, 'What if'),
    state,
    figures.element,
    form,
    spoken,
  );
  // Where there is little room the picture leads, and the controls wait to be opened.
  all.open = matchMedia('(min-width: 60rem)').matches;
  const say = ({ side: { forecast, units } }: Recomputed) => {
    const [machine, plan] = [forecast.machine, forecast.plan].map(({ endDiameter }) =>
      diameterText(endDiameter, units),
    );
    spoken.textContent = `${forecast.verdict}; the machine ends at ${machine}, the plan at ${plan}.`;
  };
  return { element: all, show, wait, say };
}
