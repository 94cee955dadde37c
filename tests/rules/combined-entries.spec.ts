import { combinedPoints, componentProgress, combinedCardOf, type CombinedBody } from '#rules';
import { time, mark, none, CombinedEvent, accepted, held, refused } from './support/combined-event.js';

describe('times and marks of a combined event', () => {
  it('come in in any order and are worth what the tables say', () => {
    const event = new CombinedEvent();
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
    const event = new CombinedEvent();
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
    const event = new CombinedEvent();
    const before = event.state;
    expect(event.enter(body)).toEqual(refused(code, field));
    expect(event.state).toBe(before);
  });

  it('are not entered where a competition counts', () => {
    const linked = new Map([['shot' as const, { isOfficial: false, results: new Map() }]]);
    expect(new CombinedEvent({ linked }).field('1', 'shot', mark(1300))).toEqual(
      refused('COMPONENT_LINKED', 'event'),
    );
  });

  it('are said to be far outside when nobody ever did so', () => {
    expect(new CombinedEvent().run('1', '100mh', time(1000, 0))).toEqual({
      standing: 'accepted',
      notices: ['FAR_OUTSIDE'],
    });
  });
});

describe('who does not start', () => {
  it('an event is out of the rest: a later time is held, and counts when the DNS is corrected', () => {
    const event = new CombinedEvent();
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
    const event = new CombinedEvent();
    event.run('1', '100mh', none('DNS'));
    event.run('1', '200m', time(2400, 0));
    event.enter({ kind: 'ruling', entry: 'n2', decision: 'dismiss', reason: 'another runner' });
    expect(event.state.questions).toEqual([]);
    expect(event.state.entered.get('n2')?.standing).toBe('dismissed');
  });

  it('a race that is not finished is worth nothing and ends nothing', () => {
    const event = new CombinedEvent();
    event.run('1', '100mh', none('DNF'));
    expect(event.run('1', '200m', time(2400, 0))).toMatchObject({ standing: 'accepted' });
    expect(event.rows()[0]).toMatchObject({ entrant: 'e1', place: 1, status: null });
  });

  it('at all, or gives up, is out with the points so far', () => {
    const event = new CombinedEvent();
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
    const event = new CombinedEvent();
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
    const event = new CombinedEvent();
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
    const event = new CombinedEvent();
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
    const event = new CombinedEvent();
    event.run('1', '100mh', time(1300, 0));
    event.enter({ kind: 'reversal', entry: 'n1', reason: 'wrong bib' });
    event.enter({ kind: 'reversal', entry: 'n2', reason: 'it was right' });
    expect(event.state.entered.get('n1')?.standing).toBe('counts');
  });
});
