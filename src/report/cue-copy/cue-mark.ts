/** A place in a WAV file that is to be marked in a copy of it. */
export interface CueMark {
  /** Frame of the file, from 0 on. */
  readonly frame: number;
  /** Frames that it lasts; 0 for a point. */
  readonly length: number;
  /** Short: it stands beside the waveform. */
  readonly label: string;
  /** A sentence or two; none where it is empty. */
  readonly note: string;
}
