import type { Headroom } from '../../../model/forecast-types.js';
import type { PageData } from '../data/read-page-data.js';
import { panel } from './controls/panel.js';
import { pictureBoard } from './picture-board.js';
import { onPrinting } from './printing.js';
import { headroomKey, headroomOf, type Recomputed, recompute } from './recompute.js';
import { reportShower } from './show-report.js';
import { asForecast, type WhatIf } from './what-if.js';

/** Milliseconds without a change after which all that is text follows. */
const SETTLED = 150;

/** Puts pictures and controls into the page and keeps them in step with what is tried. */
export function startPage(data: PageData): void {
  const { head } = data;
  let whatIf = asForecast(head);
  const headrooms = new Map<string, Headroom>();
  headrooms.set(headroomKey(whatIf), head.headroom);
  let headroom = head.headroom;
  let tightest = head.tightest;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const showReport = reportShower(head);
  const board = pictureBoard();
  const controls = panel(head, (change) => {
    whatIf = change(whatIf);
    if (isSlow(whatIf)) controls.wait(whatIf);
    else follow();
    clearTimeout(timer);
    timer = setTimeout(() => controls.say(settle()), SETTLED);
  });

  const draw = (now: Recomputed) => {
    board.update(now.side);
    controls.show(whatIf, now);
  };

  /** At once: all but text, the least radius, and headroom if it is not known for what is tried. */
  const follow = (): Recomputed => {
    headroom = headrooms.get(headroomKey(whatIf)) ?? headroom;
    performance.mark('tried');
    const now = recompute(data, whatIf, { headroom, tightest });
    performance.measure('model', 'tried');
    draw(now);
    performance.measure('all that follows at once', 'tried');
    return now;
  };

  const settle = (): Recomputed => {
    headroom = headroomFor(whatIf);
    const now = recompute(data, whatIf, { headroom });
    tightest = now.file.forecast.tightest;
    if (isSlow(whatIf)) draw(now);
    showReport(whatIf, now);
    return now;
  };

  const headroomFor = (asked: WhatIf): Headroom => {
    const key = headroomKey(asked);
    const known = headrooms.get(key) ?? headroomOf(data, asked);
    headrooms.set(key, known);
    return known;
  };

  document.getElementById('what-if')?.append(controls.element);
  document.addEventListener('click', (event) => {
    const at = event.target instanceof Element ? event.target.closest('[data-at]') : null;
    if (at instanceof HTMLElement) board.go(Number(at.dataset['at']));
  });
  document.documentElement.dataset['alive'] = '';
  // What takes long, the least radius and the headroom, is known of what the page was written with.
  if (isSlow(whatIf)) settle();
  else showReport(whatIf, follow());
  onPrinting();
}

/** The tightest plan takes four times as long as all else, so that a hand would drag behind it. */
function isSlow({ planner }: WhatIf): boolean {
  return planner === 'tightest';
}
