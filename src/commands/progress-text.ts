/** How far a run is. */
export interface RunState {
  readonly filesDone: number;
  readonly files: number;
  /** The first file that is not done; null when all are. */
  readonly current: string | null;
  /** Bytes of sound done, and of all files. */
  readonly bytesDone: number;
  readonly bytes: number;
  readonly elapsedSeconds: number;
}

/** Before that, a guess at the time left is worth nothing. */
const FIRST_GUESS_SECONDS = 2;

/** `3 of 12 files done, 31 %, about 0:40 left, now side-d.wav`: the name last, it may be long. */
export function progressText(state: RunState): string {
  const { filesDone, files, current, elapsedSeconds } = state;
  const share = state.bytes === 0 ? 0 : Math.min(state.bytesDone / state.bytes, 1);
  const left = share === 0 ? null : (elapsedSeconds / share) * (1 - share);
  // All sound is read that was known of, and still there is work: how much, nobody knows.
  const isBeyond = share === 1 && current !== null;
  return [
    `${filesDone} of ${files} ${files === 1 ? 'file' : 'files'} done`,
    ...(isBeyond ? [] : [`${Math.floor(100 * share)} %`]),
    ...(isBeyond || left === null || elapsedSeconds < FIRST_GUESS_SECONDS
      ? []
      : [`about ${clock(left)} left`]),
    ...(current === null ? [] : [`now ${current}`]),
  ].join(', ');
}

/** `0:40`, `1:02:03` */
function clock(seconds: number): string {
  const whole = Math.ceil(seconds);
  const two = (count: number) => String(count).padStart(2, '0');
  const minutes = Math.floor(whole / 60);
  if (minutes < 60) return `${minutes}:${two(whole % 60)}`;
  return `${Math.floor(minutes / 60)}:${two(minutes % 60)}:${two(whole % 60)}`;
}
