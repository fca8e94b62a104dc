/**
 * Imports run one way. Of the house: cli, web → views → desk → words, records → papers → units → engine. Inside the
 * engine: answer, calibrate → questions → motion → outing → things → base; `sums` is the index of all formulas. A room that
 * stands in no floor's list fails: give it one.
 */
const { readdirSync } = require('node:fs');

const rule = (name, from, to, comment) => ({
  name,
  severity: 'error',
  comment,
  from: { path: from },
  to: { path: to },
});

/** Lowest first: a floor imports itself and what stands before it. */
const engineFloors = ['base', 'things', 'outing', 'motion', 'questions', 'calibrate', 'answer', 'sums'];
const houseFloors = [
  ['engine'],
  ['units'],
  ['data'],
  ['papers'],
  ['records'],
  ['words'],
  ['desk'],
  ['views'],
  ['library'],
  ['cli', 'web', 'server'],
];
const beside = ['bench', 'scripts', 'tests', 'docs', 'examples', 'dist', 'node_modules', 'test-results'];

/** Folders with something in them: what is left empty by a move is no room. */
const folders = (of) =>
  readdirSync(of, { withFileTypes: true })
    .filter(
      (entry) =>
        entry.isDirectory() && !entry.name.startsWith('.') && readdirSync(`${of}/${entry.name}`).length > 0,
    )
    .map((entry) => entry.name);
const known = (list, of) => {
  const unknown = folders(of).filter((name) => !list.includes(name));
  if (unknown.length > 0)
    throw new Error(`rooms on no floor: ${unknown.map((n) => `${of}/${n}`).join(', ')}`);
};
known([...houseFloors.flat(), ...beside], '.');
known(engineFloors, 'engine');

const engineRules = engineFloors
  .slice(0, -1)
  .map((floor, i) =>
    rule(
      `engine-${floor}-looks-down`,
      `^engine/${floor}/`,
      `^engine/(${engineFloors.slice(i + 1).join('|')})/`,
      'base ← things ← outing ← motion ← questions ← calibrate, answer',
    ),
  );

const houseRules = houseFloors.slice(0, -1).map((rooms, i) => ({
  name: `${rooms.join('-')}-looks-down`,
  severity: 'error',
  comment: 'imports of the house run one way',
  from: { path: `^(${rooms.join('|')})/` },
  to: {
    path: `^(${houseFloors
      .slice(i + 1)
      .flat()
      .join('|')})/`,
    ...(rooms[0] === 'words' ? { dependencyTypesNot: ['type-only'] } : {}),
  },
}));

module.exports = {
  forbidden: [
    {
      name: 'no-circles',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    ...engineRules,
    ...houseRules,
    rule('answers-and-measuring-are-apart', '^engine/answer/', '^engine/calibrate/'),
    rule('engine-has-no-packages', '^engine/', 'node_modules', 'the engine is pure'),
    {
      name: 'engine-has-no-node',
      severity: 'error',
      from: { path: '^engine/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'records-are-pure',
      severity: 'error',
      comment: 'what a record is knows no disk; what keeps it stands in records/stores',
      from: { path: '^records/', pathNot: '^records/stores/' },
      to: { path: '^(node_modules/|records/stores/)' },
    },
    {
      name: 'records-have-no-node',
      severity: 'error',
      from: { path: '^records/', pathNot: '^records/stores/(sqlite|node-crypto)' },
      to: { dependencyTypes: ['core'] },
    },
    rule('the-browser-has-no-sqlite', '^web/', '^records/stores/(sqlite|node-crypto)'),
    rule('ways-in-are-apart', '^cli/', '^(web|server)/'),
    rule('web-is-apart', '^web/', '^(cli|server)/'),
    rule(
      'the-library-is-for-others',
      `^(${houseFloors.flat().join('|')})/`.replace('|library', ''),
      '^library/',
    ),
    rule(
      'nothing-imports-what-stands-beside',
      `^(${houseFloors.flat().join('|')})/`,
      '^(tests|bench|scripts)/',
    ),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.js', '.json'] },
  },
};
