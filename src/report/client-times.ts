import type { Finding } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';

/** From the second in which it begins to the second in which it ends; whole numbers. */
export interface Span {
  readonly from: Seconds;
  readonly to: Seconds;
}

/** A longer list is not read. */
const MOST_SPANS = 8;

/** When findings are, within the file, those that touch as one; none for the whole file. */
export function joinedSpans(findings: readonly Finding[], duration: Seconds): Span[] {
  const within = (seconds: Seconds) => Math.floor(Math.min(Math.max(seconds, 0), duration));
  const spans = findings
    .flatMap(({ atSeconds, untilSeconds }) =>
      atSeconds === null
        ? []
        : [{ from: within(atSeconds), to: within(untilSeconds ?? atSeconds) }],
    )
    .sort((a, b) => a.from - b.from);
  const joined: Span[] = [];
  for (const span of spans) {
    const last = joined.at(-1);
    if (last === undefined || span.from > last.to + 1) joined.push(span);
    else joined[joined.length - 1] = { from: last.from, to: Math.max(last.to, span.to) };
  }
  return joined;
}

/** Whether each of some spans lies in one of others; the whole file lies in the whole file only. */
export function isWithin(spans: readonly Span[], others: readonly Span[]): boolean {
  if (spans.length === 0 || others.length === 0) return spans.length === others.length;
  return spans.every(({ from, to }) =>
    others.some((other) => other.from <= from && to <= other.to),
  );
}

/** `02:24 to 03:12, 04:10 and 2 more places`. */
export function spansText(spans: readonly Span[]): string {
  if (spans.length === 0) return 'The whole file';
  const more = spans.length - MOST_SPANS;
  const shown = spans
    .slice(0, MOST_SPANS)
    .map(({ from, to }) =>
      to === from ? minutesText(from) : `${minutesText(from)} to ${minutesText(to)}`,
    );
  const last = more > 0 ? `${more} more ${more === 1 ? 'place' : 'places'}` : shown.pop();
  return shown.length === 0 ? `${last}` : `${shown.join(', ')} and ${last}`;
}

/** Minutes and seconds, `62:05` over an hour; a second that has begun does not count. */
export function minutesText(seconds: Seconds): string {
  const whole = Math.floor(seconds);
  const two = (count: number) => String(count).padStart(2, '0');
  return `${two(Math.floor(whole / 60))}:${two(whole % 60)}`;
}

/** `1 min 20 s`, `40 s`; whole seconds. */
export function lastingText(seconds: Seconds): string {
  const minutes = Math.floor(seconds / 60);
  const rest = minutes > 0 && seconds % 60 === 0 ? '' : `${seconds % 60} s`;
  return [...(minutes > 0 ? [`${minutes} min`] : []), rest].filter(Boolean).join(' ');
}
