import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { runs } from './tests/support/tier.ts';

/** For one test on a busy machine: none waits for anything but the processor. */
const patience = runs(300_000, 10_800_000);

/** What puts a broken module in the place of a sound one, which the runner's own way of loading alone can do. */
const replacing = ['tests/unit/outing/fails-closed.test.ts'];

/** What takes longest, longest first. */
const long = [
  'docs/commands',
  'laws/promises',
  'golden/answers',
  'attack/attack',
  'unit/cli/commands',
  'unit/cli/card',
  'laws/answers',
  'laws/finding-sums',
  'unit/answer/ladder',
  'unit/code/outing-code',
  'meta/every-code',
  'laws/worsened',
  'unit/cli/measure',
  'laws/asked-anew',
  'laws/parting',
  'unit/brake/who-works',
  'unit/failures/failures',
  'unit/stopping/holds-fall',
  'unit/calibrate/next',
  'unit/new/four-questions',
];

/** Long files first: begun last, one of them is waited for with the other processors idle. */
class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = long.findIndex((name) => moduleId.endsWith(`/tests/${name}.test.ts`));
      return at < 0 ? long.length : at;
    };
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}

export default defineConfig({
  test: {
    sequence: { sequencer: LongFirst },
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
          // Modules by a loader of the tests' own: by the runner's the engine's inner loops take half as long again.
          // Loaded once for all files that a worker takes: no test leaves anything behind in a module.
          isolate: false,
          execArgv: [
            ...['--import', new URL('tests/support/loading.mjs', import.meta.url).href],
            // What is young is gathered less often: a twentieth of the processor.
            ...['--min-semi-space-size=32', '--max-semi-space-size=32'],
          ],
          experimental: { viteModuleRunner: false, nodeLoader: false },
        },
      },
      { extends: true, test: { name: 'replacing', include: replacing } },
    ],
  },
});
