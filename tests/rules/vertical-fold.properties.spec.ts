import fc from 'fast-check';
import {
  applyAllVertical,
  applyVertical,
  countedVerticalOf,
  entriesOfVerticalCard,
  openVertical,
  recount,
  restoreVertical,
  verticalProgressOf,
  writeSheet,
  type JournalItem,
  type VerticalBody,
  type VerticalEntry,
  type VerticalState,
} from '#rules';
import { highJumpOf, jump, setupOfCard } from './support/bar.js';
import { anyVerticalCard } from './support/vertical-sheets.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

const RUNS = PROPERTY_RUNS;
const HEIGHTS = ['1.80', '1.83', '1.86'];
const setup = highJumpOf(HEIGHTS.join(' '), 3);

const key = fc.constantFrom('a', 'b', 'c');
const height = fc.constantFrom('1.80', '1.80', '1.80', '1.83', '1.83', '1.86', '1.85');
const trial = fc.constantFrom(1, 1, 1, 2, 2, 3, 4);
const letter = fc.constantFrom('O', 'O', 'O', 'X', 'X', '-', 'r');
/** An earlier entry: `naming` turns the number into the id of one that exists. */
const earlier = fc.nat({ max: 31 }).map((at) => `e${at}`);

function naming<T>(value: T, madeSoFar: number): T {
  const named = JSON.stringify(value).replace(
    /"e(\d+)"/g,
    (_, at: string) => `"e${Number(at) % Math.max(madeSoFar, 1)}"`,
  );
  return JSON.parse(named) as T;
}

const correction = fc.tuple(earlier, letter).map(([attempt, how]): VerticalBody => {
  const { outcome, foul, incident, protested } = jump('', '1.80', 1, how);
  return { kind: 'jump-correction', attempt, outcome, foul, incident, protested, reason: 'misread' };
});

const someJump = fc.tuple(key, height, trial, letter);
const change = { reason: 'x' };
const anyBody: fc.Arbitrary<VerticalBody> = fc.oneof(
  { weight: 30, arbitrary: someJump.map(([who, at, nth, how]): VerticalBody => jump(who, at, nth, how)) },
  {
    weight: 2,
    arbitrary: someJump.map(([who, at, nth]): VerticalBody => jump(who, at, nth, 'X', { protested: true })),
  },
  {
    weight: 3,
    arbitrary: someJump.map(
      ([who, at, nth, how]): VerticalBody => ({ ...jump(who, at, nth, how), kind: 'jump-off' }),
    ),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.constantFrom(180, 183, 184, 186, 189), fc.subarray([180, 183], { maxLength: 1 }))
      .map(([at, leavesOut]): VerticalBody => ({ kind: 'bar', height: at, leavesOut })),
  },
  { weight: 3, arbitrary: correction },
  { weight: 3, arbitrary: earlier.map((entry): VerticalBody => ({ kind: 'reversal', entry, ...change })) },
  {
    weight: 2,
    arbitrary: earlier.map((attempt): VerticalBody => ({ kind: 'replacement', attempt, ...change })),
  },
  {
    weight: 4,
    arbitrary: fc
      .tuple(earlier, fc.constantFrom('count' as const, 'dismiss' as const))
      .map(([entry, decision]): VerticalBody => ({ kind: 'ruling', entry, decision, ...change })),
  },
  {
    weight: 2,
    arbitrary: fc
      .array(fc.record({ attempt: earlier, competitor: key, height: fc.constantFrom(180, 183), trial }), {
        minLength: 1,
        maxLength: 3,
      })
      .map((moves): VerticalBody => ({ kind: 'jump-move', moves, ...change })),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(key, fc.constantFrom('DNS' as const, 'started' as const))
      .map(([competitor, status]): VerticalBody => ({ kind: 'start', competitor, status })),
  },
  {
    weight: 1,
    arbitrary: key.map(
      (competitor): VerticalBody => ({ kind: 'disqualification', competitor, rule: 'TR7', ...change }),
    ),
  },
  {
    weight: 1,
    arbitrary: key.map((competitor): VerticalBody => ({ kind: 'reinstatement', competitor, ...change })),
  },
  { weight: 1, arbitrary: fc.constant<VerticalBody>({ kind: 'jump-off-declined', ...change }) },
  { weight: 1, arbitrary: fc.constant<VerticalBody>({ kind: 'sign-off', incomplete: 'dark' }) },
  { weight: 1, arbitrary: fc.constant<VerticalBody>({ kind: 'reopening', ...change }) },
);

/** All clear the first height and fail at the second: a jump-off is due. */
const LEVEL: readonly VerticalBody[] = ['O', 'XXX'].flatMap((cells, index) =>
  [...cells].flatMap((how, at) =>
    setup.competitors.map((one): VerticalBody => jump(one.key, HEIGHTS[index]!, at + 1, how)),
  ),
);

/** Any of the first rounds of the jump-off, and now and then anything else. */
const afterTie = fc.oneof(
  {
    weight: 8,
    arbitrary: fc
      .tuple(key, fc.constantFrom(1, 1, 2, 3), letter)
      .map(([who, nth, how]): VerticalBody => ({ ...jump(who, '1.83', nth, how), kind: 'jump-off' })),
  },
  { weight: 1, arbitrary: anyBody },
);

const someone = fc.constantFrom('official' as const, 'referee' as const);

interface Journal {
  /** Where the entries begin. */
  readonly from: VerticalState;
  readonly entries: readonly VerticalEntry[];
}

function journalFrom(from: VerticalState, body: fc.Arbitrary<VerticalBody>): fc.Arbitrary<Journal> {
  return fc.array(fc.tuple(body, someone), { maxLength: 20 }).map((bodies) => ({
    from,
    entries: bodies.map(([one, by], index): VerticalEntry => {
      const at = from.journal.length + index;
      return { id: `e${at}`, by, actor: by, ...naming(one, at) };
    }),
  }));
}

function folded({ from, entries }: Journal): VerticalState {
  return entries.reduce((state, entry) => applyVertical(state, entry).state, from);
}

const OPEN = openVertical(setup);
const OPEN_WITH_PASSES_OF_ONE_TRIAL = openVertical({ ...setup, passGivesUp: 'trial' });
const TIED = folded({
  from: OPEN,
  entries: LEVEL.map(
    (body, at): VerticalEntry => ({ id: `e${at}`, by: 'official', actor: 'official', ...body }),
  ),
});

const journalOf = fc.oneof(
  { weight: 3, arbitrary: journalFrom(OPEN, anyBody) },
  { weight: 1, arbitrary: journalFrom(OPEN_WITH_PASSES_OF_ONE_TRIAL, anyBody) },
  { weight: 1, arbitrary: journalFrom(TIED, afterTie) },
);

const NO_INFORMATION = {
  edition: null,
  plan: {},
  category: {},
  implementGrams: null,
  scoring: null,
  competitors: [],
};

/** A state as bytes: maps and sets in the order in which they were filled. */
function bytes(state: VerticalState): string {
  return JSON.stringify(state, (_, value: unknown) =>
    value instanceof Map || value instanceof Set ? [...(value as Iterable<unknown>)] : value,
  );
}

describe('the fold of a high jump', () => {
  it('gives the same state to the byte, entry by entry or from the stored journal', () => {
    const seen = { questions: 0, rulings: 0, cleared: 0 };
    fc.assert(
      fc.property(journalOf, (journal) => {
        const state = folded(journal);
        const stored = JSON.parse(JSON.stringify(state.journal)) as JournalItem<VerticalEntry>[];
        expect(bytes(restoreVertical(state.setup, stored))).toBe(bytes(state));
        const { card, signedOff } = state;
        expect(countedVerticalOf(state.setup, stored)).toEqual({ card, signedOff });
        seen.questions += state.questions.length;
        seen.rulings += state.activity.rulings.size;
        seen.cleared += state.competitors.filter(({ best }) => best !== null).length;
      }),
      { numRuns: RUNS },
    );
    // The journals that were tried did contain questions, rulings and heights cleared.
    expect(seen.questions).toBeGreaterThan(RUNS / 10);
    expect(seen.rulings).toBeGreaterThan(RUNS / 50);
    expect(seen.cleared).toBeGreaterThan(RUNS / 10);
  });

  it('a correction and its reversal restore what counts', () => {
    let corrected = 0;
    fc.assert(
      fc.property(journalOf, correction, (journal, body) => {
        const state = folded(journal);
        const referee = { by: 'referee', actor: 'rolf' } as const;
        const after = applyVertical(state, { id: 'c', ...referee, ...body });
        if (after.verdict.standing !== 'accepted') return;
        const undo = { kind: 'reversal', entry: 'c', reason: 'no' } as const;
        const back = applyVertical(after.state, { id: 'r', ...referee, ...undo });
        expect(back.verdict.standing).toBe('accepted');
        expect(back.state.card).toEqual(state.card);
        expect(back.state.competitors).toEqual(state.competitors);
        corrected++;
      }),
      { numRuns: RUNS },
    );
    expect(corrected).toBeGreaterThan(RUNS / 50);
  });

  it('refusals leave no trace, holds leave the places alone, and no jump is lost', () => {
    const verdicts = { accepted: 0, held: 0, refused: 0 };
    fc.assert(
      fc.property(journalOf, anyBody, (journal, body) => {
        const state = folded(journal);
        const applied = applyVertical(state, {
          id: 'n',
          by: 'official',
          actor: 'o',
          ...naming(body, state.journal.length),
        });
        const { state: after, verdict } = applied;
        verdicts[verdict.standing]++;
        if (verdict.standing === 'refused') expect(after).toBe(state);
        else expect(after.journal).toHaveLength(state.journal.length + 1);
        if (verdict.standing === 'held') {
          expect(after.card).toEqual(state.card);
          expect(after.questions.map((question) => question.entry)).toContain('n');
        }
        expect(after.clash).toBe(false);
      }),
      { numRuns: RUNS },
    );
    expect(Math.min(...Object.values(verdicts))).toBeGreaterThan(RUNS / 50);
  });

  it('a pass is never a failure: it changes no failures in a row, no best, and puts nobody out', () => {
    let passes = 0;
    fc.assert(
      fc.property(journalOf, key, height, trial, (journal, who, at, nth) => {
        const state = folded(journal);
        const pass = jump(who, at, nth, '-');
        const applied = applyVertical(state, { id: 'p', by: 'referee', actor: 'rolf', ...pass });
        if (applied.verdict.standing !== 'accepted') return;
        const index = setup.competitors.findIndex((one) => one.key === who);
        const [before, after] = [state.competitors[index]!, applied.state.competitors[index]!];
        // What had waited for the pass may count now, and is something else than the pass.
        const standings = [...state.attempts].map(([id, one]) => [id, one.standing]);
        const same = standings.every(([id, now]) => applied.state.attempts.get(id!)!.standing === now);
        if (!same) return;
        expect(after.failuresInARow).toBe(before.failuresInARow);
        expect(after.condition).toBe(before.condition);
        expect(after.best).toBe(before.best);
        passes++;
      }),
      { numRuns: RUNS },
    );
    expect(passes).toBeGreaterThan(RUNS / 50);
  });

  it('makes a card that is a valid sheet', () => {
    let jumpOffs = 0;
    fc.assert(
      fc.property(journalOf, (journal) => {
        const state = folded(journal);
        const { jumpOff } = verticalProgressOf(state);
        // In a sheet a round of the jump-off is whole.
        if (jumpOff && jumpOff.phase !== 'decided' && jumpOff.round <= state.card.jumpOff.length) return;
        const sheet = writeSheet({ kind: 'vertical', card: state.card, information: NO_INFORMATION });
        expect(recount(JSON.stringify(sheet)).problems).toEqual([]);
        jumpOffs += state.card.jumpOff.length;
      }),
      { numRuns: RUNS },
    );
    expect(jumpOffs).toBeGreaterThan(RUNS / 50);
  });

  it('asks for nothing of somebody who is out, and for one trial of each who is in', () => {
    fc.assert(
      fc.property(journalOf, (journal) => {
        const state = folded(journal);
        const { calls, outstanding, left } = verticalProgressOf(state);
        const called = [...calls, ...outstanding].filter((call) => !call.jumpOff && !call.underProtest);
        const keys = called.map(({ competitor }) => competitor);
        const once = new Set(keys).size === keys.length && keys.every((one) => left.includes(one));
        const fits = called.every((call) => call.trial <= 3 && call.height <= state.bar);
        expect({ once, fits }).toEqual({ once: true, fits: true });
      }),
      { numRuns: RUNS },
    );
  });
});

function byReferee(bodies: readonly VerticalBody[]): VerticalEntry[] {
  return bodies.map((body, at) => ({ id: `e${at}`, by: 'referee', actor: 'rolf', ...body }));
}

describe('the order in which jumps come in', () => {
  it('does not matter, once the bar was set at the last height', () => {
    fc.assert(
      fc.property(anyVerticalCard, fc.infiniteStream(fc.nat()), (card, random) => {
        const inOrder = entriesOfVerticalCard(card, (bib) => `k${bib}`).filter(
          ({ kind }) => kind !== 'jump-off',
        );
        const ranks = new Map(inOrder.map((body) => [body, random.next().value as number]));
        const rankOf = (body: VerticalBody): number => ranks.get(body)!;
        const bar = inOrder.findLast(({ kind }) => kind === 'bar');
        const jumps = inOrder.filter(({ kind }) => kind === 'jump');
        const others = inOrder.filter(({ kind }) => kind !== 'bar' && kind !== 'jump');
        const shuffled = [...(bar ? [bar] : []), ...jumps.sort((a, b) => rankOf(a) - rankOf(b)), ...others];
        const { state } = applyAllVertical(setupOfCard(card), byReferee(shuffled));
        expect(state.card).toEqual(applyAllVertical(setupOfCard(card), byReferee(inOrder)).state.card);
        expect(state.questions).toEqual([]);
      }),
      { numRuns: 2_000, seed: 2 },
    );
  });
});
