import {
  combinedPoints,
  componentProgress,
  isCombinedComplete,
  combinedSentence,
  combinedWindSentence,
  meanWindText,
  standingStages,
  type LinkedComponent,
} from '#rules';
import {
  WIND_RULE,
  setupOf,
  time,
  mark,
  none,
  CombinedEvent,
  accepted,
  held,
  refused,
} from './support/combined-event.js';

describe('a linked competition', () => {
  const linkedTo = (results: LinkedComponent['results'], isOfficial = false) =>
    new Map([['high-jump' as const, { isOfficial, results }]]);

  it('counts as it stands, and its DNS ends the event', () => {
    const results = new Map([
      ['e1', mark(180)],
      ['e2', none('DNS')],
      ['e3', none('NM')],
    ]);
    const event = new CombinedEvent({ linked: linkedTo(results) });
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
    const official = new CombinedEvent({ linked: linkedTo(results, true) }, event.state.journal);
    expect(componentProgress(official.state, 'high-jump')).toBe('complete');
  });
});

describe('the end', () => {
  function whole(): CombinedEvent {
    const event = new CombinedEvent({ entrants: [{ key: 'e1', bib: '1', guest: false }] });
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
    expect(isCombinedComplete(event.state)).toBe(false);
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
    const event = new CombinedEvent({ ties: 'more events', entrants: [...setupOf().entrants, guest] });
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
