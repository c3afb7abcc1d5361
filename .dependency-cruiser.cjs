// Which room may import which: the table of DEVELOPERS.md, held on every run of `npm run check`.

/** Room to the rooms it may import besides itself. A test holds DEVELOPERS.md equal to it. */
const ROOMS = {
  geometry: [],
  model: ['geometry'],
  source: ['model'],
  ticket: ['model'],
  resolve: ['model', 'geometry', 'source'],
  classify: ['model', 'geometry'],
  order: ['model', 'geometry'],
  split: ['model', 'source'],
  layout: ['model', 'geometry'],
  mark: ['model', 'geometry'],
  check: ['model', 'geometry'],
  faces: ['model', 'geometry'],
  write: ['model', 'geometry'],
  verify: ['model', 'geometry', 'source'],
  witness: ['model', 'geometry'],
  sequence: ['model', 'geometry'],
  ties: ['model', 'geometry'],
  register: ['model', 'geometry'],
  strip: ['model', 'geometry'],
  run: ['model', 'geometry'],
  report: ['model'],
};

const roomRules = Object.entries(ROOMS).map(([room, allowed]) => ({
  name: `room-${room}`,
  comment: `${room} may import ${allowed.length === 0 ? 'nothing' : allowed.join(', ')}`,
  severity: 'error',
  from: { path: `^src/${room}/` },
  to: { path: '^src/', pathNot: `^src/(?:${[room, ...allowed].join('|')})/` },
}));

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...roomRules,
    {
      name: 'known-rooms',
      comment: 'A new room gets a line in the table.',
      severity: 'error',
      from: { path: '^src/[^/]+/', pathNot: `^src/(?:${Object.keys(ROOMS).join('|')}|road|disk|hot-folder|cli|page)/` },
      to: {},
    },
    {
      name: 'road',
      comment: 'The road and the door know every room, but no rim.',
      severity: 'error',
      from: { path: '^src/(?:road/|pipeline\\.ts$|index\\.ts$)' },
      to: { path: '^src/(?:cli/|hot-folder/|disk/|page/|index\\.ts$)' },
    },
    {
      name: 'road-below-pipeline',
      comment: 'Parts of the road do not know the whole of it.',
      severity: 'error',
      from: { path: '^src/road/' },
      to: { path: '^src/pipeline\\.ts$' },
    },
    {
      name: 'rim-disk',
      comment: 'What rims share of the disk knows the door and the model.',
      severity: 'error',
      from: { path: '^src/disk/' },
      to: { path: '^src/', pathNot: '^src/(?:(?:disk|model)/|index\\.ts$)' },
    },
    {
      name: 'rim-hot-folder',
      comment: 'The hot folder imports the shared part of the rims, the road, the door, ticket, model, report.',
      severity: 'error',
      from: { path: '^src/hot-folder/' },
      to: { path: '^src/', pathNot: '^src/(?:(?:hot-folder|disk|road|ticket|model|report)/|pipeline\\.ts$|index\\.ts$)' },
    },
    {
      name: 'rim-cli',
      comment: 'The command imports the other rims, the road, the door, ticket, model, report.',
      severity: 'error',
      from: { path: '^src/cli/' },
      to: { path: '^src/', pathNot: '^src/(?:(?:cli|hot-folder|disk|road|ticket|model|report)/|pipeline\\.ts$|index\\.ts$)' },
    },
    {
      name: 'rim-page',
      comment: 'The page imports the road, ticket, model, report, geometry.',
      severity: 'error',
      from: { path: '^src/page/' },
      to: { path: '^src/', pathNot: '^src/(?:(?:page|road|ticket|model|report|geometry)/|pipeline\\.ts$)' },
    },
    {
      name: 'no-circle',
      comment: 'No circles, those of types alone included.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'no-orphan',
      comment: 'A file that nothing imports and that imports nothing is forgotten; what tests put into a page is named there by its path.',
      severity: 'error',
      from: { orphan: true, pathNot: '\\.d\\.ts$|^tests/oracles/\\w+/in-page[\\w-]*\\.js$' },
      to: {},
    },
    {
      name: 'no-unreachable',
      comment: 'Every file serves the door, the command or the page; the schema is published as a file by bin/finish-build.js.',
      severity: 'error',
      from: { path: '^src/(?:index|cli/main|page/(?:main|job-worker|paint-worker))\\.ts$' },
      to: { path: '^src/', pathNot: '\\.d\\.ts$|^src/cli/main\\.ts$|^src/page/(?:main|job-worker|paint-worker)\\.ts$|^src/page/page\\.css$|^src/ticket/ticket-schema\\.ts$', reachable: false },
    },
    {
      name: 'no-platform-in-core',
      comment: 'The core runs in a browser: no built-in module of Node.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/(?:cli|disk|hot-folder)/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-undeclared-package',
      comment: 'The program needs only what package.json lists; what stands under devDependencies is joined into it.',
      severity: 'error',
      from: { path: '^src/' },
      to: {
        dependencyTypes: ['npm-optional', 'npm-peer', 'npm-no-pkg', 'npm-unknown', 'unknown', 'undetermined'],
        dependencyTypesNot: ['type-only'],
        pathNot: '(?:^|/)node_modules/(?:@types|bullmq)/',
      },
    },
    {
      name: 'no-unresolved',
      comment: 'Every import leads somewhere.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'no-tests-in-source',
      comment: 'The program does not know its tests.',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^(?:tests|bin)/' },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    // What is built is not looked at again: the parts that the bundler makes of it import each other.
    doNotFollow: { path: 'node_modules|^dist/' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
  },
};
