/** Names of files of sound; what is in them their first bytes decide. */
const SOUND = /\.(wav|aiff?|aifc|flac)$/i;
const MOTION = /\.motion$/i;

/** True for the name of a file of sound or a saved motion, whatever the case of its extension. */
export function isSideName(name: string): boolean {
  return isSoundName(name) || MOTION.test(name);
}

/** True for the name of a file of sound, whatever the case of its extension. */
export function isSoundName(name: string): boolean {
  return SOUND.test(name);
}

/**
 * The paths without the saved motions whose sound is among them in the same folder: `a.wav` with
 * `a.motion` or `a.wav.motion` beside it is one side, and the audio knows more of it. Sounds of one
 * name, such as `a.wav` and `a.flac`, are all taken: whether they are the same only who made them
 * knows, and a side that was left out unsaid could be the one that is cut.
 */
export function oneEachSide(paths: readonly string[]): string[] {
  const sounds = new Set(paths.filter((path) => SOUND.test(path)));
  const stems = new Set([...sounds].map((path) => path.replace(SOUND, '')));
  return paths.filter((path) => {
    if (!MOTION.test(path)) return true;
    const stem = path.replace(MOTION, '');
    return !sounds.has(stem) && !stems.has(stem);
  });
}
