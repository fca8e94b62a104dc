import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { runs } from './tests/support/tier.ts';

/** For one test on a busy machine: none waits for anything but the processor. */
const patience = runs(120_000, 1_200_000);

/** What puts a broken module in the place of a sound one, which the runner's own way of loading alone can do. */
const replacing = ['tests/unit/outing/fails-closed.test.ts'];

export default defineConfig({
  test: {
    // By itself the runner leaves one processor idle: of two, half.
    maxWorkers: availableParallelism(),
    pool: 'forks',
    testTimeout: patience,
    hookTimeout: patience,
    projects: [
      {
        extends: true,
        test: {
          name: 'all',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/web/**', ...replacing],
          // Modules as Node loads them: by the runner's own way the engine's inner loops take half as long again.
          // Loaded once for all files that a worker takes: no test leaves anything behind in a module.
          isolate: false,
          execArgv: ['--import', 'tsx'],
          experimental: { viteModuleRunner: false, nodeLoader: false },
        },
      },
      { extends: true, test: { name: 'replacing', include: replacing } },
    ],
  },
});
