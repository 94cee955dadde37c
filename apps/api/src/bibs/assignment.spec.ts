import fc from 'fast-check';
import { assignBibs, type BibTerms, type Wearer } from './assignment.js';

const TERMS: BibTerms = { order: 'club', from: 1, blockStep: null, isKeeping: false };

function wearer(familyName: string, club: string | null, more: Partial<Wearer> = {}): Wearer {
  return {
    ...{
      key: familyName,
      familyName,
      givenName: 'A',
      club,
      firstCompetition: 0,
      bibs: ['0'],
      isFixed: false,
    },
    ...more,
  };
}

const bibsOf = (wearers: readonly Wearer[], terms: Partial<BibTerms> = {}, taken: string[] = []): string[] =>
  assignBibs(wearers, { ...TERMS, ...terms }, taken).map(
    ({ wearer: { familyName }, bib }) => `${familyName} ${bib}`,
  );

describe('bibs of a meet', () => {
  const four = [
    wearer('Quill', 'Mill', { firstCompetition: 1 }),
    wearer('Ångström', 'Heron'),
    wearer('Birk', null, { firstCompetition: 1 }),
    wearer('Zander', 'Heron'),
  ];

  it.each<[string, Partial<BibTerms>, string[]]>([
    ['by club, who has none last', {}, ['Ångström 1', 'Zander 2', 'Quill 3', 'Birk 4']],
    ['in blocks of clubs', { blockStep: 10 }, ['Ångström 1', 'Zander 2', 'Quill 11', 'Birk 21']],
    ['by name', { order: 'name', from: 100 }, ['Ångström 100', 'Birk 101', 'Quill 102', 'Zander 103']],
    ['by competition', { order: 'competition' }, ['Ångström 1', 'Zander 2', 'Birk 3', 'Quill 4']],
  ])('are given %s', (_how, terms, expected) => {
    expect(bibsOf(four, terms)).toEqual(expected);
  });

  it('are kept where they are, but those that two wear, or of which somebody wears two', () => {
    const worn = [
      wearer('A', null, { bibs: ['7', '7'] }),
      wearer('B', null, { bibs: ['7'] }),
      wearer('C', null, { bibs: ['1', '2'] }),
      wearer('D', null, { bibs: ['B12'] }),
    ];
    expect(bibsOf(worn, { isKeeping: true })).toEqual(['A 7', 'B 1', 'C 2', 'D B12']);
  });

  it('stay where a draw goes by them, and leave out what others have taken', () => {
    const fixed = [wearer('A', null), wearer('B', null, { bibs: ['1'], isFixed: true })];
    expect(bibsOf(fixed, {}, ['2'])).toEqual(['A 3', 'B 1']);
  });

  it('are never worn by two of whom one may change', () => {
    const one = fc.record({
      familyName: fc.string({ unit: fc.constantFrom(...'abc'), minLength: 1, maxLength: 2 }),
      givenName: fc.constant('A'),
      club: fc.option(fc.constantFrom('Heron', 'Mill'), { nil: null }),
      firstCompetition: fc.nat(2),
      bibs: fc.array(fc.constantFrom('1', '2', '3', 'B1'), { minLength: 1, maxLength: 3 }),
      isFixed: fc.boolean(),
    });
    const terms = fc.record({
      order: fc.constantFrom('club' as const, 'name' as const, 'competition' as const),
      ...{ from: fc.integer({ min: 1, max: 5 }), isKeeping: fc.boolean() },
      blockStep: fc.option(fc.integer({ min: 1, max: 10 }), { nil: null }),
    });
    fc.assert(
      fc.property(fc.array(one, { maxLength: 12 }), terms, (wearers, how) => {
        const keyed = wearers.map((each, at) => ({ ...each, key: String(at) }));
        const given = assignBibs(keyed, how);
        expect(given).toHaveLength(keyed.length);
        for (const { wearer: own, bib } of given) {
          if (own.isFixed) expect(bib).toBe(own.bibs[0]);
          else expect(given.filter((other) => other.bib === bib)).toHaveLength(1);
        }
        expect(assignBibs(keyed, how)).toEqual(given);
      }),
      { numRuns: process.env['LONG'] === '1' ? 10_000 : 500 },
    );
  });
});
