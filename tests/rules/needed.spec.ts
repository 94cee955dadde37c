import { neededFor, neededForAll, type Needed } from '#rules';
import { card } from './support/card.js';

type Field = Parameters<typeof card>[0];
type Parts = Parameters<typeof card>[1];

const needed = (bib: string, field: Field, parts?: Parts): Needed => neededFor(card(field, parts), bib)!;

/** In words: `2 for 57.03 (equal falls-short of B 57.02)`. */
const places = (bib: string, field: Field, parts?: Parts): string[] =>
  needed(bib, field, parts).places.map(({ place, mark, shared, rival }) => {
    const against = rival ? ` (equal ${rival.equalMark} to ${rival.bib} ${rival.best})` : '';
    return `${place}${shared ? '=' : ''} for ${mark}${against}`;
  });

describe('what is needed for a better place', () => {
  it('is one step more than the rival’s best, or as much when the next best marks are better', () => {
    const field = { A: '58.10 57.44', B: '57.02 50.00', C: '55.00 54.00' };
    expect(places('C', field)).toEqual([
      '2 for 57.02 (equal takes to B 57.02)',
      '1 for 58.11 (equal falls-short to A 58.10)',
    ]);
  });

  it('shares the place when every mark would be level', () => {
    expect(places('B', { A: '58.10 57.44', B: '57.44' })).toEqual(['1= for 58.10 (equal shares to A 58.10)']);
  });

  it('breaks a tie by a mark less than the best, when level on the best', () => {
    expect(places('A', { A: '61.20 59.00 X', B: '61.20 60.40' })).toEqual([
      '1 for 60.40 (equal takes to B 61.20)',
    ]);
    expect(places('A', { A: '61.20 X', B: '61.20 60.40' })).toEqual([
      '1= for 60.40 (equal takes to B 61.20)',
    ]);
  });

  it('is any mark at all for whoever has none, up to the places behind the others', () => {
    expect(places('B', { A: '58.10 50.00', B: 'X', C: 'X' })).toEqual([
      '2 for 0.01',
      '1 for 58.11 (equal falls-short to A 58.10)',
    ]);
    expect(places('A', { A: '' })).toEqual(['1 for 0.01']);
    expect(needed('B', { A: '58.10', B: 'X' }).place).toBeNull();
  });

  it('is nothing for who leads', () => {
    expect(needed('A', { A: '58.10', B: '57.00' })).toMatchObject({ place: 1, places: [] });
  });

  it('names only places that can be had: a tie leaves one empty', () => {
    expect(places('C', { A: '58.10 X', B: '58.10 X', C: '57.00 56.00' })).toEqual([
      '1 for 58.10 (equal takes to A 58.10)',
    ]);
  });

  it('says that an equal mark decides nothing where a valid trial was not measured', () => {
    expect(places('C', { A: '58.10 57.00', B: '58.10 O', C: '57.00 57.00' })).toEqual([
      '1= for 58.10 (equal undecidable to A 58.10)',
    ]);
    expect(places('C', { A: '58.10 57.00', B: 'X', C: '58.10 O' })).toEqual([]);
  });

  it('is any mark against who was never measured', () => {
    expect(places('B', { A: 'O', B: 'X' })).toEqual(['1 for 0.01 (equal null to A null)']);
    expect(places('B', { A: 'O', B: 'O', C: '50.00' })).toEqual([
      '1= for 50.00 (equal undecidable to C 50.00)',
    ]);
  });

  it('lies on the step in which the rule set measures', () => {
    const field = { A: '147-06.00 X', B: '140-00.00' };
    expect(places('B', field, { rules: 'NFHS', unit: 'qin' })).toEqual([
      '1 for 147-06.00 (equal takes to A 147-06.00)',
    ]);
    const level = { A: '147-06.00 141-00.00', B: '140-00.00' };
    expect(places('B', level, { rules: 'NFHS', unit: 'qin' })).toEqual([
      '1 for 147-07.00 (equal falls-short to A 147-06.00)',
    ]);
  });

  it('stops where no greater mark can be written', () => {
    expect(places('B', { A: '999.99 999.99', B: '50.00' })).toEqual([]);
  });
});

describe('the next trial', () => {
  const plan = { rounds: 4, cuts: [{ after: 2, through: 1 }] };
  const next = (bib: string, field: Field, parts: Parts = { plan }) => needed(bib, field, parts).next;
  const none = (barrier: string, dependsOnCut = false) => ({ round: null, barrier, dependsOnCut });

  it('is in the round after the last', () => {
    expect(next('A', { A: '50.00', B: '' })).toEqual({ round: 2, barrier: null, dependsOnCut: false });
  });

  it('does not come to who did not start, was disqualified, retired, or took all trials', () => {
    const field: Field = {
      A: ['', { status: 'DNS' }],
      B: ['50.00', { status: 'DQ' }],
      C: ['51.00', { guest: true }],
      D: '52.00 r',
      E: '53.00 X X X',
    };
    const barriers = neededForAll(card(field, { plan })).map((one) => one.next);
    expect(barriers).toEqual(
      ['DID_NOT_START', 'DISQUALIFIED', 'GUEST', 'RETIRED', 'NO_TRIAL_LEFT'].map((barrier) => none(barrier)),
    );
  });

  it('depends on the cut while trials of others can change it', () => {
    const open = { A: '50.00 49.00', B: '48.00', C: '47.00 X' };
    expect(next('A', open)).toEqual({ round: 3, barrier: null, dependsOnCut: true });
    expect(next('C', open)).toEqual(none('NOT_THROUGH', true));
    expect(next('B', open)).toEqual({ round: 2, barrier: null, dependsOnCut: false });
    const made: Field = { A: '50.00 49.00', B: 'r', C: '47.00 X', D: ['', { status: 'DQ' }] };
    expect(next('A', made)).toEqual({ round: 3, barrier: null, dependsOnCut: false });
    expect(next('C', made)).toEqual(none('NOT_THROUGH'));
  });

  it('does not come after the standard of a qualification, which also ends the wait for a cut', () => {
    const parts: Parts = { plan, stage: 'qualification', qualifying: { standard: 5000, fill: 2 } };
    expect(next('A', { A: '50.00', B: '' }, parts)).toEqual(none('STANDARD_REACHED'));
    expect(next('B', { A: '50.00', B: '49.00 48.00' }, parts)).toEqual(none('NOT_THROUGH'));
  });

  it('brings nothing when there is none', () => {
    expect(needed('A', { A: '50.00 r', B: '51.00' })).toMatchObject({
      bib: 'A',
      place: 2,
      places: [],
      cut: null,
      standard: null,
      fill: null,
    });
  });

  it('is of nobody who is not on the card', () => {
    expect(neededFor(card({ A: '' }), 'B')).toBeNull();
  });
});

describe('what is needed to go on', () => {
  const plan = { rounds: 6, cuts: [{ after: 3, through: 2 }] };

  it('through the cut is a mark that passes the last who is through, or draws level where that is enough', () => {
    const field = { A: '60.00 X', B: '55.00 54.00', C: '50.00 X' };
    expect(needed('C', field, { plan }).cut).toEqual({
      after: 3,
      isIn: false,
      mark: '55.01',
      rival: { bib: 'B', best: '55.00', equalIsEnough: false },
    });
    expect(needed('C', field, { plan, rules: 'NCAA' }).cut).toMatchObject({
      mark: '55.00',
      rival: { equalIsEnough: true },
    });
    expect(needed('B', field, { plan }).cut).toEqual({ after: 3, isIn: true, mark: null, rival: null });
  });

  it('through the cut is any mark while there is room', () => {
    expect(needed('C', { A: '60.00', B: 'X', C: 'X' }, { plan }).cut).toEqual({
      after: 3,
      isIn: false,
      mark: '0.01',
      rival: null,
    });
  });

  it('through the cut is any mark against who was never measured', () => {
    expect(needed('C', { A: '60.00', B: 'O', C: 'X' }, { plan }).cut).toMatchObject({
      mark: '0.01',
      rival: { bib: 'B', best: null, equalIsEnough: null },
    });
  });

  it('is of no cut once there is none ahead', () => {
    expect(needed('A', { A: '60.00 X X', B: '55.00 X X' }, { plan }).cut).toBeNull();
  });

  it('cannot be had where no greater mark can be written', () => {
    const field = { A: '999.99 999.99', B: '999.99 999.99', C: 'X' };
    expect(needed('C', field, { plan }).cut).toMatchObject({
      isIn: false,
      mark: null,
      rival: { equalIsEnough: false },
    });
  });

  it('from a qualification is the standard, or the place that fills it up', () => {
    const field = { A: '58.00', B: '57.00 X', C: '56.00 X' };
    const qualification = (fill: number): Parts => ({
      stage: 'qualification',
      qualifying: { standard: 5800, fill },
    });
    expect(needed('C', field, qualification(2))).toMatchObject({
      standard: '58.00',
      fill: { isIn: false, mark: '57.00', rival: { bib: 'B', best: '57.00', equalIsEnough: true } },
    });
    expect(needed('B', field, qualification(2)).fill).toEqual({ isIn: true, mark: null, rival: null });
    expect(needed('B', field, qualification(1)).fill).toBeNull();
    expect(needed('B', field, qualification(0)).fill).toBeNull();
  });

  it('from a qualification in inches is a standard that can be measured', () => {
    const parts: Parts = {
      rules: 'NFHS',
      unit: 'qin',
      stage: 'qualification',
      qualifying: { standard: 4 * 12 * 150 + 1, fill: 0 },
    };
    expect(needed('A', { A: '140-00.00' }, parts).standard).toBe('150-01.00');
  });
});
