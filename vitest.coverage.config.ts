import { defineConfig, mergeConfig } from 'vitest/config';
import config from './vitest.config.js';

/**
 * How many branches of the analysis and the model are taken by their tests and by those that decode
 * sound. The kernel runs as WebAssembly, where no branch is seen: it is held to
 * src/analysis/plain-motion.ts, which counts. Neither is what runs in a process of its own, as the
 * built command does.
 */
export default mergeConfig(
  config,
  defineConfig({
    test: {
      // Counting makes them slower.
      testTimeout: 300_000,
      coverage: {
        include: ['src/{analysis,model}/**/*.ts'],
        exclude: ['src/analysis/kernel/assembly/**', '**/*.d.ts'],
        reportsDirectory: 'coverage/branches',
        reporter: ['text', 'json'],
        reportOnFailure: true,
        thresholds: {
          'src/analysis/**/*.ts': { branches: 95 },
          'src/model/**/*.ts': { branches: 95 },
        },
      },
    },
  }),
);
