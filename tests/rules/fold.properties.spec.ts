import fc from 'fast-check';
import {
  apply,
  applyAll,
  countedOf,
  restoreCompetition,
  safetyChecklist,
  type CompetitionState,
  type Entry,
  type EntryBody,
  type JournalItem,
} from '#rules';
import { correction, discus, trial } from './support/competition.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

const RUNS = PROPERTY_RUNS;
const STOP = { kind: 'interruption', cause: 'light', note: null, seenAt: 0 } as const;
const ALL_CLEAR = {
  kind: 'all-clear',
  confirmed: safetyChecklist('discus').map(({ code }) => code),
  newWarmUp: false,
  clearedAt: 0,
  despite: null,
} as const;
const COMPETITORS = 4;
const setup = discus(COMPETITORS, {
  plan: { ...discus(1).plan, rounds: 4, cuts: [{ after: 2, through: 2 }], reorderAfter: [2] },
});
const KEYS = setup.competitors.map((competitor) => competitor.key);

const key = fc.constantFrom(...KEYS);
const round = fc.integer({ min: 1, max: 4 });
const cell = fc.constantFrom('50.00', '51.00', '52.00', 'X', '-', 'r', 'O');
/** An earlier entry: `naming` turns the number into the id of one that exists. */
const earlier = fc.nat({ max: 14 }).map((at) => `e${at}`);

function naming<T>(value: T, madeSoFar: number): T {
  const named = JSON.stringify(value).replace(
    /"e(\d+)"/g,
    (_, at: string) => `"e${Number(at) % Math.max(madeSoFar, 1)}"`,
  );
  return JSON.parse(named) as T;
}

const MADE_WITH = { implementId: 'D1', implementStanding: 'passed' } as const;
const implement = fc.record({
  implementId: fc.constantFrom('D1', 'D2'),
  implementStanding: fc.constantFrom('passed' as const, 'passed' as const, 'failed' as const),
});

function queryOf(attempt: string): EntryBody {
  return { kind: 'implement-query', attempts: [attempt], implementId: 'D1', reason: 'too light' };
}

const anyBody: fc.Arbitrary<EntryBody> = fc.oneof(
  {
    weight: 14,
    arbitrary: fc
      .tuple(key, round, cell, fc.constantFrom({}, MADE_WITH))
      .map(([who, at, how, made]) => trial(who, at, how, made)),
  },
  { weight: 1, arbitrary: fc.tuple(key, round).map(([who, at]) => trial(who, at, 'X', { protested: 5300 })) },
  {
    weight: 3,
    arbitrary: fc
      .tuple(key, round, cell, implement)
      .map(([who, at, how, made]) => trial(who, at, how, { ...made, protested: how === 'X' ? 5200 : null })),
  },
  { weight: 3, arbitrary: fc.tuple(earlier, cell).map(([attempt, how]) => correction(attempt, how)) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(earlier, cell, implement)
      .map(([attempt, how, made]) => ({ ...correction(attempt, how), ...made })),
  },
  {
    weight: 4,
    arbitrary: earlier.map(queryOf),
  },
  {
    weight: 3,
    arbitrary: earlier.map((entry): EntryBody => ({ kind: 'reversal', entry, reason: 'in error' })),
  },
  {
    weight: 2,
    arbitrary: earlier.map((attempt): EntryBody => ({ kind: 'replacement', attempt, reason: 'hindered' })),
  },
  {
    weight: 6,
    arbitrary: fc
      .tuple(earlier, fc.constantFrom('count' as const, 'dismiss' as const))
      .map(([entry, decision]): EntryBody => ({ kind: 'ruling', entry, decision, reason: 'heard' })),
  },
  {
    weight: 2,
    arbitrary: fc
      .array(fc.record({ attempt: earlier, competitor: key, round }), { minLength: 1, maxLength: 3 })
      .map((moves): EntryBody => ({ kind: 'move', moves, reason: 'wrong line' })),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(key, fc.constantFrom('DNS' as const, 'started' as const))
      .map(([competitor, status]): EntryBody => ({ kind: 'start', competitor, status })),
  },
  {
    weight: 1,
    arbitrary: key.map(
      (c): EntryBody => ({ kind: 'disqualification', competitor: c, rule: 'TR7', reason: 'x' }),
    ),
  },
  {
    weight: 1,
    arbitrary: key.map((c): EntryBody => ({ kind: 'reinstatement', competitor: c, reason: 'x' })),
  },
  {
    weight: 1,
    arbitrary: key.map(
      (c): EntryBody => ({ kind: 'admission', competitor: c, after: 2, admittedBy: 'R', reason: 'x' }),
    ),
  },
  { weight: 1, arbitrary: fc.constant<EntryBody>({ kind: 'sign-off', incomplete: 'dark' }) },
  { weight: 1, arbitrary: fc.constant<EntryBody>({ kind: 'reopening', reason: 'x' }) },
  { weight: 1, arbitrary: fc.constant<EntryBody>(STOP) },
  { weight: 3, arbitrary: fc.constant<EntryBody>(ALL_CLEAR) },
);

const journalOf = fc
  .array(fc.tuple(anyBody, fc.constantFrom('official' as const, 'referee' as const)), { maxLength: 15 })
  .map((bodies) => bodies.map(([body, by], at) => ({ id: `e${at}`, by, actor: by, ...naming(body, at) })));

/** A protested trial that is held for its implement, and what the referee makes of it. */
const aboutOneTrial = fc
  .array(
    fc.oneof(
      fc
        .constantFrom('count' as const, 'dismiss' as const)
        .map((decision): EntryBody => ({ kind: 'ruling', entry: 'e0', decision, reason: 'heard' })),
      fc.constant<EntryBody>(queryOf('e0')),
      fc.tuple(cell, implement).map(([how, made]) => ({ ...correction('e0', how), ...made })),
      earlier.map((entry): EntryBody => ({ kind: 'reversal', entry, reason: 'in error' })),
    ),
    { maxLength: 10 },
  )
  .map((bodies) => {
    const held = trial('a', 1, 'X', { ...MADE_WITH, implementStanding: 'failed', protested: 5200 });
    return [held, ...bodies].map((body, at) => ({
      ...{ id: `e${at}`, by: 'referee' as const, actor: 'rolf' },
      ...naming(body, at),
    }));
  });

/** A state as bytes: maps and sets in the order in which they were filled. */
function bytes(state: CompetitionState): string {
  return JSON.stringify(state, (_, value: unknown) =>
    value instanceof Map || value instanceof Set ? [...(value as Iterable<unknown>)] : value,
  );
}

/** Several journals that have something in them are worth more than one long one: seeds are fast-check's own. */
const check = (property: fc.IProperty<unknown>): void => fc.assert(property, { numRuns: RUNS });

describe('the fold', () => {
  it('gives the same state to the byte, entry by entry or from the stored journal', () => {
    let holds = 0;
    let rulings = 0;
    let queries = 0;
    check(
      fc.property(journalOf, (given) => {
        const { state } = applyAll(setup, given);
        const stored = JSON.parse(JSON.stringify(state.journal)) as JournalItem[];
        expect(bytes(restoreCompetition(setup, stored))).toBe(bytes(state));
        expect(countedOf(setup, stored)).toEqual({ card: state.card, signedOff: state.signedOff });
        holds += state.questions.length;
        rulings += state.activity.rulings.size;
        queries += state.questions.filter(({ about }) => about === 'implement').length;
      }),
    );
    // The journals that were tried did contain questions and rulings.
    expect(holds).toBeGreaterThan(RUNS / 10);
    expect(rulings).toBeGreaterThan(RUNS / 50);
    expect(queries).toBeGreaterThan(RUNS / 500);
  });

  it('gives the same whatever is ruled, asked and taken back about one trial', () => {
    let admissions = 0;
    check(
      fc.property(aboutOneTrial, (given) => {
        const { state } = applyAll(setup, given);
        const stored = JSON.parse(JSON.stringify(state.journal)) as JournalItem[];
        expect(bytes(restoreCompetition(setup, stored))).toBe(bytes(state));
        admissions += state.activity.admissions.size;
      }),
    );
    expect(admissions).toBeGreaterThan(RUNS / 50);
  });

  it('a correction and its reversal restore what counts', () => {
    let corrected = 0;
    check(
      fc.property(fc.tuple(journalOf, earlier, cell), (given) => {
        const [entries, attempt, how] = given as [Entry[], string, string];
        const { state } = applyAll(setup, entries);
        const referee = { by: 'referee', actor: 'rolf' } as const;
        const after = apply(state, { id: 'c', ...referee, ...correction(attempt, how) });
        if (after.verdict.standing !== 'accepted') return;
        const back = apply(after.state, { id: 'r', ...referee, kind: 'reversal', entry: 'c', reason: 'no' });
        // The way back may itself touch a cut: then it is held, and nothing has changed.
        if (back.verdict.standing === 'accepted') expect(back.state.card).toEqual(state.card);
        else expect(back.state.card).toEqual(after.state.card);
        corrected++;
      }),
    );
    expect(corrected).toBeGreaterThan(RUNS / 50);
  });

  it('refusals leave no trace, holds leave the places alone, and every trial is kept', () => {
    check(
      fc.property(fc.tuple(journalOf, anyBody), (given) => {
        const [entries, body] = given as [Entry[], EntryBody];
        const { state } = applyAll(setup, entries);
        const { state: after, verdict } = apply(state, { id: 'n', by: 'official', actor: 'o', ...body });
        if (verdict.standing === 'refused') expect(after).toBe(state);
        else expect(after.journal).toHaveLength(state.journal.length + 1);
        if (verdict.standing === 'held') {
          expect(after.card).toEqual(state.card);
          expect(after.questions.map((question) => question.entry)).toContain('n');
        }
        expect(after.clash).toBe(false);
      }),
    );
  });
});
