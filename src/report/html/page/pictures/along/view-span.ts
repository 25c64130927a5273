/** A stretch of program time, seconds. */
export interface Span {
  readonly from: number;
  readonly until: number;
}

/** From one place to another in either order, at least `least` long, within the whole. */
export function zoomedTo(whole: Span, one: number, other: number, least: number): Span {
  const middle = (one + other) / 2;
  const length = Math.min(Math.max(Math.abs(other - one), least), whole.until - whole.from);
  return within(whole, { from: middle - length / 2, until: middle + length / 2 });
}

/** Longer or shorter by a factor, around a place that stays where it is. */
export function zoomedAround(
  whole: Span,
  view: Span,
  at: number,
  factor: number,
  least: number,
): Span {
  const length = view.until - view.from;
  const longest = whole.until - whole.from;
  const wanted = Math.min(Math.max(length * factor, Math.min(least, longest)), longest);
  const from = at - (at - view.from) * (wanted / length);
  return within(whole, { from, until: from + wanted });
}

export function panned(whole: Span, view: Span, by: number): Span {
  return within(whole, { from: view.from + by, until: view.until + by });
}

/** The view as it is if a place lies in it, else as long with the place in its middle. */
export function following(whole: Span, view: Span, at: number): Span {
  if (at >= view.from && at <= view.until) return view;
  return panned(whole, view, at - (view.from + view.until) / 2);
}

/** As long as it was, moved to lie within the whole; the whole where it is longer. */
function within(whole: Span, { from, until }: Span): Span {
  const length = Math.min(until - from, whole.until - whole.from);
  const begins = Math.min(Math.max(from, whole.from), whole.until - length);
  return { from: begins, until: begins + length };
}
