import type { Grant } from './grant.js';
import { Identity } from './identity.js';

const MEET = 'meet';
const competition = { id: 'competition', meetId: MEET, callingGroupId: null };
const together = { ...competition, callingGroupId: 'group' };
const onGroup = (on: string, window: Partial<Grant> = {}) =>
  grant('official', on, { scope: 'calling-group', ...window });
const grant = (role: Grant['role'], on: string | null, window: Partial<Grant> = {}): Grant => ({
  role,
  on,
  from: null,
  until: null,
  ...window,
});

function holderOf(...grants: Grant[]): Identity {
  return new Identity('holder', 'organisation', grants, 'test', () => 1000);
}

describe('An identity', () => {
  it.each([
    ['nothing', holderOf(), null],
    ['an official of the competition', holderOf(grant('official', 'competition')), 'official'],
    ['an official of another', holderOf(grant('official', 'other')), null],
    ['an official of the meet’s id', holderOf(grant('official', MEET)), null],
    ['the referee of the meet', holderOf(grant('referee', MEET)), 'referee'],
    ['the director of the meet', holderOf(grant('director', MEET)), 'director'],
    [
      'director and official',
      holderOf(grant('official', 'competition'), grant('director', MEET)),
      'director',
    ],
    ['an administrator, who edits no results', holderOf(grant('admin', null)), null],
  ])('with %s acts on a competition as %3$s', (_what, identity, capacity) => {
    expect(identity.capacityIn(competition)).toBe(capacity);
  });

  it.each([
    ['of the group', together, 'group', 'official'],
    ['of another group', together, 'other', null],
    ['of a group that has the id of the competition', together, 'competition', null],
    ['of the group that the competition has left', competition, 'group', null],
    ['of a group that has the id of the meet', together, MEET, null],
  ] as const)('as an official %s acts on its competitions as %4$s', (_what, ref, on, capacity) => {
    expect(holderOf(onGroup(on)).capacityIn(ref)).toBe(capacity);
  });

  it('as an official of one competition has no right on the others of its group', () => {
    const identity = holderOf(grant('official', 'competition'));
    expect([identity.mayOfficiate(together), identity.mayOfficiate({ ...together, id: 'other' })]).toEqual([
      true,
      false,
    ]);
    expect([identity.mayCall('group'), identity.mayCall('competition')]).toEqual([false, false]);
  });

  it('loses a whole group when the window closes', () => {
    expect(holderOf(onGroup('group', { until: 999 })).capacityIn(together)).toBeNull();
  });

  it('has a right from the first second of its window to the last', () => {
    const at = (window: Partial<Grant>) => holderOf(grant('director', MEET, window)).mayDirect(MEET);
    expect([at({ from: 1000 }), at({ from: 1001 }), at({ until: 1000 }), at({ until: 999 })]).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });

  it('loses it at the moment the window closes', () => {
    let nowS = 10;
    const identity = new Identity(
      'holder',
      'o',
      [grant('official', 'competition', { until: 10 })],
      null,
      () => nowS,
    );
    expect(identity.requireCapacity(competition)).toBe('official');
    nowS = 11;
    expect(() => identity.requireCapacity(competition)).toThrow('Only an official');
  });

  it('is told apart from the public when something is refused', () => {
    const everybody = new Identity(null, 'organisation', []);
    expect(() => everybody.requireDirector(MEET)).toThrow(
      expect.objectContaining({ extensions: expect.objectContaining({ code: 'UNAUTHENTICATED' }) as object }),
    );
    expect(() => holderOf(grant('referee', MEET)).requireDirector(MEET)).toThrow(
      expect.objectContaining({ extensions: expect.objectContaining({ code: 'FORBIDDEN' }) as object }),
    );
  });

  it('of an administrator directs every meet', () => {
    expect(holderOf(grant('admin', null)).mayDirect(MEET)).toBe(true);
  });
});
