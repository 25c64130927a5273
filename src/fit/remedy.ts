import type { Hertz, Metres, MetresPerTurn, Seconds } from '../units.js';

/** The named seconds of a remedy that does not concern the whole side. */
interface There {
  readonly fromSeconds: Seconds;
  readonly untilSeconds: Seconds;
}

/** Something that can be done about a side; plain data. Those that end in `-there` are local. */
export type Remedy =
  | (There & { readonly kind: 'pitch-there'; readonly pitch: MetresPerTurn })
  | (There & { readonly kind: 'width-there'; readonly width: Metres })
  | (There & { readonly kind: 'level-there'; readonly gainDb: number })
  | (There & { readonly kind: 'elliptical-there'; readonly corner: Hertz; readonly order: 1 | 2 })
  | (There & {
      readonly kind: 'bell-there' | 'shelf-there';
      readonly frequency: Hertz;
      readonly gainDb: number;
    })
  | { readonly kind: 'silence'; readonly quarters: number }
  | {
      /** Longer silence in the gap before a track of a sheet. */
      readonly kind: 'gap';
      readonly place: number;
      readonly name: string;
      readonly quarters: number;
    }
  | {
      /** A track of a sheet comes earlier, those that it passes one place later. */
      readonly kind: 'track-outward';
      readonly name: string;
      /** Places, 0 the outermost; where it comes from and to. */
      readonly from: number;
      readonly to: number;
      readonly order: readonly number[];
    }
  | {
      /** Another running order: `order[place]` is the track that comes there, as they were given. */
      readonly kind: 'order';
      readonly order: readonly number[];
    }
  | { readonly kind: 'base-pitch'; readonly pitch: MetresPerTurn }
  | { readonly kind: 'base-width'; readonly width: Metres }
  | { readonly kind: 'polarity'; readonly polarity: 1 | -1 }
  | { readonly kind: 'level'; readonly gainDb: number }
  | { readonly kind: 'elliptical'; readonly corner: Hertz; readonly order: 1 | 2 }
  | { readonly kind: 'rpm'; readonly rpm: number };

export type RemedyKind = Remedy['kind'];

/** The control that a remedy takes: of one control only one position can be chosen. */
export function slotOf(remedy: Remedy): string {
  if ('fromSeconds' in remedy) {
    return `${remedy.kind} ${remedy.fromSeconds} ${remedy.untilSeconds}`;
  }
  if (remedy.kind === 'gap') return `${remedy.kind} ${remedy.place}`;
  return 'order' in remedy && typeof remedy.order === 'object' ? 'order' : remedy.kind;
}

/** The named seconds of a local remedy; null for one of the whole side. */
export function spanOf(remedy: Remedy): There | null {
  if (!('fromSeconds' in remedy)) return null;
  const { fromSeconds, untilSeconds } = remedy;
  return { fromSeconds, untilSeconds };
}
