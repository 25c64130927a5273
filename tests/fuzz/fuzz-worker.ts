import { fuzzCase } from './fuzz-case.js';
import { goodFiles } from './good-files.js';
import { timed } from './run-cases.js';

// A process that tries files until it is told to end; see fuzz.mjs. Every message says what is
// done or begun, so that whoever waits knows what a process that dies has died of.

const GOODS = goodFiles();
/** Rounds: a forecast takes as long as all else that is done with three files. */
const FORECAST_EVERY = 4;
const [, , folder = '.'] = process.argv;
process.on('disconnect', () => process.exit());

process.on('message', (message) => {
  const { seed, index } = asked(message);
  const one = fuzzCase(GOODS, seed, index);
  void timed(one, folder, one.round % FORECAST_EVERY === 0).then((tried) => {
    const peakBytes = process.resourceUsage().maxRSS * 1024;
    process.send?.({ index, name: one.good.name, peakBytes, ...tried });
  });
});

function asked(message: unknown): { seed: number; index: number } {
  const [seed, index] = Array.isArray(message) ? message.map(Number) : [];
  if (seed === undefined || index === undefined) throw new Error(`asked ${String(message)}`);
  return { seed, index };
}
