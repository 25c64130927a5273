import type { ForecastedFile } from '../forecast-result.js';
import type { HotSpot, HotSpotCause } from '../model/forecast-types.js';
import {
  fixed,
  frequencyText,
  largeLengthText,
  lengthText,
  shareText,
  type Units,
} from './length-text.js';
import { timeText, turnAt } from './place-text.js';
import { trackPlace } from './track-place.js';
import { unseenSpeed } from './unseen-speed.js';

/** One figure of a place with little land: its heading and its cell. */
export interface HotSpotField {
  readonly head: string;
  readonly align: 'left' | 'right';
  /** How roomy it must be: 0 always shown, 1 not where it is crowded, 2 only where it is wide. */
  readonly room: 0 | 1 | 2;
  /** Whether it says anything of a side; left out: of any. */
  readonly concerns?: (file: ForecastedFile) => boolean;
  readonly cell: (spot: HotSpot, file: ForecastedFile, units: Units) => string;
}

/** What was not looked at. */
const NONE = '–';
/** More than was looked at: a speed error of 0.6 %, a delay of two turns. */
const AMPLE = 'ample';

/** In the order in which they are looked for. */
export const HOT_SPOT_FIELDS: readonly HotSpotField[] = [
  { head: 'at', align: 'left', room: 0, cell: clocks },
  {
    head: 'track, at',
    align: 'left',
    room: 0,
    concerns: ({ hand }) => hand !== undefined,
    cell: ({ atSeconds }, { hand }) => {
      const place = trackPlace(atSeconds, hand?.tracks);
      return place === null ? NONE : `${place.number}, ${timeText(place.seconds)}`;
    },
  },
  {
    head: 'turn',
    align: 'right',
    room: 2,
    cell: ({ atSeconds }, { settings }) =>
      atSeconds < 0 ? NONE : String(turnAt(atSeconds, settings.rpm)),
  },
  {
    head: 'diameter',
    align: 'right',
    room: 1,
    cell: ({ radius }, _, units) => largeLengthText(2 * radius, units),
  },
  {
    head: 'land',
    align: 'right',
    room: 0,
    cell: ({ land }, _, units) => lengthText(land, units),
  },
  {
    head: 'taken by',
    align: 'left',
    room: 0,
    cell: ({ cause, frequency }) =>
      frequency === null ? causeWord(cause) : `${causeWord(cause)} ${frequencyText(frequency)}`,
  },
  { head: 'wall', align: 'left', room: 0, cell: ({ wall }) => wall },
  {
    head: 'speed',
    align: 'right',
    room: 0,
    cell: ({ survives }, file) =>
      unseenSpeed(file) === '' ? held(survives?.speed, (speed) => `±${shareText(speed)}`) : NONE,
  },
  {
    head: 'depth',
    align: 'right',
    room: 0,
    cell: ({ survives }, _, units) =>
      held(survives?.depth, (depth) => `±${lengthText(depth, units)}`),
  },
  {
    head: 'late',
    align: 'right',
    room: 0,
    // By the lathe's clock: it is the lathe that is late.
    cell: ({ survives }, { settings }) =>
      held(survives?.delay, (delay) => `${fixed(delay / settings.speedFactor, 2)} s`),
  },
  {
    head: 'walls meet',
    align: 'right',
    room: 2,
    cell: ({ overcutDepth, reachesContact }, _, units) =>
      overcutDepth > 0
        ? `${lengthText(overcutDepth, units)}, ${reachesContact ? 'heard' : 'seen'}`
        : '',
  },
];

/** Program time, at half speed the lathe's too. */
function clocks({ atSeconds }: HotSpot, { settings: { speedFactor } }: ForecastedFile): string {
  const lathe = speedFactor === 1 ? '' : ` (${timeText(atSeconds / speedFactor)})`;
  return `${timeText(atSeconds)}${lathe}`;
}

/** One word where there is room for no more. */
function causeWord(cause: HotSpotCause): string {
  switch (cause) {
    case 'lateral-low':
      return 'bass';
    case 'lateral-high':
      return 'sideways';
    case 'vertical':
      return 'vertical';
    case 'width':
      return 'wide groove';
    case 'one-wall':
      return 'one wall';
  }
}

function held(error: number | null | undefined, text: (error: number) => string): string {
  if (error === undefined) return NONE;
  return error === null ? AMPLE : text(error);
}
