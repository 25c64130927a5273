import type { PageHead } from '../../data/page-head.js';
import type { ChoiceControl } from './choice-controls.js';
import type { Change, Control } from './control.js';
import { element } from './element.js';

/** One of a few, with its label. */
export function choiceRow(control: ChoiceControl, head: PageHead, change: Change): Control {
  const options = control.choices.map(([value, text]) => element('option', { value }, text));
  const select = element('select', { id: control.name }, ...options);
  select.addEventListener('change', () => {
    change((whatIf) => control.tried(whatIf, select.value, head));
  });
  const row = element(
    'div',
    { class: 'control' },
    element('label', { for: control.name }, control.label),
    select,
  );
  return {
    element: row,
    show: (whatIf) => {
      select.value = control.shown(whatIf);
    },
  };
}
