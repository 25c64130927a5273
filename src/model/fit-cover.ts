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

/**
 * States looked at before the search ends: some seconds of work at most. Far more than a side with
 * tens of faults takes.
 */
const MOST_STATES = 5000;

interface State {
  readonly options: readonly number[];
  readonly cost: number;
  /** Faults that are not mended yet, ascending. */
  readonly left: readonly number[];
  /** No cover from here is cheaper. */
  readonly atLeast: number;
}

/** What the search asks of its options. */
interface Problem {
  readonly options: readonly Option[];
  /** Options that mend each fault. */
  readonly menders: readonly (readonly number[])[];
}

/**
 * Sets of options that mend all faults, the cheapest first; each of a set mends something that
 * those chosen before it do not. Branch and bound: the state that can still become cheapest is
 * opened next, at the fault that fewest options mend. The bound shares the cost of an option among
 * the faults that it mends: each fault costs at least the least share of those that mend it.
 * @param faults how many there are
 * @param wanted how many sets
 * @param mostStates where the search ends without a set, they are those that it has come by and one by
 *   greed, which need not be the cheapest
 * @returns empty where some fault is mended by nothing
 */
export function cheapestCovers(
  faults: number,
  options: readonly Option[],
  wanted: number,
  mostStates = MOST_STATES,
): Cover[] {
  const all = Array.from({ length: faults }, (_, fault) => fault);
  const menders = all.map((fault) =>
    [...options.keys()].filter((index) => options[index]!.mends.includes(fault)),
  );
  const problem = { options, menders };
  const covers: Cover[] = [];
  const seen = new Set<string>();
  const start = stateOf(problem, [], 0, all);
  const open = [start];
  for (let looked = 0; open.length > 0 && looked < mostStates; looked++) {
    const state = takeLeast(open);
    if (state.atLeast === Number.POSITIVE_INFINITY) break;
    if (state.left.length === 0) {
      covers.push({ options: state.options, cost: state.cost });
      if (covers.length === wanted) break;
      continue;
    }
    for (const next of nextStates(problem, state)) {
      const key = next.options.join(' ');
      if (seen.has(key)) continue;
      seen.add(key);
      insert(open, next);
    }
  }
  if (covers.length > 0 || open.length === 0) return covers;
  const known = open.filter(({ left }) => left.length === 0);
  return [...known, ...coverByGreed(problem, start)]
    .sort((a, b) => a.cost - b.cost)
    .slice(0, wanted)
    .map(({ options: chosen, cost }) => ({ options: chosen, cost }));
}

function nextStates(problem: Problem, state: State): State[] {
  const choices = state.left.map((fault) => freeMenders(problem, state, fault));
  const [fewest = []] = choices.sort((a, b) => a.length - b.length);
  return fewest.map((index) => withOption(problem, state, index));
}

/** Options that mend a fault and whose slot is not taken. */
function freeMenders({ options, menders }: Problem, state: State, fault: number): number[] {
  const taken = new Set(state.options.map((index) => options[index]!.slot));
  return menders[fault]!.filter((index) => !taken.has(options[index]!.slot));
}

function withOption(problem: Problem, state: State, index: number): State {
  const { cost, mends } = problem.options[index]!;
  const options = [...state.options, index].sort((a, b) => a - b);
  const left = state.left.filter((fault) => !mends.includes(fault));
  return stateOf(problem, options, state.cost + cost, left);
}

function stateOf(
  { options, menders }: Problem,
  chosen: readonly number[],
  cost: number,
  left: readonly number[],
): State {
  const isLeft = new Set(left);
  const shares = options.map(
    (option) => option.cost / option.mends.filter((fault) => isLeft.has(fault)).length,
  );
  let atLeast = cost;
  for (const fault of left) {
    let least = Number.POSITIVE_INFINITY;
    for (const index of menders[fault]!) least = Math.min(least, shares[index]!);
    atLeast += least;
  }
  return { options: chosen, cost, left, atLeast };
}

/** Always the option that costs least for each fault it mends; none where that leads nowhere. */
function coverByGreed(problem: Problem, start: State): Cover[] {
  let state = start;
  while (state.left.length > 0) {
    const free = new Set(state.left.flatMap((fault) => freeMenders(problem, state, fault)));
    const next = [...free].map((index) => withOption(problem, state, index));
    const price = ({ cost, left }: State) =>
      (cost - state.cost) / (state.left.length - left.length);
    const [cheapest] = next.sort((a, b) => price(a) - price(b));
    if (cheapest === undefined) return [];
    state = cheapest;
  }
  return [{ options: state.options, cost: state.cost }];
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
