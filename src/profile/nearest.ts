/** Letters from which on a word that is part of another is like it. */
const TELLING = 4;

/**
 * The candidate that differs from `word` by the fewest typed, missing or wrong letters, whatever
 * the case. Where that would be more than a third of the word, which is no likeness, the first that
 * holds the word, such as basePitch for pitch; else null.
 * Source: Levenshtein's distance, computed row by row.
 */
export function nearest(word: string, candidates: readonly string[]): string | null {
  let best: string | null = null;
  let least = Math.max(2, Math.floor(word.length / 3)) + 1;
  for (const candidate of candidates) {
    // A name from outside may be of any length, and the table of distances is as long.
    if (Math.abs(word.length - candidate.length) >= least) continue;
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (distance < least) {
      best = candidate;
      least = distance;
    }
  }
  if (best !== null || word.length < TELLING) return best;
  const inside = word.toLowerCase();
  return candidates.find((candidate) => candidate.toLowerCase().includes(inside)) ?? null;
}

function editDistance(from: string, to: string): number {
  const letters = Array.from(to);
  let row = [0, ...letters.map((_, column) => column + 1)];
  for (const [line, letter] of Array.from(from).entries()) {
    const next = [line + 1];
    for (const [column, other] of letters.entries()) {
      const replaced = (row[column] ?? 0) + (letter === other ? 0 : 1);
      next.push(Math.min(replaced, (row[column + 1] ?? 0) + 1, (next[column] ?? 0) + 1));
    }
    row = next;
  }
  return row.at(-1) ?? 0;
}
