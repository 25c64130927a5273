import { writeSync } from 'node:fs';
import { basename } from 'node:path';
import vm from 'node:vm';

// For tests of the command, by --import: each thread says on stderr what became of the code that V8
// has kept of each file it runs.

const { Script } = vm;

vm.Script = class extends Script {
  constructor(source, options) {
    super(source, options);
    const fate = { undefined: 'none', false: 'taken', true: 'refused' }[this.cachedDataRejected];
    writeSync(2, `cache of ${basename(options.filename)}: ${fate}\n`);
  }
};
