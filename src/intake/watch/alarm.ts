/** A wait that can be cut short. */
export interface Alarm {
  /** Ends the wait, or the next one if there is none. */
  readonly ring: () => void;
  /** @param ms at most so long */
  readonly wait: (ms: number) => Promise<void>;
}

/** Longest time that a timer can wait, ms. */
const LONGEST = 2 ** 31 - 1;

export function alarm(): Alarm {
  let isRung = false;
  let end: (() => void) | null = null;
  return {
    ring: () => {
      if (end === null) isRung = true;
      else end();
    },
    wait: async (ms) => {
      if (!isRung && ms > 0) {
        await new Promise<void>((resolve) => {
          const timer = setTimeout(resolve, Math.min(ms, LONGEST));
          end = () => {
            clearTimeout(timer);
            resolve();
          };
        });
        end = null;
      }
      isRung = false;
    },
  };
}
