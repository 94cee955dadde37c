import { readSheetSource } from './read-sheet.js';

type Loose = Record<string, unknown>;

/** The problems of a sheet as "path CODE", in order. */
function problemsIn(sheet: unknown): string[] {
  const reading = readSheetSource(typeof sheet === 'string' ? sheet : JSON.stringify(sheet));
  return reading.ok ? [] : reading.problems.map(({ path, code }) => `${path} ${code}`);
}

function discus(changes: Loose = {}): Loose {
  return { format: 'sectorline-sheet/1', rules: 'WA', event: 'discus', competitors: [], ...changes };
}

function highJump(changes: Loose = {}): Loose {
  const heights = ['1.60', '1.65'];
  return {
    format: 'sectorline-sheet/1',
    rules: 'WA',
    event: 'high-jump',
    heights,
    competitors: [],
    ...changes,
  };
}

function somebody(changes: Loose): Loose {
  return discus({ competitors: [{ bib: '1', ...changes }] });
}

describe('the format', () => {
  it.each([
    ['null', ' WRONG_TYPE'],
    ['[]', ' WRONG_TYPE'],
    ['7', ' WRONG_TYPE'],
    ['{}', '/format MISSING'],
    ['{"format":1,"x":2}', '/format WRONG_TYPE'],
    ['{"x":2,"format":"sectorline-sheet/2"}', '/format UNKNOWN_VALUE'],
  ])('is needed before anything else can be said: %s', (source, problem) => {
    expect(problemsIn(source)).toEqual([problem]);
  });
});

describe('the keys of a sheet', () => {
  it('are reported missing before what is there, in the order of the format', () => {
    expect(problemsIn({ format: 'sectorline-sheet/1' })).toEqual([
      '/rules MISSING',
      '/event MISSING',
      '/competitors MISSING',
    ]);
    expect(problemsIn({ stage: 7, format: 'sectorline-sheet/1', rules: 'WA', competitors: [{}] })).toEqual([
      '/event MISSING',
      '/stage WRONG_TYPE',
      '/competitors/0/bib MISSING',
    ]);
  });

  it('that a kind of competition needs are missing too', () => {
    expect(problemsIn({ ...highJump(), heights: undefined })).toEqual(['/heights MISSING']);
    expect(problemsIn(discus({ stage: 'qualification' }))).toEqual(['/qualifying MISSING']);
    expect(problemsIn(discus({ stage: 'qualification', qualifying: {} }))).toEqual([
      '/qualifying/standard MISSING',
    ]);
  });

  it('must be of their type', () => {
    const wrong = { rules: [], edition: 2024, category: [], implementGrams: 7.5, indoor: 0, stage: null };
    expect(problemsIn(discus({ ...wrong, plan: 6, admitted: {}, scoring: 1 }))).toEqual([
      '/rules WRONG_TYPE',
      ...['edition', 'category', 'implementGrams', 'indoor', 'stage', 'plan', 'admitted', 'scoring'].map(
        (key) => `/${key} WRONG_TYPE`,
      ),
    ]);
  });

  it('take no number beyond all bounds', () => {
    const text = JSON.stringify(discus({ implementGrams: 4711 })).replace('4711', '1e400');
    expect(problemsIn(text)).toEqual(['/implementGrams WRONG_TYPE']);
  });

  it('that are unknown are reported each, and not looked into', () => {
    expect(problemsIn(discus({ colour: [[{ a: 1 }]], Rules: 'XY' }))).toEqual([
      '/colour UNKNOWN_KEY',
      '/Rules UNKNOWN_KEY',
    ]);
    expect(problemsIn(somebody({ 'a/b~c': 1 }))).toEqual(['/competitors/0/a~1b~0c UNKNOWN_KEY']);
    expect(problemsIn(discus({ category: { sex: 'W', size: 1 } }))).toEqual(['/category/size UNKNOWN_KEY']);
  });

  it.each(['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty'])(
    'like %s are unknown',
    (key) => {
      const text = JSON.stringify(somebody({ KEY: { polluted: true } })).replaceAll('KEY', key);
      expect(problemsIn(text)).toEqual([`/competitors/0/${key} UNKNOWN_KEY`]);
      expect(({} as Loose)['polluted']).toBeUndefined();
    },
  );

  it('must have a value that is known', () => {
    const unknown = { rules: 'wa', event: 'Discus', stage: 'heat', category: { sex: 'F' } };
    expect(problemsIn(discus(unknown))).toEqual([
      '/rules UNKNOWN_VALUE',
      '/event UNKNOWN_VALUE',
      '/stage UNKNOWN_VALUE',
      '/category/sex UNKNOWN_VALUE',
    ]);
    expect(problemsIn(discus({ edition: '1912' }))).toEqual(['/edition UNKNOWN_VALUE']);
    expect(problemsIn({ ...highJump(), heights: [] })).toEqual(['/heights UNKNOWN_VALUE']);
    expect(
      problemsIn(discus({ stage: 'qualification', qualifying: { standard: '50.00', fill: -1 } })),
    ).toEqual(['/qualifying/fill UNKNOWN_VALUE']);
  });

  it('that another kind of competition has are out of place, whatever is in them', () => {
    expect(problemsIn(discus({ heights: [7], jumpOff: [], qualifying: {} }))).toEqual([
      '/heights OUT_OF_PLACE',
      '/jumpOff OUT_OF_PLACE',
      '/qualifying OUT_OF_PLACE',
    ]);
    expect(problemsIn(highJump({ plan: {} }))).toEqual(['/plan OUT_OF_PLACE']);
    const qualification = { stage: 'qualification', qualifying: { standard: '1.65' } };
    expect(problemsIn(highJump({ ...qualification, jumpOff: [], admitted: [] }))).toEqual([
      '/jumpOff OUT_OF_PLACE',
    ]);
    expect(problemsIn(discus({ heights: 7 }))).toEqual(['/heights WRONG_TYPE']);
  });

  it('are all looked at even when the event is not known', () => {
    const sheet = discus({
      event: 'curling',
      plan: { rounds: 0 },
      competitors: [{ bib: '1', series: [5, 'anything'] }, { bib: '1' }],
      admitted: [{ bib: '9', after: 3, by: 'R' }],
    });
    expect(problemsIn(sheet)).toEqual([
      '/event UNKNOWN_VALUE',
      '/competitors/0/series/0 WRONG_TYPE',
      '/competitors/1/bib DUPLICATE',
      '/plan/rounds PLAN',
      '/admitted/0/bib UNKNOWN_BIB',
    ]);
  });
});

describe('a competitor', () => {
  it('must be an object with keys of the right type', () => {
    expect(problemsIn(discus({ competitors: [7, null, []] }))).toEqual([
      '/competitors/0 WRONG_TYPE',
      '/competitors/1 WRONG_TYPE',
      '/competitors/2 WRONG_TYPE',
    ]);
    const wrong = {
      name: 1,
      club: null,
      flight: 2,
      status: 3,
      guest: 'yes',
      implementGrams: '2000',
      series: {},
    };
    expect(problemsIn(somebody({ ...wrong, written: [] }))).toEqual(
      [...Object.keys(wrong), 'written'].map((key) => `/competitors/0/${key} WRONG_TYPE`),
    );
  });

  it('has a bib that is not empty and that nobody else has', () => {
    expect(problemsIn(somebody({ bib: '' }))).toEqual(['/competitors/0/bib UNKNOWN_VALUE']);
    expect(problemsIn(somebody({ bib: 7 }))).toEqual(['/competitors/0/bib WRONG_TYPE']);
    const bibs = ['7', '8', '7', '7'].map((bib) => ({ bib }));
    expect(problemsIn(discus({ competitors: bibs }))).toEqual([
      '/competitors/2/bib DUPLICATE',
      '/competitors/3/bib DUPLICATE',
    ]);
  });

  it('may have __proto__ for a bib, everywhere', () => {
    const text = JSON.stringify(
      highJump({
        competitors: ['a', 'PROTO'].map((bib) => ({ bib, series: ['O', 'XXX'] })),
        jumpOff: [{ height: '1.65', tries: { a: 'X', PROTO: 'O' } }],
      }),
    ).replaceAll('PROTO', '__proto__');
    expect(problemsIn(text)).toEqual([]);
  });

  it('has a status and what is written like the format says', () => {
    expect(problemsIn(somebody({ status: 'NM' }))).toEqual(['/competitors/0/status UNKNOWN_VALUE']);
    expect(problemsIn(somebody({ written: { place: '1', mark: 50, note: '' } }))).toEqual([
      '/competitors/0/written/place WRONG_TYPE',
      '/competitors/0/written/mark WRONG_TYPE',
      '/competitors/0/written/note UNKNOWN_KEY',
    ]);
    expect(problemsIn(somebody({ written: { place: null, mark: null } }))).toEqual([]);
    expect(problemsIn(somebody({ written: {} }))).toEqual([]);
  });
});

describe('who is admitted', () => {
  const admit = (...admitted: Loose[]): Loose => discus({ competitors: [{ bib: '1' }], admitted });

  it('has a bib of the sheet, a cut of the plan and somebody who decided', () => {
    expect(problemsIn(admit({ bib: '1', after: 3, by: 'R' }))).toEqual([]);
    expect(problemsIn(admit({}))).toEqual([
      '/admitted/0/bib MISSING',
      '/admitted/0/after MISSING',
      '/admitted/0/by MISSING',
    ]);
    expect(problemsIn(admit({ bib: '9', after: 4, by: 'Q' }))).toEqual([
      '/admitted/0/bib UNKNOWN_BIB',
      '/admitted/0/after UNKNOWN_VALUE',
      '/admitted/0/by UNKNOWN_VALUE',
    ]);
    expect(problemsIn(admit({ bib: '9', after: 3, by: 'J' }))).toEqual(['/admitted/0/bib UNKNOWN_BIB']);
    expect(problemsIn(admit({ bib: '1', after: 3, by: 'J' }, { bib: '1', after: 3, by: 'D' }))).toEqual([
      '/admitted/1/bib DUPLICATE',
    ]);
  });

  it('goes through no cut of a vertical jump, which has none', () => {
    const competitors = [{ bib: '1' }];
    expect(problemsIn(highJump({ competitors, admitted: [] }))).toEqual([]);
    expect(
      problemsIn(
        highJump({
          competitors,
          admitted: [
            { bib: '1', after: 3, by: 'R' },
            { bib: '1', by: 'R' },
          ],
        }),
      ),
    ).toEqual(['/admitted/0/after UNKNOWN_VALUE', '/admitted/1/after MISSING']);
  });

  it('goes to the final from a qualification, not through a cut', () => {
    const qualification = { stage: 'qualification', qualifying: { standard: '60.00' } };
    expect(problemsIn({ ...admit({ bib: '1', by: 'R' }), ...qualification })).toEqual([]);
    expect(problemsIn({ ...admit({ bib: '1', after: 3, by: 'R' }), ...qualification })).toEqual([
      '/admitted/0/after OUT_OF_PLACE',
    ]);
  });
});

describe('a problem', () => {
  it('says what to do, and names the rule where there is one', () => {
    const reading = readSheetSource(JSON.stringify(somebody({ series: ['50.00 +1.0', 'r', 'X'] })));
    expect(reading).toMatchObject({
      ok: false,
      problems: [
        {
          message: 'Wind is measured in long and triple jump outdoors only; write the cell without it.',
          rule: null,
        },
        { message: 'Who has retired takes no more trials; take this one out.', rule: null },
      ],
    });
    const tooMany = readSheetSource(
      JSON.stringify(somebody({ series: [null, null, null, null, null, null, null] })),
    );
    expect(tooMany).toMatchObject({ problems: [{ code: 'TOO_MANY', rule: 'WA TR25.6' }] });
  });
});
