import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { runs } from './tests/support/tier.ts';

/** For one test on a busy machine: none waits for anything but the processor. */
const patience = runs(120_000, 1_200_000);

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/web/**'],
    // By itself the runner leaves one processor idle: of two, half.
    maxWorkers: availableParallelism(),
    testTimeout: patience,
    hookTimeout: patience,
  },
});
