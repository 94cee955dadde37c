import fc from 'fast-check';
import { recount, type RecountDocument } from './recount.js';
import { PROBLEM_CODES } from './sheet/problem-codes.js';

type Loose = Record<string, unknown>;

function counted(sheet: Loose): RecountDocument {
  return recount(JSON.stringify({ format: 'sectorline-sheet/1', rules: 'WA', ...sheet }));
}

function someDiscus(changes: Loose = {}): Loose {
  const competitors = [
    { bib: '1', club: 'A', series: ['58.10', '57.02', 'X'] },
    { bib: '2', club: 'B', series: ['57.44', '58.10', 'X'] },
    { bib: '3', series: ['X', 'X', 'X'] },
    { bib: '4', series: [], status: 'DNS' },
  ];
  return { event: 'discus', competitors, ...changes };
}

describe('a recount', () => {
  it('gives the document of the sheet', () => {
    expect(counted(someDiscus())).toMatchObject({
      format: 'sectorline-result/1',
      rules: 'WA',
      edition: '2024-01',
      results: [
        { bib: '2', place: 1 },
        { bib: '1', place: 2, decidedBy: '2nd best' },
        { bib: '3', status: 'NM' },
        { bib: '4', status: 'DNS' },
      ],
      problems: [],
    });
    expect(counted(someDiscus())).not.toHaveProperty('clubs');
    expect(counted(someDiscus())).not.toHaveProperty('differences');
  });

  it('adds points and clubs when the sheet has a scoring', () => {
    expect(counted(someDiscus({ scoring: { places: [5, 3] } }))).toMatchObject({
      results: [{ points: '5' }, { points: '3' }, { points: '0' }, { points: '0' }],
      clubs: [
        { club: 'B', points: '5', place: 1 },
        { club: 'A', points: '3', place: 2 },
      ],
    });
  });

  it('names the rules but no results of a sheet that is not valid', () => {
    const document = counted(someDiscus({ event: 'x', scoring: { places: [5] } }));
    expect(Object.keys(document)).toEqual(['format', 'rules', 'edition', 'problems']);
    expect(Object.keys(counted({ rules: 'XY' }))).toEqual(['format', 'problems']);
    expect(Object.keys(recount('?'))).toEqual(['format', 'problems']);
  });

  it('gives the document of a meet for a meet, counted or not', () => {
    const meet = { format: 'sectorline-meet/1', scoring: { places: [5, 3] }, sheets: [] };
    expect(recount(JSON.stringify(meet))).toEqual({
      format: 'sectorline-meet-result/1',
      results: [],
      clubs: [],
      problems: [],
    });
    expect(recount(JSON.stringify({ ...meet, sheets: [{}] }))).toMatchObject({
      format: 'sectorline-meet-result/1',
      problems: [{ path: '/sheets/0/format', code: 'MISSING' }],
    });
  });

  it('counts combined events', () => {
    const marks = { '60mh': null, 'high-jump': null, shot: null, 'long-jump': null, '800m': null };
    const sheet = {
      format: 'sectorline-combined/1',
      table: 'pentathlon-indoor',
      rows: [{ bib: '1', marks }],
    };
    expect(recount(JSON.stringify(sheet))).toEqual({
      format: 'sectorline-result/1',
      results: [
        {
          bib: '1',
          place: 1,
          equal: false,
          status: null,
          points: 0,
          eventPoints: { '60mh': 0, 'high-jump': 0, shot: 0, 'long-jump': 0, '800m': 0 },
        },
      ],
      problems: [],
    });
  });
});

describe('what the card says', () => {
  it('is compared in the order of competition, place before mark, and each difference explained', () => {
    const competitors = [
      { bib: '1', series: ['58.10', '57.02', 'X'], written: { place: 1, mark: '58.01' } },
      { bib: '2', series: ['57.44', '58.10', 'X'], written: { place: 1, mark: '58.10' } },
      { bib: '3', series: ['X', 'X', 'X'], written: { place: 3, mark: null } },
      { bib: '4', status: 'DNS', written: {} },
    ];
    expect(counted(someDiscus({ competitors }))).toMatchObject({
      differences: [
        {
          bib: '1',
          key: 'place',
          written: 1,
          counted: 2,
          because: '2nd: equal best 58.10; second best 57.02 against 57.44',
        },
        { bib: '1', key: 'mark', written: '58.01', counted: '58.10' },
        { bib: '3', key: 'place', written: 3, counted: null, because: 'No place: no valid mark' },
      ],
    });
  });

  it('gives an empty list when all of it agrees', () => {
    const competitors = [{ bib: '1', series: ['58.10'], written: { place: 1 } }];
    expect(counted(someDiscus({ competitors }))).toMatchObject({ differences: [] });
  });

  it('is explained for vertical jumps too', () => {
    const written = { place: 9 };
    const competitors = [
      { bib: 'a', series: ['O', 'XXX'], written },
      { bib: 'b', series: ['O', 'XXX'], written },
      { bib: 'c', series: ['XO', 'XXX'], written },
      { bib: 'd', series: ['XO', 'XXX'], written },
      { bib: 'e', series: ['XXX'], written },
    ];
    const jumpOff = [{ height: '1.65', tries: { a: 'X', b: 'O' } }];
    const document = counted({ event: 'high-jump', heights: ['1.60', '1.65'], competitors, jumpOff });
    const { differences } = document as unknown as { differences: { because: string }[] };
    expect(differences.map(({ because }) => because)).toEqual([
      expect.stringContaining('jump-off'),
      expect.stringContaining('1.65'),
      expect.stringContaining('failure at it'),
      expect.stringContaining('3rd, shared'),
      'No place: no height cleared',
    ]);
  });
});

/** Parts of sheets, so that random objects come near to being one. */
const words = fc.constantFrom(
  ...[
    'format',
    'rules',
    'event',
    'competitors',
    'heights',
    'jumpOff',
    'plan',
    'cuts',
    'series',
    'bib',
    'tries',
  ],
  ...[
    'sectorline-sheet/1',
    'sectorline-meet/1',
    'sectorline-combined/1',
    'WA',
    'discus',
    'high-jump',
    'sheets',
  ],
  ...['O', 'X', 'XX-', 'r', '58.10', '7.00 +1.0', '19-06.25', '__proto__', 'constructor', '\ud800', '\0'],
);
const { tree } = fc.letrec((tie) => ({
  tree: fc.oneof(
    { maxDepth: 6 },
    words,
    fc.constantFrom(null, true, 0, -1, 3, 6, 1e300, 2.5),
    fc.array(tie('tree'), { maxLength: 5 }),
    fc.dictionary(words, tie('tree'), { maxKeys: 8 }),
  ),
}));

const valid = [
  someDiscus({ format: 'sectorline-sheet/1', rules: 'WA', scoring: { places: [5, 3] }, plan: { rounds: 4 } }),
  {
    format: 'sectorline-sheet/1',
    rules: 'NFHS',
    event: 'pole-vault',
    heights: ['10-06.00', '11-00.00'],
    competitors: ['a', 'b'].map((bib) => ({ bib, series: ['XO', 'XXX'], written: { place: 1 } })),
    jumpOff: [{ height: '11-00.00', tries: { a: 'O', b: 'X' } }],
  },
];

/** A valid sheet with some of its values replaced, whatever they were. */
const mutated = fc
  .record({ sheet: fc.constantFrom(...valid), changes: fc.array(fc.tuple(fc.nat(), tree), { maxLength: 3 }) })
  .map(({ sheet, changes }) => {
    const copy = structuredClone(sheet);
    for (const [at, value] of changes) {
      const places = placesIn(copy);
      const place = places[at % places.length];
      if (place) place.parent[place.key] = value;
    }
    return JSON.stringify(copy);
  });

function placesIn(value: unknown): { parent: Loose; key: string }[] {
  if (typeof value !== 'object' || value === null) return [];
  const parent = value as Loose;
  return Object.keys(parent).flatMap((key) => [{ parent, key }, ...placesIn(parent[key])]);
}

const characters = mutated.chain((text) =>
  fc.tuple(fc.nat(text.length), fc.nat(4), fc.string()).map(([at, length, piece]) => {
    return text.slice(0, at) + piece + text.slice(at + length);
  }),
);

describe('whatever comes in', () => {
  const sources = {
    'random JSON': tree.map((value) => JSON.stringify(value)),
    'a valid sheet with values replaced': mutated,
    'a text near a sheet': characters,
    'any text': fc.string({ unit: 'binary' }),
    'any bytes': fc.uint8Array({ maxLength: 100 }),
  };

  it.each(Object.entries(sources))('gives one document, also %s', (_name, source) => {
    fc.assert(
      fc.property(source as fc.Arbitrary<string | Uint8Array>, (input) => {
        const document = recount(input);
        expect(document.format).toMatch(/^sectorline-(meet-)?result\/1$/);
        expect('results' in document).toBe(document.problems.length === 0);
        for (const { code, path, message } of document.problems) {
          expect(PROBLEM_CODES).toContain(code);
          expect(path).toMatch(/^(\/|$)/);
          expect(message).not.toBe('');
        }
        const paths = document.problems.map(({ path }) => path);
        expect(new Set(paths).size).toBe(paths.length);
        expect(JSON.parse(JSON.stringify(document))).toEqual(document);
      }),
      { numRuns: 1500 },
    );
  });

  it('is worked through, however much of one thing there is', () => {
    const many = 20_000;
    const list = (item: string): string => `[${Array.from({ length: many }, () => item).join(',')}]`;
    const head = '"format":"sectorline-sheet/1","rules":"WA"';
    const hostile = [
      `{${head},"event":"high-jump","competitors":[{"bib":"1","series":${list('"X"')}}],"heights":${list('"1.60"')}}`,
      `{${head},"event":"shot","competitors":[{"bib":"1","series":${list('null')}}],"plan":{"cuts":${list('{}')}}}`,
      `{${head},"event":"shot","competitors":[],"admitted":${list('{"bib":"1","after":3,"by":"R"}')}}`,
      `{${head},"event":"high-jump","competitors":[],"heights":["1.60"],"jumpOff":${list('{"height":"1.60","tries":{}}')}}`,
      `{${head},${Array.from({ length: many }, (_, at) => `"k${at}":0`).join(',')}}`,
      `{"format":"sectorline-combined/1","table":"x","rows":[{"bib":"1","marks":{${Array.from({ length: many }, (_, at) => `"k${at}":0`).join(',')}}}]}`,
      `${'{"format":'.repeat(many)}1${'}'.repeat(many)}`,
      `{"format":"sectorline-meet/1","scoring":{"places":${list('1e400')}},"sheets":${list('{}')}}`,
    ];
    for (const source of hostile) expect(recount(source).problems.length).toBeGreaterThan(0);
  });
});
