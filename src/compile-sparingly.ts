import { setFlagsFromString } from 'node:v8';

/** Loops are compiled with their function only, and their first round is not compiled apart. */
export const V8_FLAGS = ['--no-use-osr', '--no-turbo-loop-peeling'] as const;

/**
 * Has V8 compile less of what a forecast goes through once the sound is measured: some hundred loops,
 * a few dozen times each. What V8 compiles of them, in threads of its own, takes more of the cores
 * than all the rest, and a third of that is each loop once more while it runs. It holds for the
 * whole process, and changes no result. V8's code that was kept is not taken under other flags: not
 * before all is loaded.
 */
export function compileSparingly(): void {
  for (const flag of V8_FLAGS) setFlagsFromString(flag);
}
