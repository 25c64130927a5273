import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/support/fast-check-seed.ts', 'tests/support/to-be-within.ts'],
    testTimeout: 60_000,
    onConsoleLog: (log) => {
      throw new Error(`a test printed: ${log}`);
    },
  },
});
