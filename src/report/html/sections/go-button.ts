import type { Seconds } from '../../../units.js';
import { timeText } from '../../place-text.js';
import { type Markup, markup } from '../markup.js';

/** A time that leads to its place in the pictures; without them it is the time alone. */
export function goButton(atSeconds: Seconds, label = timeText(atSeconds)): Markup {
  return markup`<button type="button" class="go" data-at="${atSeconds}">${label}</button>`;
}
