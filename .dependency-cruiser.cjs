/** Imports run one way: web, cli, server → desk → words, files → units → engine types; questions → things → numerics. */
const rule = (name, from, to, comment) => ({
  name,
  severity: 'error',
  comment,
  from: { path: from },
  to: { path: to },
});

module.exports = {
  forbidden: [
    {
      name: 'no-circles',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    rule(
      'engine-is-alone',
      '^engine/',
      '^(units|files|words|desk|data|cli|web|server|tests|bench|scripts)/',
      'the engine knows nothing of people, files or screens',
    ),
    rule('engine-has-no-packages', '^engine/', 'node_modules', 'the engine is pure'),
    {
      name: 'engine-has-no-node',
      severity: 'error',
      from: { path: '^engine/' },
      to: { dependencyTypes: ['core'] },
    },
    rule(
      'numerics-are-at-the-bottom',
      '^engine/numerics/',
      '^engine/(line|vehicle|train|resistance|adhesion|traction|brake|stopping|hauling|holding|parting|balance|fit|spacing|finding|outing|sums)/[^.]+(?<!types)\\.ts$',
      'numerics know no physics',
    ),
    rule('units-know-engine-types-only', '^units/', '^(files|words|desk|data|cli|web|server)/'),
    rule('files-below-desk', '^files/', '^(words|desk|cli|web|server)/'),
    rule('words-below-desk', '^words/', '^(files|desk|cli|web|server)/'),
    rule('data-imports-types-only', '^data/', '^(units|files|words|desk|cli|web|server)/'),
    rule('desk-below-the-ways-in', '^desk/', '^(cli|web|server)/'),
    rule(
      'nothing-imports-the-ways-in',
      '^(engine|units|files|words|desk|data)/',
      '^(cli|web|server|tests|bench|scripts)/',
    ),
    rule('ways-in-are-apart', '^cli/', '^(web|server)/'),
    rule('web-is-apart', '^web/', '^(cli|server)/'),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.js', '.json'] },
  },
};
