import { execa } from 'execa';
import { expect, test } from 'vitest';
import { V8_FLAGS } from '../src/compile-sparingly.js';

test('this Node knows each flag: one that it does not know would be told on stderr', async () => {
  for (const flag of V8_FLAGS) {
    const { stderr, exitCode } = await execa(process.execPath, [flag, '-e', '0']);
    expect(stderr).toBe('');
    expect(exitCode).toBe(0);
  }
});
