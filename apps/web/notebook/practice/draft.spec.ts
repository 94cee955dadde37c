import {
  EMPTY_DRAFT,
  isUnreadable,
  markOf,
  noted,
  throwInput,
  type Draft,
  type Rest,
  type ThrowOf,
} from './draft.js';

const OF: ThrowOf = {
  athleteId: 'A',
  thrown: { event: 'DISCUS', variant: 'FULL_TURN', implementGrams: 1000, effortPercent: 90 },
  checklist: { id: 'c', event: 'DISCUS', name: 'Today', version: 2, codes: ['DT-04', 'DT-14', 'DT-25'] },
  codes: ['DT-04', 'DT-14', 'DT-25'],
  round: 3,
  ids: { throwId: 't', observationId: 'o' },
  nowMs: 0,
};

const observed = (draft: Draft, rest: Rest) =>
  throwInput(draft, rest, OF).observation as { scope: string[]; marks: object[]; markKnown: boolean } | null;

describe('a throw that is written down', () => {
  it('says of every point that it was there, that it was not, or nothing', () => {
    const draft = noted(noted(EMPTY_DRAFT, 'DT-14', 2), 'DT-25', 'unseen');
    expect(observed(draft, 'not-there')).toMatchObject({
      scope: ['DT-04', 'DT-14'],
      marks: [{ code: 'DT-14', severity: 2 }],
      checklist: null,
    });
    expect(observed(draft, 'unseen')).toMatchObject({ scope: ['DT-14'] });
    expect(observed(EMPTY_DRAFT, 'not-there')).toMatchObject({
      scope: OF.codes,
      marks: [],
      checklist: { name: 'Today', version: 2 },
    });
    expect(observed(EMPTY_DRAFT, 'unseen')).toBeNull();
  });

  it('takes a note back when it is touched again', () => {
    expect(noted(noted(EMPTY_DRAFT, 'DT-14', 2), 'DT-14', 2).seen).toEqual({});
  });

  it('knows whether the mark was known when the first point was noted', () => {
    const before = noted(EMPTY_DRAFT, 'DT-14', 0);
    expect(observed({ ...before, mark: '3120' }, 'unseen')?.markKnown).toBe(false);
    expect(observed(noted({ ...EMPTY_DRAFT, mark: '3120' }, 'DT-14', 0), 'unseen')?.markKnown).toBe(true);
  });

  it.each([
    ['3120', '31.20', false],
    ['31,20', '31.20', false],
    ['', null, false],
    ['far', null, true],
    ['x', null, true],
  ])('reads %s as %s', (mark, kept, unreadable) => {
    expect(markOf({ ...EMPTY_DRAFT, mark })).toBe(kept);
    expect(isUnreadable({ ...EMPTY_DRAFT, mark })).toBe(unreadable);
  });
});
