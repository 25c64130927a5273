/** Something that can be done: what it costs, and which faults it mends by itself. */
export interface Option {
  readonly cost: number;
  /** Indices of faults. */
  readonly mends: readonly number[];
  /** At most one option of a slot can be chosen: a control has one position. */
  readonly slot: string;
}

/** Options that together mend all faults. */
export interface Cover {
  /** Indices of options, ascending. */
  readonly options: readonly number[];
  readonly cost: number;
}

/** States looked at before the search ends; a side has tens of faults, not thousands. */
const MOST_STATES = 20_000;

interface State {
  readonly options: readonly number[];
  readonly cost: number;
  /** Faults that are not mended yet, ascending. */
  readonly left: readonly number[];
  /** No cover from here is cheaper. */
  readonly atLeast: number;
}

/**
 * Sets of options that mend all faults, the cheapest first; each of a set mends something that
 * those chosen before it do not. Branch and bound: the state that can still become cheapest is
 * opened next, at the fault that fewest options mend. The bound shares the cost of an option among
 * the faults that it mends: each fault costs at least the least share of those that mend it.
 * @param faults how many there are
 * @param wanted how many sets
 * @returns empty where some fault is mended by nothing
 */
export function cheapestCovers(
  faults: number,
  options: readonly Option[],
  wanted: number,
): Cover[] {
  const covers: Cover[] = [];
  const seen = new Set<string>();
  const open: State[] = [stateOf([], 0, indices(faults), options)];
  for (let looked = 0; open.length > 0 && looked < MOST_STATES; looked++) {
    const state = takeLeast(open);
    if (state.atLeast === Number.POSITIVE_INFINITY) break;
    if (state.left.length === 0) {
      covers.push({ options: state.options, cost: state.cost });
      if (covers.length === wanted) break;
      continue;
    }
    for (const next of nextStates(state, options)) {
      const key = next.options.join(' ');
      if (seen.has(key)) continue;
      seen.add(key);
      insert(open, next);
    }
  }
  return covers;
}

function indices(count: number): number[] {
  return Array.from({ length: count }, (_, index) => index);
}

function nextStates(state: State, options: readonly Option[]): State[] {
  const taken = new Set(state.options.map((index) => options[index]!.slot));
  const menders = (fault: number) =>
    indices(options.length).filter(
      (index) => options[index]!.mends.includes(fault) && !taken.has(options[index]!.slot),
    );
  const choices = state.left.map(menders).sort((a, b) => a.length - b.length)[0] ?? [];
  return choices.map((index) => {
    const { cost, mends } = options[index]!;
    return stateOf(
      [...state.options, index].sort((a, b) => a - b),
      state.cost + cost,
      state.left.filter((fault) => !mends.includes(fault)),
      options,
    );
  });
}

function stateOf(
  chosen: readonly number[],
  cost: number,
  left: readonly number[],
  options: readonly Option[],
): State {
  const least = left.map((fault) =>
    Math.min(
      Number.POSITIVE_INFINITY,
      ...options
        .filter(({ mends }) => mends.includes(fault))
        .map((option) => option.cost / option.mends.filter((each) => left.includes(each)).length),
    ),
  );
  return {
    options: chosen,
    cost,
    left,
    atLeast: cost + least.reduce((sum, share) => sum + share, 0),
  };
}

/** `open` is kept with the least last. */
function takeLeast(open: State[]): State {
  const least = open.pop();
  if (least === undefined) throw new RangeError('no state to take');
  return least;
}

function insert(open: State[], state: State): void {
  let [low, high] = [0, open.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isBefore(state, open[middle]!)) low = middle + 1;
    else high = middle;
  }
  open.splice(low, 0, state);
}

/** Of equal promise, the one with less left to mend. */
function isBefore(a: State, b: State): boolean {
  return a.atLeast < b.atLeast || (a.atLeast === b.atLeast && a.left.length < b.left.length);
}
