/** Neighbouring quarters that say the same. */
export interface Span {
  readonly first: number;
  /** The last of them, included. */
  readonly last: number;
  /** Where `row` is most extreme. */
  readonly worst: number;
}

/**
 * Spans of quarters that are wrong, in order.
 * @param first quarter to look at
 * @param end the one after the last
 * @param isWorse whether quarter a is a worse place than quarter b
 */
export function spansOf(
  first: number,
  end: number,
  isWrong: (quarter: number) => boolean,
  isWorse: (a: number, b: number) => boolean,
): Span[] {
  const spans: Span[] = [];
  for (let quarter = first; quarter < end; quarter++) {
    if (!isWrong(quarter)) continue;
    const begin = quarter;
    let worst = quarter;
    while (quarter + 1 < end && isWrong(quarter + 1)) {
      quarter += 1;
      if (isWorse(quarter, worst)) worst = quarter;
    }
    spans.push({ first: begin, last: quarter, worst });
  }
  return spans;
}
