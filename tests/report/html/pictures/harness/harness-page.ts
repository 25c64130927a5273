import { forecastSide } from '../../../../../src/model/forecast-model.js';
import { planSide } from '../../../../../src/model/plan.js';
import { plannedSide } from '../../../../../src/model/planned-side.js';
import { NOTHING_BY_HAND } from '../../../../../src/model/side-plan-input.js';
import { verify } from '../../../../../src/model/verify.js';
import type { PageSide } from '../../../../../src/report/html/page/page-side.js';
import { alongTheSide } from '../../../../../src/report/html/page/pictures/along-the-side.js';
import { discFromAbove } from '../../../../../src/report/html/page/pictures/disc-from-above.js';
import { sideUnrolled } from '../../../../../src/report/html/page/pictures/side-unrolled.js';
import { underTheMicroscope } from '../../../../../src/report/html/page/pictures/under-the-microscope.js';
import { type HarnessData, unpackHarness } from './harness-data.js';

// The pictures alone on a page, with a control for the level: no more than a test needs.

const data = unpackHarness(document.getElementById('data')?.textContent ?? '');
const told = { hovered: [] as (number | null)[], gone: [] as number[] };
const show = (atSeconds: number | null) => {
  for (const picture of pictures) picture.show(atSeconds === null ? null : { atSeconds });
};
const events = {
  hover(atSeconds: number | null) {
    told.hovered.push(atSeconds);
    show(atSeconds);
  },
  go(atSeconds: number) {
    told.gone.push(atSeconds);
    show(atSeconds);
  },
};
const makers = { sideUnrolled, discFromAbove, alongTheSide, underTheMicroscope };
const pictures = Object.entries(makers).map(([name, make]) => {
  const picture = make(document, events);
  const section = document.createElement('section');
  section.id = name;
  section.append(picture.element);
  document.querySelector('main')?.append(section);
  return picture;
});

const update = (levelDb: number, changes: Partial<HarnessData> = {}) => {
  const side = pageSide({ ...data, ...changes, levelDb });
  const begun = performance.now();
  const times = pictures.map((picture) => {
    const from = performance.now();
    picture.update(side);
    return performance.now() - from;
  });
  return { times, all: performance.now() - begun };
};
update(data.levelDb);
Object.assign(globalThis, { harness: { update, show, told, pixels } });

/** Red, green, blue and opacity of each pixel of the canvas, 0 … 255. */
function pixels(left = 0, top = 0, width?: number, height?: number): Uint8ClampedArray {
  const canvas = document.querySelector('canvas');
  if (canvas === null) return new Uint8ClampedArray();
  const copy = document.createElement('canvas');
  copy.width = canvas.width;
  copy.height = canvas.height;
  const pen = copy.getContext('2d', { willReadFrequently: true });
  pen?.drawImage(canvas, 0, 0);
  const size = [width ?? copy.width, height ?? copy.height] as const;
  return pen?.getImageData(left, top, ...size).data ?? new Uint8ClampedArray();
}

function pageSide(data: HarnessData): PageSide {
  const { settings, motion, levelDb, planner, source, hand = NOTHING_BY_HAND } = data;
  const side = plannedSide(motion, settings, hand);
  const verified = (by: typeof planner) => verify(side, planSide(side, by, levelDb));
  const machine = verified('machine');
  const plan = verified(planner);
  const executed = { machine, plan, fixed: verified('fixed') }[settings.executes];
  return {
    name: data.name,
    settings,
    motion,
    side,
    machine,
    plan,
    executed,
    forecast: forecastSide(motion, settings, { levelDb, planner, source, hand }),
    units: data.units,
    microscope: data.microscope,
  };
}
