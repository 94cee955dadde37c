import fc from 'fast-check';
import {
  apply,
  openCompetition,
  performancesOfCard,
  recognise,
  recordBook,
  recordLines,
  recordTerms,
  withCompetition,
  withoutPerformance,
  withPerformance,
  withRatification,
  type Card,
  type EntryBody,
  type Performance,
  type Ratification,
  type RecordBook,
  type RecordLine,
} from '#rules';
import { correction, discus, trial } from './support/competition.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

const TERMS = { ...recordTerms('WA', '2024-01'), roof: 'apart' as const };
const RUNS = { numRuns: PROPERTY_RUNS };

/** Marks so close together, and competitors so few, that most of them matter. */
const anyPerformance: fc.Arbitrary<Performance> = fc
  .record({
    at: fc.nat({ max: 8 }),
    event: fc.constantFrom('discus', 'long-jump', 'high-jump'),
    mark: fc.integer({ min: 700, max: 705 }),
    wind: fc.constantFrom(10, 20, 21, 'NWI', 'pending', null),
    indoor: fc.boolean(),
    implementGrams: fc.constantFrom(1750, 2000, null),
    onDate: fc.constantFrom('2025-06-01', '2026-06-01'),
    athlete: fc.constantFrom('A', 'B', null),
    meet: fc.constantFrom('Spring Meet', null),
    ages: fc.constantFrom(['senior'], ['U20', 'senior']),
    competition: fc.constantFrom('c1', 'c1', null),
  })
  .map(
    ({ at, ...one }) =>
      ({ ...one, id: `p${at}`, order: at, unit: 'cm', club: 'Harbour', sex: 'M' }) as Performance,
  );

const anyRatification: fc.Arbitrary<Ratification> = fc.record({
  performance: fc.nat({ max: 8 }).map((at) => `p${at}`),
  kind: fc.constantFrom('club record', 'meet record'),
  decision: fc.constantFrom('ratified', 'refused'),
  reason: fc.constant('by the referee'),
});

type Event =
  | { readonly kind: 'mark'; readonly performance: Performance }
  | { readonly kind: 'struck'; readonly id: string }
  | { readonly kind: 'decision'; readonly ratification: Ratification };

const anyEvent: fc.Arbitrary<Event> = fc.oneof(
  { weight: 6, arbitrary: anyPerformance.map((performance) => ({ kind: 'mark' as const, performance })) },
  { weight: 1, arbitrary: fc.nat({ max: 8 }).map((at) => ({ kind: 'struck' as const, id: `p${at}` })) },
  {
    weight: 3,
    arbitrary: anyRatification.map((ratification) => ({ kind: 'decision' as const, ratification })),
  },
);

const anyJournal = fc.array(anyEvent, { maxLength: 16 });

function enter(book: RecordBook, event: Event): RecordBook {
  switch (event.kind) {
    case 'mark':
      return withPerformance(book, event.performance);
    case 'struck':
      return withoutPerformance(book, event.id);
    case 'decision':
      return withRatification(book, event.ratification);
  }
}

/** What stands at the end of a journal. */
function ofJournal(journal: readonly Event[]): {
  performances: Performance[];
  ratifications: Ratification[];
} {
  const performances = new Map<string, Performance>();
  for (const event of journal) {
    if (event.kind === 'mark') performances.set(event.performance.id, event.performance);
    if (event.kind === 'struck') performances.delete(event.id);
  }
  const ratifications = journal.flatMap((event) => (event.kind === 'decision' ? [event.ratification] : []));
  return { performances: [...performances.values()], ratifications };
}

const written = (lines: readonly RecordLine[]): string => JSON.stringify(lines);

describe('a list of bests and records', () => {
  it('recomputed from the journal is the live one, in whatever order the marks come', () => {
    fc.assert(
      fc.property(anyJournal, fc.nat(), (journal, turn) => {
        const live = journal.reduce(enter, recordBook(TERMS));
        const { performances, ratifications } = ofJournal(journal);
        const turned = performances.map((_, at) => performances[(at * 7 + turn) % performances.length]!);
        const all = [...new Set([...turned, ...performances])];
        return written(recordLines(live)) === written(recordLines(recordBook(TERMS, all, ratifications)));
      }),
      RUNS,
    );
  });

  it('is what a count by hand finds', () => {
    fc.assert(
      fc.property(anyJournal, (journal) => {
        const { performances, ratifications } = ofJournal(journal);
        const counted = recordLines(recordBook(TERMS, performances, ratifications)).map(
          ({ list, best, wouldBe, windAssisted }) => {
            const name = [list.kind, list.of, list.season, list.age, list.comparison, list.indoor].join(';');
            return `${name}: ${[best, wouldBe, windAssisted].map((some) => some.map(({ id }) => id).join('+')).join(' | ')}`;
          },
        );
        return counted.toSorted().join('\n') === byHand(performances, ratifications).toSorted().join('\n');
      }),
      RUNS,
    );
  });
});

/** Line by line from sorted columns of marks; written without the library. */
function byHand(performances: readonly Performance[], ratifications: readonly Ratification[]): string[] {
  const columns = new Map<string, Performance[]>();
  for (const one of performances) {
    if (one.event === 'discus' && one.implementGrams === null) continue;
    const thrown = one.event === 'discus' ? `discus/cm/${one.implementGrams}` : `${one.event}/cm`;
    const names = [
      ...(one.athlete === null
        ? []
        : [
            `personal best;${one.athlete};;;${thrown}`,
            `season best;${one.athlete};${one.onDate.slice(0, 4)}-01-01;;${thrown}`,
          ]),
      ...one.ages.map((age) => `club record;Harbour;;${age};${thrown}`),
      ...(one.meet === null ? [] : one.ages.map((age) => `meet record;Spring Meet;;${age};${thrown}`)),
    ];
    for (const name of names) {
      const key = `${name};${one.indoor}`;
      columns.set(key, [...(columns.get(key) ?? []), one]);
    }
  }
  return [...columns].map(([name, column]) => `${name}: ${lineByHand(name, column, ratifications)}`);
}

function lineByHand(
  name: string,
  column: readonly Performance[],
  ratifications: readonly Ratification[],
): string {
  const kind = name.split(';')[0]!;
  const ruled = (id: string): string | undefined =>
    ratifications.filter((one) => one.kind === kind && one.performance === id).at(-1)?.decision;
  const windy = ({ event, indoor, wind }: Performance): string => {
    if (event !== 'long-jump' || indoor) return 'fine';
    if (wind === 'pending') return 'open';
    return typeof wind === 'number' && wind <= 20 ? 'fine' : 'no';
  };
  const inTime = column.toSorted((a, b) => (`${a.onDate} ${a.order}` < `${b.onDate} ${b.order}` ? -1 : 1));
  const left = inTime.filter(({ id }) => ruled(id) !== 'refused');
  const counts = left.filter(
    (one) =>
      windy(one) === 'fine' &&
      (kind.endsWith('best') || one.competition === null || ruled(one.id) === 'ratified'),
  );
  const record = Math.max(0, ...counts.map(({ mark }) => mark));
  const waits = left.filter((one, at) => {
    if (windy(one) === 'no' || counts.includes(one) || one.mark < record) return false;
    return left.slice(0, at).every((earlier) => windy(earlier) !== 'fine' || earlier.mark <= one.mark);
  });
  const assisted = left.filter((one) => windy(one) === 'no' && one.mark > record);
  const most = Math.max(0, ...assisted.map(({ mark }) => mark));
  const shown = [
    counts.filter(({ mark }) => mark === record),
    waits,
    assisted.filter(({ mark }) => mark === most),
  ];
  return shown.map((some) => some.map(({ id }) => id).join('+')).join(' | ');
}

describe('what is said at the moment of an attempt', () => {
  it('holds when the whole journal is looked at later', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(anyPerformance, { maxLength: 9, selector: ({ id }) => id }),
        (performances) => {
          const inTime = performances.toSorted((a, b) =>
            `${a.onDate} ${a.order}` < `${b.onDate} ${b.order}` ? -1 : 1,
          );
          const whole = recordBook(TERMS, performances);
          let live = recordBook(TERMS);
          return inTime.every((performance) => {
            const then = JSON.stringify(recognise(live, performance));
            live = withPerformance(live, performance);
            return then === JSON.stringify(recognise(whole, performance));
          });
        },
      ),
      RUNS,
    );
  });
});

const cell = fc.constantFrom('50.00', '51.00', '52.00', 'X');
const key = fc.constantFrom('a', 'b', 'c');
const anyBody: fc.Arbitrary<EntryBody> = fc.oneof(
  {
    weight: 10,
    arbitrary: fc
      .tuple(key, fc.integer({ min: 1, max: 6 }), cell)
      .map(([who, at, how]) => trial(who, at, how)),
  },
  { weight: 3, arbitrary: fc.tuple(fc.nat({ max: 9 }), cell).map(([at, how]) => correction(`e${at}`, how)) },
  {
    weight: 1,
    arbitrary: fc
      .nat({ max: 9 })
      .map((at): EntryBody => ({ kind: 'reversal', entry: `e${at}`, reason: 'in error' })),
  },
  {
    weight: 1,
    arbitrary: key.map((competitor): EntryBody => {
      return { kind: 'disqualification', competitor, rule: 'TR7', reason: 'conduct' };
    }),
  },
);

describe('a competition that is recorded', () => {
  it('leaves the same lists as its journal read at the end', () => {
    const occasion = { competition: 'c1', onDate: '2026-05-02', meet: 'Spring Meet' };
    const marksOf = (card: Card): Performance[] =>
      performancesOfCard(card, occasion, (bib) => {
        return { athlete: bib, club: 'Harbour', sex: 'W', ages: ['senior'], implementGrams: 1000 };
      });
    let lists = 0;
    fc.assert(
      fc.property(fc.array(anyBody, { maxLength: 12 }), (bodies) => {
        let state = openCompetition(discus(3));
        let live = recordBook(TERMS, [OLD]);
        for (const [at, body] of bodies.entries()) {
          state = apply(state, { id: `e${at}`, by: 'referee', actor: 'rolf', ...body }).state;
          live = withCompetition(live, 'c1', marksOf(state.card));
        }
        lists += recordLines(live).length;
        return (
          written(recordLines(live)) ===
          written(recordLines(recordBook(TERMS, [OLD, ...marksOf(state.card)])))
        );
      }),
      { numRuns: 5_000 },
    );
    expect(lists).toBeGreaterThan(5_000);
  });
});

/** The record of a club before the competition. */
const OLD: Performance = {
  id: 'old',
  competition: null,
  event: 'discus',
  unit: 'cm',
  mark: 5100,
  wind: null,
  indoor: false,
  implementGrams: 1000,
  onDate: '1998-06-06',
  order: 0,
  athlete: null,
  club: 'Harbour',
  meet: null,
  sex: 'W',
  ages: ['senior'],
};
