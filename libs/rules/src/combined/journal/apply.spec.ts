import { COMBINED_TABLES } from '../combined-tables.js';
import { combinedPoints } from '../count-combined.js';
import { applyCombined, restoreCombined } from './apply.js';
import { componentProgress, isComplete } from './complete.js';
import type { CombinedBody, CombinedEntry, CombinedPerformance } from './entry.js';
import { combinedSentence, combinedWindSentence, meanWindText } from './sentence.js';
import { combinedCardOf, standingRows, standingStages } from './standing.js';
import type { CombinedEventState, CombinedItem, CombinedSetup, LinkedComponent } from './state.js';

const WIND_RULE = { meanTenths: 20, eachTenths: null };

function setupOf(changes: Partial<CombinedSetup> = {}): CombinedSetup {
  return {
    ...{ rules: 'WA', edition: '2024-01', table: COMBINED_TABLES.heptathlon, ties: 'stay' },
    entrants: ['1', '2', '3'].map((bib) => ({ key: `e${bib}`, bib, guest: false })),
    linked: new Map(),
    ...changes,
  };
}

const time = (hundredths: number, wind: number | 'NWI' | null = null): CombinedPerformance => ({
  ...{ outcome: 'valid', hundredths, timing: 'electronic', wind },
});
const mark = (hundredths: number, wind: number | null = null): CombinedPerformance => ({
  ...{ outcome: 'valid', hundredths, timing: null, wind },
});
const none = (outcome: CombinedPerformance['outcome']): CombinedPerformance => ({
  ...{ outcome, hundredths: null, timing: null, wind: null },
});

/** A combined event that remembers its state and numbers its entries. */
class Event {
  state: CombinedEventState;
  private next = 1;

  constructor(
    setup: Partial<CombinedSetup> = {},
    readonly journal: readonly CombinedItem[] = [],
  ) {
    this.state = restoreCombined(setupOf(setup), journal);
  }

  enter(body: CombinedBody, by: Partial<CombinedEntry> = {}): ReturnType<typeof applyCombined>['verdict'] {
    const entry = { id: `n${this.next}`, by: 'referee', actor: 'R', ...body, ...by } as CombinedEntry;
    const { state, verdict } = applyCombined(this.state, entry);
    if (verdict.standing !== 'refused') this.next += 1;
    this.state = state;
    return verdict;
  }

  run(bib: string, event: '100mh' | '200m' | '800m', performance: CombinedPerformance, by = {}) {
    return this.enter({ kind: 'result', entrant: `e${bib}`, event, ...performance }, by);
  }

  field(
    bib: string,
    event: 'high-jump' | 'shot' | 'long-jump' | 'javelin',
    performance: CombinedPerformance,
  ) {
    return this.enter({ kind: 'result', entrant: `e${bib}`, event, ...performance });
  }

  rows() {
    return standingRows(this.state, WIND_RULE);
  }
}

const accepted = { standing: 'accepted', notices: [] };
const held = (code: string): object => ({ standing: 'held', hold: expect.objectContaining({ code }) });
const refused = (code: string, field: string | null = null): object => ({
  standing: 'refused',
  refusal: expect.objectContaining({ code, field }),
});

describe('times and marks of a combined event', () => {
  it('come in in any order and are worth what the tables say', () => {
    const event = new Event();
    expect(event.run('1', '100mh', time(1269, 5))).toEqual(accepted);
    expect(event.run('2', '200m', time(2365, 'NWI'))).toEqual({
      standing: 'accepted',
      notices: ['EARLIER_EVENT_OPEN'],
    });
    expect(event.run('2', '100mh', time(1285))).toEqual({ standing: 'accepted', notices: ['WIND_TO_COME'] });
    const rows = event.rows();
    expect(rows.map(({ entrant, place, total }) => [entrant, place, total])).toEqual([
      ['e2', 1, combinedPoints('W', '100mh', 1285)! + combinedPoints('W', '200m', 2365)!],
      ['e1', 2, combinedPoints('W', '100mh', 1269)],
      ['e3', null, 0],
    ]);
    expect(rows[2]).toMatchObject({ isWaiting: true, status: null, points: Array(7).fill(null) });
    expect(componentProgress(event.state, '100mh')).toBe('running');
    expect(componentProgress(event.state, 'shot')).toBe('to come');
  });

  it('by hand are worth what the tables add, and stand so in a sheet beside electronic ones', () => {
    const event = new Event();
    event.run('1', '100mh', { ...time(1260), timing: 'hand' });
    expect(event.rows()[0]).toMatchObject({ total: combinedPoints('W', '100mh', 1284) });
    const described = (): { name: null; club: null } => ({ name: null, club: null });
    const byHand = combinedCardOf(event.state, 'heptathlon', 'hand', described);
    expect([byHand.timing, byHand.rows[0]?.marks[0]]).toEqual(['hand', 1260]);
    event.run('2', '100mh', time(1285));
    const mixed = combinedCardOf(event.state, 'heptathlon', 'hand', described);
    expect([mixed.timing, mixed.rows[0]?.marks[0]]).toEqual(['electronic', 1284]);
  });

  it.each<[string, CombinedBody, string, string | null]>([
    [
      'of nobody',
      { kind: 'result', entrant: 'e9', event: '100mh', ...time(1300) },
      'UNKNOWN_ENTRANT',
      'entrant',
    ],
    [
      'of another programme',
      { kind: 'result', entrant: 'e1', event: '1500m', ...time(30000) },
      'UNKNOWN_EVENT',
      'event',
    ],
    [
      'without a time',
      { kind: 'result', entrant: 'e1', event: '100mh', ...time(1), hundredths: null, timing: null },
      'MARK_MISSING',
      'hundredths',
    ],
    [
      'with a time of who did not finish',
      { kind: 'result', entrant: 'e1', event: '100mh', ...none('DNF'), hundredths: 1300 },
      'MARK_NOT_EXPECTED',
      'hundredths',
    ],
    [
      'that were not timed',
      { kind: 'result', entrant: 'e1', event: '100mh', ...mark(1300) },
      'MARK_NOT_EXPECTED',
      'timing',
    ],
    [
      'of a put that was timed',
      { kind: 'result', entrant: 'e1', event: 'shot', ...time(1300) },
      'MARK_NOT_EXPECTED',
      'timing',
    ],
    [
      'of no size',
      { kind: 'result', entrant: 'e1', event: '100mh', ...time(0) },
      'MARK_OUT_OF_RANGE',
      'hundredths',
    ],
    [
      'with wind over 800 m',
      { kind: 'result', entrant: 'e1', event: '800m', ...time(13000, 3) },
      'WIND_NOT_MEASURED',
      'wind',
    ],
    [
      'with a gale',
      { kind: 'result', entrant: 'e1', event: '100mh', ...time(1300, 1000) },
      'WIND_OUT_OF_RANGE',
      'wind',
    ],
    [
      'with the wind of no time',
      { kind: 'result', entrant: 'e1', event: '100mh', ...none('DNF'), wind: 3 },
      'WIND_NOT_EXPECTED',
      'wind',
    ],
    [
      'without a mark in a race',
      { kind: 'result', entrant: 'e1', event: '100mh', ...none('NM') },
      'OUTCOME_NOT_OF_EVENT',
      'outcome',
    ],
    [
      'not finished in a field event',
      { kind: 'result', entrant: 'e1', event: 'shot', ...none('DNF') },
      'OUTCOME_NOT_OF_EVENT',
      'outcome',
    ],
  ])('%s can never be right', (_what, body, code, field) => {
    const event = new Event();
    const before = event.state;
    expect(event.enter(body)).toEqual(refused(code, field));
    expect(event.state).toBe(before);
  });

  it('are not entered where a competition counts', () => {
    const linked = new Map([['shot' as const, { isOfficial: false, results: new Map() }]]);
    expect(new Event({ linked }).field('1', 'shot', mark(1300))).toEqual(
      refused('COMPONENT_LINKED', 'event'),
    );
  });

  it('are said to be far outside when nobody ever did so', () => {
    expect(new Event().run('1', '100mh', time(1000, 0))).toEqual({
      standing: 'accepted',
      notices: ['FAR_OUTSIDE'],
    });
  });
});

describe('who does not start', () => {
  it('an event is out of the rest: a later time is held, and counts when the DNS is corrected', () => {
    const event = new Event();
    event.run('1', '100mh', none('DNS'));
    expect(event.run('1', '200m', time(2400, 0))).toEqual(held('OUT_OF_EVENT'));
    expect(event.rows().at(-1)).toMatchObject({ entrant: 'e1', status: 'DNS', place: null, total: 0 });
    expect(event.state.questions).toEqual([{ entry: 'n2', hold: 'OUT_OF_EVENT' }]);
    const ruling = { kind: 'ruling', entry: 'n2', reason: 'seen' } as const;
    expect(event.enter({ ...ruling, decision: 'count' })).toEqual(refused('NOT_BY_RULING', 'decision'));
    event.enter({ kind: 'correction', entry: 'n1', reason: 'wrong bib', ...time(1400, 0) });
    expect(event.state.questions).toEqual([]);
    expect(event.rows()[0]).toMatchObject({
      entrant: 'e1',
      total: combinedPoints('W', '100mh', 1400)! + combinedPoints('W', '200m', 2400)!,
    });
  });

  it('may be dismissed with the later time', () => {
    const event = new Event();
    event.run('1', '100mh', none('DNS'));
    event.run('1', '200m', time(2400, 0));
    event.enter({ kind: 'ruling', entry: 'n2', decision: 'dismiss', reason: 'another runner' });
    expect(event.state.questions).toEqual([]);
    expect(event.state.entered.get('n2')?.standing).toBe('dismissed');
  });

  it('a race that is not finished is worth nothing and ends nothing', () => {
    const event = new Event();
    event.run('1', '100mh', none('DNF'));
    expect(event.run('1', '200m', time(2400, 0))).toMatchObject({ standing: 'accepted' });
    expect(event.rows()[0]).toMatchObject({ entrant: 'e1', place: 1, status: null });
  });

  it('at all, or gives up, is out with the points so far', () => {
    const event = new Event();
    event.run('1', '100mh', time(1300, 0));
    const start = { kind: 'start', entrant: 'e1' } as const;
    expect(event.enter({ ...start, status: 'DNS', from: null })).toEqual(refused('HAS_RESULTS', 'status'));
    expect(event.enter({ ...start, status: 'DNF', from: '100mh' })).toEqual(refused('HAS_RESULTS', 'from'));
    expect(event.enter({ ...start, status: 'DNS', from: '200m' })).toEqual(refused('UNKNOWN_EVENT', 'from'));
    expect(event.enter({ ...start, status: 'DNF', from: 'shot' })).toEqual(accepted);
    expect(event.enter({ ...start, status: 'DNF', from: 'shot' })).toEqual(refused('ALREADY_SO', 'status'));
    expect(event.rows().at(-1)).toMatchObject({ status: 'DNF', total: combinedPoints('W', '100mh', 1300) });
    expect(event.field('1', 'high-jump', mark(160))).toEqual(accepted);
    expect(event.field('1', 'shot', mark(1200))).toEqual(held('OUT_OF_EVENT'));
    event.enter({ ...start, status: 'started', from: null });
    expect(event.state.questions).toEqual([]);
    expect(event.rows()[0]).toMatchObject({ entrant: 'e1', place: 1 });
  });
});

describe('a second result in the same event', () => {
  it('is held, and the referee says which counts', () => {
    const event = new Event();
    event.run('1', '100mh', time(1300, 0));
    expect(event.run('1', '100mh', time(1350, 0))).toEqual(held('RESULT_TAKEN'));
    event.enter({ kind: 'ruling', entry: 'n2', decision: 'count', reason: 'photo' });
    expect([...event.state.entered.values()].map(({ standing }) => standing)).toEqual([
      'displaced',
      'counts',
    ]);
    const again = { kind: 'ruling', entry: 'n2', decision: 'dismiss', reason: 'photo again' } as const;
    expect(event.enter(again)).toEqual(accepted);
    expect([...event.state.entered.values()].map(({ standing }) => standing)).toEqual([
      'counts',
      'dismissed',
    ]);
  });
});

describe('changes', () => {
  const OFFICIAL = { by: 'official', actor: 'O' } as const;

  it('by the official who entered it count until the next event has begun', () => {
    const event = new Event();
    event.run('1', '100mh', time(1300, 0), OFFICIAL);
    const correction = { kind: 'correction', entry: 'n1', reason: 'misread' } as const;
    expect(event.enter({ ...correction, ...time(1310, 0) }, OFFICIAL)).toEqual(accepted);
    expect(event.enter({ ...correction, ...time(1320, 0) }, { ...OFFICIAL, actor: 'P' })).toEqual(
      held('AWAITS_REFEREE'),
    );
    event.field('2', 'high-jump', mark(160));
    expect(event.enter({ ...correction, ...time(1330, 0) }, OFFICIAL)).toEqual(held('AWAITS_REFEREE'));
    event.enter({ kind: 'ruling', entry: 'n5', decision: 'count', reason: 'read again' });
    event.enter({ kind: 'ruling', entry: 'n3', decision: 'dismiss', reason: 'not his' });
    expect(event.state.entered.get('n1')?.performance.hundredths).toBe(1330);
    expect(event.state.questions).toEqual([]);
  });

  it('name something in force, and say why', () => {
    const event = new Event();
    event.run('1', '100mh', time(1300, 0));
    const reversal = { kind: 'reversal', entry: 'n1', reason: 'wrong bib' } as const;
    expect(event.enter({ ...reversal, entry: 'n9' })).toEqual(refused('UNKNOWN_ENTRY', 'entry'));
    expect(event.enter({ ...reversal, reason: ' ' })).toEqual(refused('REASON_MISSING', 'reason'));
    expect(event.enter(reversal)).toEqual(accepted);
    expect(event.rows()[0]).toMatchObject({ entrant: 'e1', isWaiting: true });
    expect(event.enter(reversal)).toEqual(refused('NOT_IN_FORCE', 'entry'));
    const correction = { kind: 'correction', entry: 'n2', reason: 'x', ...time(1300, 0) } as const;
    expect(event.enter(correction)).toEqual(refused('WRONG_KIND_OF_ENTRY', 'entry'));
    const ruling = { kind: 'ruling', entry: 'n2', decision: 'count', reason: 'x' } as const;
    expect(event.enter(ruling)).toEqual(refused('NO_QUESTION', 'entry'));
    expect(event.enter(ruling, OFFICIAL)).toEqual(refused('NOT_ALLOWED'));
    expect(event.run('1', '100mh', time(1300, 0), { id: 'n1' })).toEqual(refused('ID_REUSED', 'id'));
  });

  it('that were taken back are in effect again when the taking back is taken back', () => {
    const event = new Event();
    event.run('1', '100mh', time(1300, 0));
    event.enter({ kind: 'reversal', entry: 'n1', reason: 'wrong bib' });
    event.enter({ kind: 'reversal', entry: 'n2', reason: 'it was right' });
    expect(event.state.entered.get('n1')?.standing).toBe('counts');
  });
});

describe('a linked competition', () => {
  const linkedTo = (results: LinkedComponent['results'], isOfficial = false) =>
    new Map([['high-jump' as const, { isOfficial, results }]]);

  it('counts as it stands, and its DNS ends the event', () => {
    const results = new Map([
      ['e1', mark(180)],
      ['e2', none('DNS')],
      ['e3', none('NM')],
    ]);
    const event = new Event({ linked: linkedTo(results) });
    for (const bib of ['1', '2', '3']) event.run(bib, '100mh', time(1300, 0));
    expect(event.run('2', '200m', time(2400, 0))).toEqual(held('OUT_OF_EVENT'));
    expect(event.rows().map(({ entrant, place, status }) => [entrant, place, status])).toEqual([
      ['e1', 1, null],
      ['e3', 2, null],
      ['e2', null, 'DNF'],
    ]);
    expect(event.rows()[0]?.points.slice(0, 2)).toEqual([
      combinedPoints('W', '100mh', 1300),
      combinedPoints('W', 'high-jump', 180),
    ]);
    expect(componentProgress(event.state, 'high-jump')).toBe('running');
    const official = new Event({ linked: linkedTo(results, true) }, event.state.journal);
    expect(componentProgress(official.state, 'high-jump')).toBe('complete');
  });
});

describe('the end', () => {
  function whole(): Event {
    const event = new Event({ entrants: [{ key: 'e1', bib: '1', guest: false }] });
    event.run('1', '100mh', time(1404, 14));
    event.field('1', 'high-jump', mark(177));
    event.field('1', 'shot', mark(1181));
    event.run('1', '200m', time(2561, 20));
    event.field('1', 'long-jump', mark(599, 24));
    event.field('1', 'javelin', mark(3568));
    return event;
  }

  it('is signed when all is there, and reopened with a reason', () => {
    const event = whole();
    expect(isComplete(event.state)).toBe(false);
    const sign = { kind: 'sign-off', incomplete: null } as const;
    expect(event.enter(sign)).toEqual(refused('NOT_COMPLETE', 'incomplete'));
    event.run('1', '800m', time(13390));
    expect(event.enter(sign)).toEqual(accepted);
    expect(event.enter(sign)).toEqual(refused('ALREADY_SO'));
    const out = { kind: 'start', entrant: 'e1', status: 'DNS', from: null } as const;
    expect(event.enter(out)).toEqual(refused('RESULT_OFFICIAL'));
    const late = { kind: 'correction', entry: 'n1', reason: 'photo', ...time(1405, 14) } as const;
    expect(event.enter(late)).toEqual(held('SIGNED_OFF'));
    expect(event.enter({ kind: 'reopening', reason: 'photo' })).toEqual(accepted);
    event.enter({ kind: 'ruling', entry: 'n9', decision: 'count', reason: 'photo' });
    expect(event.state.signedOff).toBe(false);
    expect(event.state.entered.get('n1')?.performance.hundredths).toBe(1405);
  });

  it('has totals after every event, and a mean of the winds', () => {
    const event = whole();
    expect(standingStages(event.state).map(({ rows }) => rows[0]?.total)).toEqual(
      event
        .rows()[0]
        ?.points.slice(0, 6)
        .reduce<number[]>((sums, one) => [...sums, (sums.at(-1) ?? 0) + one!], []),
    );
    // +1.4, +2.0, +2.4 is a real case that counted for records.
    const { wind } = event.rows()[0]!;
    expect(wind.legal).toBe(true);
    expect(meanWindText(wind.meanTenths!)).toBe('+1.93');
    expect(combinedWindSentence(wind, WIND_RULE)).toBe('The mean wind of +1.93 m/s is within +2.0');
  });
});

describe('every place', () => {
  it('says why', () => {
    const guest = { key: 'e4', bib: '4', guest: true };
    const event = new Event({ ties: 'more events', entrants: [...setupOf().entrants, guest] });
    event.run('1', '100mh', time(1300, 0));
    event.run('2', '100mh', time(1350, 0));
    event.run('4', '100mh', time(1250, 0));
    event.enter({ kind: 'start', entrant: 'e3', status: 'DNS', from: null });
    const rows = event.rows();
    const [first, second] = rows;
    expect(rows.map((row, at) => combinedSentence(row, rows[at - 1] ?? null))).toEqual([
      `1st: ${first!.total} points, the most`,
      `2nd: ${second!.total} points, ${first!.total - second!.total} behind`,
      'Did not start',
      `A guest, outside the places: ${combinedPoints('W', '100mh', 1250)} points`,
    ]);
  });
});
