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
    // Modules as Node loads them: by the runner's own way the engine's inner loops take half as long again.
    pool: 'forks',
    execArgv: ['--import', 'tsx'],
    experimental: { viteModuleRunner: false, nodeLoader: false },
    testTimeout: patience,
    hookTimeout: patience,
  },
});
