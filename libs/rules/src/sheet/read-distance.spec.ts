import { readSheetSource } from './read-sheet.js';

type Loose = Record<string, unknown>;
type Cells = (string | null)[];

/** The problems of a sheet as "path CODE", in order; those of a series without what all their paths begin with. */
function problemsIn(sheet: Loose): string[] {
  const reading = readSheetSource(JSON.stringify(sheet));
  if (reading.ok) return [];
  return reading.problems.map(({ path, code }) => `${path.replace('/competitors/0/series/', '')} ${code}`);
}

function sheet(event: string, competitors: Loose[], changes: Loose = {}): Loose {
  return { format: 'sectorline-sheet/1', rules: 'WA', event, ...changes, competitors };
}

function alone(series: Cells, changes: Loose = {}, event = 'discus'): string[] {
  return problemsIn(sheet(event, [{ bib: '1', series }], changes));
}

/** Nine with marks from 59.00 down to 51.00, so that the ninth is not through the cut of eight. */
function nine(ofLast: Loose, changes: Loose = {}): string[] {
  const eight = Array.from({ length: 8 }, (_, at) => ({
    bib: `b${at}`,
    series: [`${59 - at}.00`, 'X', 'X'],
  }));
  return problemsIn(sheet('discus', [{ bib: 'last', ...ofLast }, ...eight], changes));
}

describe('cells', () => {
  it('are malformed before anything else is wrong with them', () => {
    expect(alone(['50.0', '50.00 -0.0', null, '5', 'x', '0.00', 'XX'])).toEqual([
      '0 CELL',
      '1 CELL',
      '3 CELL',
      '4 CELL',
      '5 CELL',
      '6 CELL',
    ]);
  });

  it('must be strings or null', () => {
    expect(alone([50, true, [], null] as never)).toEqual(['0 WRONG_TYPE', '1 WRONG_TYPE', '2 WRONG_TYPE']);
  });

  it('are in the unit of the first mark that stands in the document', () => {
    expect(alone(['X', '50.00', '164-00.50', '51.00'])).toEqual(['2 UNIT']);
    expect(alone(['164-00.50', '50.00', '51.00'])).toEqual(['1 UNIT', '2 UNIT']);
    const qualifying = { standard: '60.00' };
    expect(alone(['164-00.50'], { stage: 'qualification', qualifying })).toEqual(['0 UNIT']);
    const last = {
      ...sheet('discus', [{ bib: '1', series: ['164-00.50'] }], { stage: 'qualification' }),
      qualifying,
    };
    expect(problemsIn(last)).toEqual(['/qualifying/standard UNIT']);
  });

  it('have wind in long and triple jump outdoors only', () => {
    expect(alone(['7.00 +1.0', '7.00 NWI', 'X -1.0', '7.00'], {}, 'long-jump')).toEqual([]);
    expect(alone(['7.00 +1.0', '7.00 NWI', 'X -1.0', '7.00'], { indoor: true }, 'triple-jump')).toEqual([
      '0 WIND_NOT_MEASURED',
      '1 WIND_NOT_MEASURED',
      '2 WIND_NOT_MEASURED',
    ]);
    expect(alone(['7.00 +1.0'], { indoor: true }, 'shot')).toEqual(['0 WIND_NOT_MEASURED']);
    expect(alone(['7.00 +1.0'], { indoor: 'yes' }, 'long-jump')).toEqual(['/indoor WRONG_TYPE']);
  });

  it('are no more than there are rounds, empty ones included', () => {
    expect(alone([null, null, null, null, null, null])).toEqual([]);
    expect(alone([null, null, null, null, null, null, null, 'X'])).toEqual(['6 TOO_MANY', '7 TOO_MANY']);
    expect(alone(['X', 'X', 'X', 'X'], { plan: { rounds: 3 } })).toEqual(['3 TOO_MANY']);
    expect(
      alone(['X', 'X', 'X', 'X'], { stage: 'qualification', qualifying: { standard: '60.00' } }),
    ).toEqual(['3 TOO_MANY']);
    expect(alone(['X', 'X', 'X', 'X'], { plan: { rounds: 3, cuts: [{ after: 3, through: 8 }] } })).toEqual([
      '/plan/cuts/0/after PLAN',
      '3 TOO_MANY',
    ]);
    expect(alone(['X', 'X', 'X', 'X'], { plan: { rounds: 0 } })).toEqual(['/plan/rounds PLAN']);
  });

  it('follow one another without a gap', () => {
    expect(alone(['50.00', null, 'X', null, '-', null])).toEqual(['2 GAP', '4 GAP']);
    expect(alone(['r', null, 'X'])).toEqual(['2 GAP']);
  });
});

describe('a trial that could not be', () => {
  it('comes after retiring', () => {
    expect(alone(['50.00', 'r', 'X', 'r', null])).toEqual(['2 AFTER_RETIRING', '3 AFTER_RETIRING']);
    expect(alone(['r', '50.0'])).toEqual(['1 CELL']);
  });

  it('is of somebody who did not start', () => {
    const notStarted = { bib: '1', status: 'DNS', series: ['-', null, 'X'] };
    expect(problemsIn(sheet('discus', [notStarted]))).toEqual(['0 AFTER_DNS', '2 GAP']);
    expect(problemsIn(sheet('discus', [{ ...notStarted, series: ['r', 'X'] }]))).toEqual([
      '0 AFTER_DNS',
      '1 AFTER_RETIRING',
    ]);
    expect(problemsIn(sheet('discus', [{ ...notStarted, series: [null] }]))).toEqual([]);
  });

  it('comes after the standard was reached', () => {
    const qualification = { stage: 'qualification', qualifying: { standard: '60.00' } };
    expect(alone(['59.99', '60.00', 'X'], qualification)).toEqual(['2 AFTER_STANDARD']);
    expect(alone(['60.00', '-', 'r'], qualification)).toEqual(['1 AFTER_STANDARD', '2 AFTER_STANDARD']);
    expect(alone(['X', 'X', '60.00'], qualification)).toEqual([]);
  });
});

describe('a trial after a cut', () => {
  it('is only of those who are through', () => {
    expect(nine({ series: ['50.00', 'X', 'X', '50.00', '-', 'r'] })).toEqual([
      '3 AFTER_CUT',
      '4 AFTER_CUT',
      '5 AFTER_CUT',
    ]);
    expect(nine({ series: ['50.00', 'X', '52.00', '50.00'] })).toEqual([]);
    expect(nine({ series: ['50.00', 'X', 'X', '50.00'] }, { rules: 'NFHS' })).toEqual([]);
    expect(nine({ series: ['50.00', 'X', 'X', '50.00'] }, { plan: { cuts: [] } })).toEqual([]);
    expect(
      nine(
        { series: ['X', 'X', 'X', '50.00'] },
        { rules: 'NFHS', plan: { cuts: [{ after: 3, through: 8 }] } },
      ),
    ).toEqual(['3 AFTER_CUT']);
  });

  it('may be of those who were admitted', () => {
    const admitted = [{ bib: 'last', after: 3, by: 'R' }];
    expect(nine({ series: ['50.00', 'X', 'X', '50.00'] }, { admitted })).toEqual([]);
  });

  it('is looked for after each cut', () => {
    const plan = {
      cuts: [
        { after: 1, through: 8 },
        { after: 2, through: 1 },
      ],
    };
    expect(nine({ series: ['60.00', 'X', 'X'] }, { plan })).toEqual([
      ...[1, 2, 3, 4, 5, 6, 7].map((at) => `/competitors/${at}/series/2 AFTER_CUT`),
      '/competitors/8/series/1 AFTER_CUT',
      '/competitors/8/series/2 AFTER_CUT',
    ]);
  });

  it('is not of a guest, but before the first cut', () => {
    const guest = { guest: true, series: ['70.00', '70.00', '70.00', 'X'] };
    expect(nine(guest)).toEqual(['3 AFTER_CUT']);
    expect(nine(guest, { plan: { cuts: [] } })).toEqual([]);
    expect(nine(guest, { plan: { cuts: [{ after: 4, through: 8 }] } })).toEqual([]);
  });

  it('may be of somebody who was disqualified after it', () => {
    expect(nine({ status: 'DQ', series: ['70.00', 'X', 'X', 'X'] })).toEqual([]);
    expect(nine({ status: 'DQ', series: ['50.00', 'X', 'X', 'X'] })).toEqual(['3 AFTER_CUT']);
  });

  it('is reported beside other problems that do not touch the cut', () => {
    const series = ['50.00', 'X', 'X', '50.00', '5'];
    expect(nine({ series, colour: 1 }, { rulez: 1 })).toEqual([
      '/rulez UNKNOWN_KEY',
      '3 AFTER_CUT',
      '4 CELL',
      '/competitors/0/colour UNKNOWN_KEY',
    ]);
  });

  it('is not reported where what decides the cut cannot be read', () => {
    expect(nine({ series: ['50.0', 'X', 'X', '50.00'] })).toEqual(['0 CELL']);
    expect(nine({ series: ['50.00', 'X', 'X', '50.00'] }, { plan: { cutTies: 'x' } })).toEqual([
      '/plan/cutTies UNKNOWN_VALUE',
    ]);
    expect(
      nine({ series: ['50.00', 'X', 'X', '50.00'] }, { admitted: [{ bib: 'last', after: 3, by: 'x' }] }),
    ).toContain('/admitted/0/by UNKNOWN_VALUE');
  });
});
