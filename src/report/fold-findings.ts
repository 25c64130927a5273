import type { Finding, FindingId } from '../model/forecast-types.js';

/** What is shown of the findings. */
export interface Folded {
  readonly shown: readonly Finding[];
  /** By kind, of those that are shown: more like these, counted only. */
  readonly alike: ReadonlyMap<string, readonly Finding[]>;
  /** Of kinds that are not shown at all; never a fault. */
  readonly leftOut: readonly Finding[];
  /** What would mend these is not said. */
  readonly unmended: ReadonlySet<FindingId>;
  /** Kinds that are told by their headline alone. */
  readonly brief: ReadonlySet<string>;
}

/** How a finding is told. */
export interface Form {
  /** By its headline alone. */
  readonly isBrief: boolean;
  /** What would mend it. */
  readonly isMended: boolean;
  /** How many more there are like it. */
  readonly isCounted: boolean;
}

/** Lines that a finding takes. */
export type Height = (finding: Finding, form: Form) => number;

/**
 * As much of the findings as there is room for. While it is too much: first, of the kind that comes
 * most often, the mildest is counted instead of shown, those of notes before cautions and cautions
 * before faults, the worst of each kind staying. Then accepted ones are told by their headlines,
 * notes and cautions lose what would mend them and are told by their headlines, faults lose what
 * would mend them, and accepted ones, notes and cautions are left out. Last, faults are told by their headlines; none is left out, whatever room they take.
 */
export function foldFindings(findings: readonly Finding[], room: number, height: Height): Folded {
  const kinds = new Map<string, Finding[]>();
  for (const finding of findings) {
    const kind = findingKind(finding);
    kinds.set(kind, [...(kinds.get(kind) ?? []), finding].sort(worstFirst));
  }
  const state: State = {
    kinds,
    alike: new Map(),
    leftOut: [],
    unmended: new Set(),
    brief: new Set(),
  };
  while (heightOf(state, height) > room) {
    const isSmaller =
      countOne(state) ||
      shorten(state, 'accepted') ||
      leaveUnmended(state, ['note', 'caution']) ||
      shorten(state, 'note') ||
      shorten(state, 'caution') ||
      leaveUnmended(state, ['fault']) ||
      leaveOut(state, 'accepted') ||
      leaveOut(state, 'note') ||
      leaveOut(state, 'caution') ||
      shorten(state, 'fault');
    if (!isSmaller) break;
  }
  const isShown = new Set([...kinds.values()].flat());
  return { ...state, shown: findings.filter((finding) => isShown.has(finding)) };
}

/**
 * Findings of one kind say the same of different places; of accepted ones the reason too, since it
 * was given for them alone.
 */
export function findingKind(finding: Finding): string {
  const { id, detail, accepted } = finding;
  return [rankOf(finding), id, detail ?? '', accepted?.reason ?? ''].join(' ');
}

interface State {
  /** What is shown of each kind, the worst first. */
  readonly kinds: Map<string, Finding[]>;
  readonly alike: Map<string, Finding[]>;
  readonly leftOut: Finding[];
  readonly unmended: Set<FindingId>;
  readonly brief: Set<string>;
}

const RANKS = ['accepted', 'note', 'caution', 'fault'] as const;
type Rank = (typeof RANKS)[number];

function rankOf({ severity, accepted }: Finding): Rank {
  return accepted === undefined ? severity : 'accepted';
}

/** Counts the mildest of the largest crowd of the lowest rank; false if there is no crowd. */
function countOne({ kinds, alike }: State): boolean {
  const crowds = [...kinds].filter(([, shown]) => shown.length > 1);
  const weight = ([, [worst, ...more]]: [string, Finding[]]) =>
    worst === undefined ? 0 : RANKS.indexOf(rankOf(worst)) - more.length / (more.length + 1);
  const [kind, shown] = crowds.sort((one, other) => weight(one) - weight(other))[0] ?? [];
  const mildest = shown?.pop();
  if (kind === undefined || mildest === undefined) return false;
  alike.set(kind, [...(alike.get(kind) ?? []), mildest]);
  return true;
}

/** Leaves out one kind of a rank; false if there is none. */
function leaveOut({ kinds, alike, leftOut }: State, rank: Rank): boolean {
  const [kind, shown] = [...kinds].findLast(([, [worst]]) => rankIs(worst, rank)) ?? [];
  if (kind === undefined || shown === undefined) return false;
  leftOut.push(...shown, ...(alike.get(kind) ?? []));
  kinds.delete(kind);
  alike.delete(kind);
  return true;
}

/** Leaves unsaid what would mend one more id of these ranks; false if none is said. */
function leaveUnmended({ kinds, unmended }: State, ranks: readonly Rank[]): boolean {
  const found = [...kinds.values()].findLast(
    ([worst]) => worst !== undefined && ranks.includes(rankOf(worst)) && !unmended.has(worst.id),
  );
  const [worst] = found ?? [];
  if (worst === undefined) return false;
  unmended.add(worst.id);
  return true;
}

/** Tells one more kind of a rank by its headline; false if all are. */
function shorten({ kinds, brief }: State, rank: Rank): boolean {
  const found = [...kinds].findLast(([kind, [worst]]) => rankIs(worst, rank) && !brief.has(kind));
  if (found === undefined) return false;
  brief.add(found[0]);
  return true;
}

function rankIs(finding: Finding | undefined, rank: Rank): boolean {
  return finding !== undefined && rankOf(finding) === rank;
}

function worstFirst(one: Finding, other: Finding): number {
  return excess(other) - excess(one);
}

function excess({ value, limit }: Finding): number {
  return Math.abs((value ?? 0) - (limit ?? 0));
}

/** What would mend an id is said once, and how many more are like one behind it. */
function heightOf({ kinds, alike, unmended, brief }: State, height: Height): number {
  const mended = new Set<FindingId>(unmended);
  let lines = 0;
  for (const [kind, shown] of kinds) {
    for (const [at, finding] of shown.entries()) {
      const isMended = finding.accepted === undefined && !mended.has(finding.id);
      if (isMended) mended.add(finding.id);
      const isCounted = at === 0 && alike.has(kind);
      lines += height(finding, { isBrief: brief.has(kind), isMended, isCounted });
    }
  }
  return lines;
}
