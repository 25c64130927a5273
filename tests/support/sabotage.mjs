import promises from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';
import { isMainThread } from 'node:worker_threads';

// For tests of the command, by --import. When a file is opened whose name says that it dies, what
// the environment says goes wrong: `bug`, where there are no threads, and `bug in a thread` throw at
// the next array of numbers, `death of a thread` throws where nothing can catch it.

const { SABOTAGE } = process.env;
const { open } = promises;
const METHODS = ['fill', 'set', 'slice', 'subarray'];
let isArmed = false;

promises.open = async (path, ...rest) => {
  if (String(path).includes('dies')) arm();
  return await open(path, ...rest);
};
syncBuiltinESMExports();

function arm() {
  if (isMainThread === (SABOTAGE !== 'bug')) return;
  if (SABOTAGE === 'death of a thread') {
    setTimeout(() => {
      throw new Error('died on purpose');
    });
  } else isArmed = true;
}

for (const name of METHODS) {
  const method = Float64Array.prototype[name];
  Float64Array.prototype[name] = function sabotaged(...args) {
    if (isArmed) {
      isArmed = false;
      throw new TypeError('thrown on purpose');
    }
    return method.apply(this, args);
  };
}
