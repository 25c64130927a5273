/** A mark in a file. */
export interface CuePlace {
  /** Sample that it lies at. */
  readonly sample: number;
  /** Its label; empty without one. */
  readonly label: string;
}

/** Cue points of a WAV file as bytes, and the `labl` chunks that name them. */
export interface CueBytes {
  readonly points: readonly Uint8Array[];
  readonly labels: readonly Uint8Array[];
}

/** In a cue point: its name, and in the sound the sample that it lies at. */
const NAME_AT = 0;
const SAMPLE_AT = 20;
const CHUNK_HEAD = 8;

/**
 * The marks of a file in the order of time, one a sample, those behind its end left out. Of labels
 * to one point the first counts; they are read as UTF-8, and where they are none as Latin-1.
 * Source: Multimedia Programming Interface and Data Specifications 1.0, Microsoft and IBM, 1991
 * (from memory).
 */
export function cuePlaces({ points, labels }: CueBytes, frames: number): CuePlace[] {
  const names = new Map<number, string>();
  for (const label of labels) {
    if (label.length < CHUNK_HEAD + 4) continue;
    const name = numberAt(label, CHUNK_HEAD);
    if (!names.has(name)) names.set(name, textOf(label));
  }
  const marks = points.map((point) => ({
    sample: numberAt(point, SAMPLE_AT),
    label: names.get(numberAt(point, NAME_AT)) ?? '',
  }));
  return placesOf(marks, frames);
}

/** Marks in the order of time, one a sample: the first that has a label. */
export function placesOf(marks: readonly CuePlace[], frames: number): CuePlace[] {
  const places = new Map<number, CuePlace>();
  for (const mark of marks) {
    const known = places.get(mark.sample);
    if (mark.sample < frames && (known === undefined || known.label === '')) {
      places.set(mark.sample, mark);
    }
  }
  return [...places.values()].sort((one, other) => one.sample - other.sample);
}

function numberAt(bytes: Uint8Array, at: number): number {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.length).getUint32(at, true);
}

/** Of a whole `labl` chunk; it ends at a byte of zero, and may be padded. */
function textOf(label: Uint8Array): string {
  const size = numberAt(label, 4);
  return labelText(label.subarray(CHUNK_HEAD + 4, CHUNK_HEAD + size));
}

/** Text up to a byte of zero, read as UTF-8, and where it is none as Latin-1. */
export function labelText(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  const text = end < 0 ? bytes : bytes.subarray(0, end);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(text).trim();
  } catch {
    return Buffer.from(text).toString('latin1').trim();
  }
}
