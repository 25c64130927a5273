/** True for the name of a WAV file or a saved motion, whatever the case of its extension. */
export function isSideName(name: string): boolean {
  return /\.(wav|motion)$/i.test(name);
}

/**
 * The paths without the saved motions whose WAV file is among them in the same folder: `a.wav` with
 * `a.motion` or `a.wav.motion` beside it is one side, and the audio knows more of it.
 */
export function oneEachSide(paths: readonly string[]): string[] {
  const sounds = new Set(paths.filter((path) => /\.wav$/i.test(path)));
  const stems = new Set([...sounds].map((path) => path.slice(0, -'.wav'.length)));
  return paths.filter((path) => {
    if (!/\.motion$/i.test(path)) return true;
    const stem = path.slice(0, -'.motion'.length);
    return !sounds.has(stem) && !stems.has(stem);
  });
}
