/** `tests/reel.txt` beside `tests/reel.wav`. */
export function reelTextPath(path: string): string {
  return `${path.replace(/(?<=[^\\/])\.wav$/i, '')}.txt`;
}
