import fc from 'fast-check';
import { clashesOf } from './clashes.js';
import { delaySlot } from './delay.js';
import { MINUTE_MS, reportAt, type Slot, type Timetable } from './timetable.js';
import { timetableProblems } from './timetable-problems.js';

/*
 * That one cage serves discus and hammer, and that sectors do not overlap with other venues in use, is in USATF
 * guidance on safety at throwing events (read in part). How a delay moves on: common practice, no published source.
 */

const NINE = Date.UTC(2026, 5, 6, 9);

function slot(competition: string, facility: string, minute: number, minutes = 60): Slot {
  return {
    competitions: [competition],
    facility,
    startsAt: NINE + minute * MINUTE_MS,
    minutes,
    reportMinutes: 30,
  };
}

const GROUNDS = {
  facilities: ['cage', 'hammer circle', 'javelin', 'pit'].map((key) => ({ key, name: key })),
  sharedGrounds: [
    { facilities: ['cage', 'hammer circle'], reason: 'one cage' },
    { facilities: ['javelin', 'pit'], reason: 'the sector lies over the pit' },
  ],
} as const;

const table = (...slots: Slot[]): Timetable => ({ ...GROUNDS, slots });
const minutesOf = ({ slots }: Timetable): number[] =>
  slots.map(({ startsAt }) => (startsAt - NINE) / MINUTE_MS);

describe('clashes', () => {
  it('are two at once on one ground, or on grounds that are shared', () => {
    const day = table(
      slot('discus', 'cage', 0),
      slot('discus boys', 'cage', 30),
      slot('hammer', 'hammer circle', 59),
      slot('long jump', 'pit', 0),
    );
    expect(clashesOf(day)).toEqual([
      { slots: [0, 1], kind: 'ground', reason: null, competitors: [] },
      { slots: [0, 2], kind: 'ground', reason: 'one cage', competitors: [] },
      { slots: [1, 2], kind: 'ground', reason: 'one cage', competitors: [] },
    ]);
  });

  it('are not two that follow each other to the minute', () => {
    expect(clashesOf(table(slot('discus', 'cage', 0), slot('hammer', 'hammer circle', 60)))).toEqual([]);
  });

  it('are also competitors who are in both', () => {
    const entered = (competition: string): string[] =>
      competition === 'discus' ? ['ida', 'bo'] : ['bo', 'una'];
    const day = table(slot('discus', 'cage', 0), slot('long jump', 'pit', 30));
    expect(clashesOf(day, entered)).toEqual([
      { slots: [0, 1], kind: 'competitors', reason: null, competitors: ['bo'] },
    ]);
  });
});

describe('a delay', () => {
  it('moves what follows on the same and on shared ground, and nothing else', () => {
    const day = table(
      slot('discus', 'cage', 0),
      slot('hammer', 'hammer circle', 60),
      slot('discus boys', 'cage', 120),
      slot('long jump', 'pit', 60),
    );
    expect(minutesOf(delaySlot(day, 0, 20))).toEqual([20, 80, 140, 60]);
  });

  it('is taken up by a gap', () => {
    const day = table(slot('discus', 'cage', 0), slot('hammer', 'hammer circle', 70));
    expect(minutesOf(delaySlot(day, 0, 10))).toEqual([10, 70]);
    expect(minutesOf(delaySlot(day, 0, 15))).toEqual([15, 75]);
  });

  it('leaves those together that were planned at once', () => {
    const day = table(slot('javelin', 'javelin', 0), slot('javelin girls', 'javelin', 0));
    expect(minutesOf(delaySlot(day, 0, 15))).toEqual([15, 0]);
  });

  it('moves the time to report with the start', () => {
    const [moved] = delaySlot(table(slot('discus', 'cage', 0)), 0, 15).slots;
    expect(reportAt(moved!)).toBe(NINE - 15 * MINUTE_MS);
  });

  it.each([0, -5, 1.5])('of %d minutes is none', (minutes) => {
    expect(() => delaySlot(table(slot('discus', 'cage', 0)), 0, minutes)).toThrow(RangeError);
  });

  it('never moves anything forward, makes no new clash on the ground, and leaves other grounds alone', () => {
    const anySlot = fc
      .tuple(
        fc.constantFrom('cage', 'hammer circle', 'javelin', 'pit'),
        fc.nat(40),
        fc.integer({ min: 1, max: 12 }),
      )
      .map(([facility, at, length]) => slot(`${facility} ${at}`, facility, at * 10, length * 10));
    let moved = 0;
    fc.assert(
      fc.property(
        fc.array(anySlot, { minLength: 1, maxLength: 8 }).map((slots) => table(...slots)),
        fc.nat(7),
        fc.integer({ min: 1, max: 90 }),
        (day, which, minutes) => {
          const position = which % day.slots.length;
          const after = delaySlot(day, position, minutes);
          const pairs = (timetable: Timetable): string[] =>
            clashesOf(timetable).map(({ slots }) => slots.join(' and '));
          const before = new Set(pairs(day));
          expect(pairs(after).filter((pair) => !before.has(pair))).toEqual([]);
          after.slots.forEach(({ startsAt }, at) => {
            expect(startsAt).toBeGreaterThanOrEqual(day.slots[at]!.startsAt);
            if (at !== position && startsAt > day.slots[at]!.startsAt) moved++;
          });
        },
      ),
      { numRuns: 2000 },
    );
    expect(moved).toBeGreaterThan(100);
  });
});

describe('a timetable', () => {
  it('that names everything once has no problems', () => {
    expect(timetableProblems(table(slot('discus', 'cage', 0), slot('hammer', 'hammer circle', 0)))).toEqual(
      [],
    );
  });

  it('is told every fault with its place', () => {
    const day: Timetable = {
      facilities: [...GROUNDS.facilities, { key: 'pit', name: 'second pit' }],
      sharedGrounds: [
        { facilities: ['cage', 'moon'], reason: 'far' },
        { facilities: ['pit', 'pit'], reason: 'itself' },
      ],
      slots: [
        slot('discus', 'moon', 0),
        slot('discus', 'cage', 60),
        { ...slot('shot', 'pit', 0), competitions: [] },
      ],
    };
    expect(timetableProblems(day)).toEqual([
      { code: 'FACILITY_TWICE', path: ['facilities', 4, 'key'] },
      { code: 'UNKNOWN_FACILITY', path: ['sharedGrounds', 0, 'facilities'] },
      { code: 'SHARED_WITH_ITSELF', path: ['sharedGrounds', 1, 'facilities'] },
      { code: 'UNKNOWN_FACILITY', path: ['slots', 0, 'facility'] },
      { code: 'SLOT_TWICE', path: ['slots', 1, 'competitions'] },
      { code: 'SLOT_EMPTY', path: ['slots', 2, 'competitions'] },
    ]);
  });
});
