import type { RecordClaim } from '../desk-store.js';
import { recordsToSee } from './claims.js';
import type { KeptCompetition } from './database.js';

const claim = (change: Partial<RecordClaim>): RecordClaim => ({
  kind: 'CLUB_RECORD',
  relation: 'BETTER',
  bib: '12',
  mark: '48.62',
  before: '48.00',
  of: 'Tarnwick Harriers',
  ...change,
});

const kept = (marks: readonly number[]): KeptCompetition =>
  ({
    id: 'one',
    head: { unit: 'CM' },
    items: marks.map((mark, at) => ({ sequence: at + 1, hold: null, entry: { kind: 'attempt', mark } })),
  }) as unknown as KeptCompetition;

describe('records that the next call waits for', () => {
  it('are those of a club or a meet that were beaten or equalled', () => {
    const claims = [
      claim({}),
      claim({ kind: 'MEET_RECORD', relation: 'EQUAL' }),
      claim({ kind: 'PERSONAL_BEST' }),
      claim({ relation: 'FIRST', before: null }),
    ];
    expect(recordsToSee(claims, kept([]), new Set())).toEqual(claims.slice(0, 2));
  });

  it('are not made of what this competition alone has begun', () => {
    expect(recordsToSee([claim({ before: '47.00' })], kept([4700]), new Set())).toEqual([]);
  });

  it('go on to be seen once one from outside has been beaten here', () => {
    const known = new Set<string>();
    expect(recordsToSee([claim({ mark: '49.00' })], kept([]), known)).toHaveLength(1);
    expect(recordsToSee([claim({ before: '49.00' })], kept([4900]), known)).toHaveLength(1);
  });
});
