import type { Recheck } from '../implements/inspection-log.js';
import { parseMark } from '../quantities/mark.js';
import { parseWind } from '../quantities/wind.js';
import type { Performance } from './performance.js';
import type { Ratification } from './ratification.js';
import { ratificationProblems, type Measuring } from './ratification-problems.js';
import { recognise, recognitionSentence } from './recognise.js';
import { recordBook, recordLine, recordLines, withPerformance, withRatification } from './record-book.js';
import { recordHistory } from './record-history.js';
import { listsOf, type RecordKind } from './record-list.js';
import { recordTerms } from './record-terms.js';

const TERMS = recordTerms('WA', '2024-01');

let made = 0;

/** A discus mark of N, of the club Harbour, at the Spring Meet, in words: `52.10`; a long jump as `7.10/+1.3`. */
function mark(words: string, parts: Partial<Performance> = {}): Performance {
  const [text = '', wind] = words.split('/');
  made += 1;
  return {
    id: `p${String(made).padStart(3, '0')}`,
    competition: 'c1',
    event: wind === undefined ? 'discus' : 'long-jump',
    unit: 'cm',
    mark: parseMark(text)!.value,
    wind: wind === undefined ? null : wind === 'pending' ? wind : parseWind(wind),
    indoor: false,
    implementGrams: 2000,
    onDate: '2026-05-02',
    order: made,
    athlete: 'N',
    club: 'Harbour',
    meet: 'Spring Meet',
    sex: 'M',
    ages: ['senior'],
    ...parts,
  };
}

function lineOfKind(
  performances: readonly Performance[],
  kind: RecordKind,
  decisions: Ratification[] = [],
): string {
  const book = recordBook(TERMS, performances, decisions);
  const last = performances.at(-1)!;
  const line = recordLine(book, listsOf(last, TERMS).find((list) => list.kind === kind)!)!;
  const show = (some: readonly Performance[]): string =>
    some.map((one) => (one.mark / 100).toFixed(2)).join(' ') || '-';
  return `${show(line.best)} | ${show(line.wouldBe)} | ${show(line.windAssisted)}`;
}

function ratify(performance: Performance, decision: Ratification['decision'] = 'ratified'): Ratification {
  return {
    performance: performance.id,
    kind: 'club record',
    decision,
    reason: 'steel tape, implement checked',
  };
}

// What makes a best and what lets it count: from memory, as practice in the books of World Athletics.
describe('bests', () => {
  it('are the greatest marks, with all that equal them', () => {
    expect(lineOfKind([mark('50.00'), mark('52.10'), mark('51.00'), mark('52.10')], 'personal best')).toBe(
      '52.10 52.10 | - | -',
    );
  });

  it('are by implement, and of no use with one that is not known', () => {
    const junior = mark('60.00', { implementGrams: 1750 });
    const senior = mark('52.00');
    expect(lineOfKind([junior, senior], 'personal best')).toBe('52.00 | - | -');
    expect(lineOfKind([senior, junior], 'personal best')).toBe('60.00 | - | -');
    expect(listsOf(mark('60.00', { implementGrams: null }), TERMS)).toEqual([]);
  });

  it('need a legal wind outdoors, and show what was wind-assisted', () => {
    // The limit is +2.0: 2.00 is within it (runnerstribe.com).
    expect(
      lineOfKind(
        [mark('7.10/+2.0'), mark('7.30/+2.1'), mark('7.25/NWI'), mark('7.05/-0.3')],
        'personal best',
      ),
    ).toBe('7.10 | - | 7.30');
    expect(lineOfKind([mark('7.10/NWI', { indoor: true })], 'personal best')).toBe('7.10 | - | -');
    expect(lineOfKind([mark('7.10/+1.0'), mark('7.20/pending')], 'personal best')).toBe('7.10 | 7.20 | -');
  });

  it('are by season', () => {
    const last = mark('55.00', { onDate: '2025-12-31' });
    const now = mark('50.00', { onDate: '2026-01-01' });
    expect(lineOfKind([last, now], 'season best')).toBe('50.00 | - | -');
    expect(lineOfKind([last, now], 'personal best')).toBe('55.00 | - | -');
    const autumn = recordTerms('WA', '2024-01', { seasonStarts: '11-01' });
    const seasons = [last, now].map(
      (one) => listsOf(one, autumn).find(({ kind }) => kind === 'season best')?.season,
    );
    expect(seasons).toEqual(['2025-11-01', '2025-11-01']);
  });

  it('stand in one list whatever the roof under World Athletics, in two elsewhere', () => {
    const [out, within] = [
      mark('2.00', { event: 'high-jump' }),
      mark('2.05', { event: 'high-jump', indoor: true }),
    ];
    expect(lineOfKind([out, within], 'personal best')).toBe('2.05 | - | -');
    const college = recordTerms('NCAA', '2025');
    const personal = recordLines(recordBook(college, [out, within])).filter(
      ({ list }) => list.kind === 'personal best',
    );
    expect(personal.map(({ list, best }) => [list.indoor, best[0]?.mark])).toEqual([
      [false, 200],
      [true, 205],
    ]);
  });
});

describe('records', () => {
  it('of a club start with what was entered, and wait for the referee', () => {
    const old = mark('53.00', { competition: null, athlete: null, meet: null, onDate: '1998-06-06' });
    const first = mark('53.00');
    const second = mark('54.00');
    const third = mark('53.50');
    const all = [old, first, second, third];
    expect(lineOfKind(all, 'club record')).toBe('53.00 | 53.00 54.00 | -');
    expect(lineOfKind(all, 'club record', [ratify(first)])).toBe('53.00 53.00 | 54.00 | -');
    expect(lineOfKind(all, 'club record', [ratify(second)])).toBe('54.00 | - | -');
    // Refused, it stands in nobody’s way.
    expect(lineOfKind(all, 'club record', [ratify(second, 'refused')])).toBe('53.00 | 53.00 53.50 | -');
    expect(lineOfKind(all, 'club record', [ratify(second, 'refused'), ratify(second)])).toBe('54.00 | - | -');
    expect(lineOfKind(all, 'personal best')).toBe('54.00 | - | -');
  });

  it('are by category and sex', () => {
    const book = recordBook(TERMS, [mark('50.00', { ages: ['U20', 'senior'], implementGrams: 1750 })]);
    const records = recordLines(book).filter(({ list }) => list.kind === 'club record');
    expect(records.map(({ list }) => list.age)).toEqual(['U20', 'senior']);
  });
});

describe('the moment of an attempt', () => {
  const old = mark('53.00', { competition: null, athlete: null, onDate: '1998-06-06' });
  const best = mark('52.00', { onDate: '2026-04-01' });
  const book = recordBook(TERMS, [old, best]);
  const said = (performance: Performance, recheck: 'passed' | null = null): string[] =>
    recognise(book, performance, recheck).map((one) => recognitionSentence(one, performance));

  it('tells what the mark would be', () => {
    expect(said(mark('53.10'))).toEqual([
      'is a personal best of 53.10, before 52.00',
      'is a season best of 53.10, before 52.00',
      'would be a club record of 53.10, before 53.00 (implement re-check, ratification outstanding)',
      'would be a meet record of 53.10, before 53.00 (implement re-check, ratification outstanding)',
    ]);
    expect(said(mark('53.00'), 'passed').at(-1)).toBe(
      'would be level with the meet record, before 53.00 (ratification outstanding)',
    );
    expect(said(mark('52.00'))[0]).toBe('is level with the personal best, before 52.00');
    expect(said(mark('51.99'))).toEqual([]);
  });

  it('tells a first mark, a windy one and one whose wind is expected', () => {
    expect(said(mark('7.10/+1.0'))[0]).toBe('is a personal best of 7.10, the first on the list');
    expect(said(mark('7.10/+2.1'))[0]).toBe(
      '7.10, wind over the limit: no personal best (the first on the list)',
    );
    expect(said(mark('7.10/pending'))[0]).toBe(
      'would be a personal best of 7.10, the first on the list (wind reading outstanding)',
    );
    expect(said(mark('2.00', { event: 'high-jump' })).at(-1)).toBe(
      'would be a meet record of 2.00, the first on the list (measuring of the bar, ratification outstanding)',
    );
  });

  it('looks at what was made before it only', () => {
    const late = mark('52.50', { onDate: '2026-04-20' });
    const after = withPerformance(book, mark('55.00'));
    expect(recognise(after, late)[0]).toMatchObject({ relation: 'better', before: 5200 });
  });

  it('says what is done once it is', () => {
    const record = mark('54.00');
    const ratified = withRatification(withPerformance(book, record), ratify(record));
    const [, , club] = recognise(ratified, record);
    expect(club).toMatchObject({ list: { kind: 'club record' }, outstanding: [] });
    expect(recognitionSentence(club!, record)).toBe('is a club record of 54.00, before 53.00');
  });
});

describe('before a ratification', () => {
  const windy = mark('7.10/+2.1');
  const discus = mark('50.00');
  const better = mark('51.00');
  const high = mark('2.00', { event: 'high-jump' });
  const book = recordBook(TERMS, [windy, discus, better, high]);
  const codes = (performance: string, recheck: Recheck | null, measuring: Measuring | null): string[] =>
    ratificationProblems(book, { performance, kind: 'club record' }, { recheck, measuring }).map(
      ({ code }) => code,
    );

  it('is said what speaks against it', () => {
    expect(codes(windy.id, null, 'steel-tape')).toEqual(['WIND']);
    expect(codes(discus.id, null, 'electronic')).toEqual(['NOT_THE_BEST', 'RECHECK']);
    expect(codes(better.id, 'failed', 'electronic')).toEqual(['RECHECK']);
    expect(codes(better.id, 'passed', 'electronic')).toEqual([]);
    expect(codes('elsewhere', null, null)).toEqual(['NO_SUCH_MARK']);
    const alone = recordBook(TERMS, [{ ...better, club: null }]);
    expect(ratificationProblems(alone, ratify(better))[0]?.code).toBe('NO_SUCH_LIST');
  });

  it('is asked how it was measured', () => {
    expect(codes(better.id, 'passed', null)).toEqual(['MEASURING']);
    expect(codes(better.id, 'passed', 'bar')).toEqual(['MEASURING']);
    expect(codes(high.id, null, 'steel-tape')).toEqual(['MEASURING']);
    expect(codes(high.id, null, 'bar')).toEqual([]);
  });
});

describe('the history of a record', () => {
  const on = (text: string, onDate: string, parts: Partial<Performance> = {}): Performance =>
    mark(text, { onDate, competition: null, ...parts });
  const marks = [
    on('6.90/+1.0', '2001-06-06'),
    on('6.80/+0.0', '2003-06-06'),
    on('7.30/+2.1', '2004-06-06'),
    on('6.90/-0.5', '2008-06-06'),
    on('7.00/+2.0', '2011-06-06'),
  ];
  const waiting = on('7.20/+0.1', '2026-06-06', { competition: 'c1' });
  const held = (ratifications: readonly Ratification[]): string[] => {
    const book = recordBook(TERMS, [...marks.toReversed(), waiting], ratifications);
    const { list } = recordLines(book).find((line) => line.list.kind === 'club record')!;
    return recordHistory(book, list).map(({ performance, relation, until }) =>
      [performance.mark, relation, performance.onDate, until].join(' '),
    );
  };

  it('has who held it from when, and who was level', () => {
    const before = [
      '690 first 2001-06-06 2011-06-06',
      '690 equal 2008-06-06 2011-06-06',
      '700 better 2011-06-06 ',
    ];
    expect(held([])).toEqual(before);
    expect(held([ratify(waiting)])).toEqual([
      ...before.slice(0, 2),
      '700 better 2011-06-06 2026-06-06',
      '720 better 2026-06-06 ',
    ]);
  });
});
