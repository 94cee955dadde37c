import fc from 'fast-check';
import { callsOf, verticalProgressOf, type CompetitionSetup, type Plan } from '#rules';
import { PROPERTY_RUNS } from '../support/property-runs.js';
import { drawn, type Draw } from '../reference/draw.js';
import { BarGroup, CircleGroup, discusOf, highJumpIn } from './support/calling-group.js';

/** Whole competitions of several hundred trials each: a twentieth of the usual number takes as long. */
const RUNS = Math.ceil(PROPERTY_RUNS / 20);

const WHOLE: Pick<Plan, 'cutTies' | 'reorder'> = { cutTies: 'next-best', reorder: 'reverse' };
const PLANS: readonly Plan[] = [
  { ...WHOLE, rounds: 3, cuts: [], reorderAfter: [] },
  { ...WHOLE, rounds: 4, cuts: [], reorderAfter: [2] },
  { ...WHOLE, rounds: 6, cuts: [{ after: 3, through: 2 }], reorderAfter: [3, 5] },
  { ...WHOLE, rounds: 6, cuts: [], reorderAfter: [], reorder: 'leaders-first' },
];

function shuffled<T>(draw: Draw, list: readonly T[]): T[] {
  const rest = [...list];
  return list.map(() => rest.splice(draw.below(rest.length), 1)[0]!);
}

/** Some of the competitors of some competitions, in any order: what was set for a group may be older than its lists. */
function anyOrder(draw: Draw, keys: readonly string[]): string[] | null {
  return draw.chance(80) ? shuffled(draw, keys).filter(() => draw.chance(90)) : null;
}

interface Play {
  readonly setups: Readonly<Record<string, CompetitionSetup>>;
  readonly startOrder: readonly string[] | null;
  readonly flights: boolean;
  readonly draw: Draw;
}

const anyGroup = drawn((draw): Play => {
  const flights = draw.chance(30);
  const setups = Object.fromEntries(
    ['A', 'B', 'C'].slice(0, 1 + draw.below(3)).map((key) => {
      const labels = Array.from({ length: draw.below(5) }, () => (flights ? draw.pick(['1', '2']) : null));
      return [key, discusOf(key, labels, { plan: draw.pick(PLANS) })];
    }),
  );
  const keys = Object.values(setups).flatMap(({ competitors }) => competitors.map(({ key }) => key));
  return { setups, startOrder: anyOrder(draw, keys), flights, draw };
});

const CELLS = ['40.00', '41.00', '42.00', 'X', 'X', '-'];

describe('a group of throws', () => {
  it('calls every trial that a competition expects once, and nobody whom his competition does not expect', () => {
    fc.assert(
      fc.property(anyGroup, ({ setups, startOrder, draw }) => {
        const group = new CircleGroup(setups, startOrder);
        const called: string[] = [];
        for (let { up } = group.progress; up; { up } = group.progress) {
          const circle = group.circles.get(up.competition)!;
          const [expected] = callsOf(circle.state);
          expect(expected).toMatchObject({ competitor: up.competitor, round: up.round });
          group.trial(draw.chance(4) ? 'r' : draw.pick(CELLS));
          expect(circle.verdict).toEqual({ standing: 'accepted', notices: [] });
          called.push(`${up.competitor} ${up.round}`);
        }
        expect(new Set(called).size).toBe(called.length);
        const entries = [...group.circles.values()].flatMap(({ state }) => state.journal);
        expect(entries).toHaveLength(called.length);
        for (const { state } of group.circles.values()) expect([...callsOf(state)]).toEqual([]);
        expect(group.progress.finished).toEqual(Object.keys(setups));
        expect(group.progress.phase).toBe(called.length > 0 ? 'complete' : 'not started');
      }),
      { numRuns: RUNS },
    );
  });

  it('has at any moment the calls of its competitions, each in its order, and rounds together', () => {
    fc.assert(
      fc.property(anyGroup, fc.nat({ max: 40 }), ({ setups, startOrder, flights, draw }, moments) => {
        const group = new CircleGroup(setups, startOrder);
        for (let moment = 0; moment < moments; moment++) {
          const { calls } = group.progress;
          if (calls.length === 0) break;
          disturb(draw, group);
          // Officials record whoever throws, also out of turn.
          group.trial(draw.pick(CELLS), draw.chance(80) ? calls[0] : draw.pick(calls));
          const now = group.progress;
          for (const [key, { state }] of group.circles) {
            const own = now.calls.filter(({ competition }) => competition === key);
            expect(own.map(({ competitor, round, flight }) => ({ competitor, round, flight }))).toEqual([
              ...callsOf(state),
            ]);
            expect(now.finished.includes(key)).toBe(own.length === 0);
          }
          if (!flights) expect(now.calls.map(({ round }) => round)).toEqual(roundsOf(now.calls));
        }
      }),
      { numRuns: RUNS },
    );
  });
});

function roundsOf(calls: readonly { readonly round: number }[]): number[] {
  return calls.map(({ round }) => round).sort((a, b) => a - b);
}

/** Now and then an official calls somebody forward, or somebody does not start. */
function disturb(draw: Draw, group: CircleGroup): void {
  const { up, calls } = group.progress;
  if (!up) return;
  const circle = group.circles.get(up.competition)!;
  const { competitor, round } = draw.pick(calls.filter(({ competition }) => competition === up.competition));
  if (draw.chance(10)) {
    circle.enter(
      { kind: 'order', round, competitors: [competitor], reason: 'two events' },
      { by: 'referee' },
    );
  } else if (draw.chance(3)) {
    circle.enter({ kind: 'start', competitor, status: 'DNS' }, { by: 'referee' });
  }
}

describe('a group at one bar', () => {
  const HEIGHTS = ['1.20 1.25 1.30', '1.25 1.30 1.35', '1.20 1.40', '1.30'];

  const anyBars = drawn((draw) => {
    const setups = Object.fromEntries(
      ['A', 'B', 'C'].slice(0, 1 + draw.below(3)).map((key) => {
        const passGivesUp = draw.chance(30) ? 'trial' : 'height';
        return [key, highJumpIn(key, draw.pick(HEIGHTS), 1 + draw.below(3), { passGivesUp })];
      }),
    );
    const keys = Object.values(setups).flatMap(({ competitors }) => competitors.map(({ key }) => key));
    return { group: new BarGroup(setups, anyOrder(draw, keys)), draw };
  });

  it('calls every jump that a competition expects once, lowest bar first, until all are done', () => {
    fc.assert(
      fc.property(anyBars, ({ group, draw }) => {
        const called: string[] = [];
        let bar = 0;
        for (let steps = 0; steps < 400; steps++) {
          const { up, awaitingHeight, awaits } = group.progress;
          if (!up) {
            if (awaits === null) break;
            // Nobody goes on by himself at a height that nobody has set: here they leave it at that.
            for (const key of awaitingHeight) giveUp(group, key);
            continue;
          }
          const own = group.bars.get(up.competition)!;
          expect(verticalProgressOf(own.state).up).toMatchObject({
            ...{ competitor: up.competitor, height: up.height, trial: up.round, jumpOff: up.jumpOff },
          });
          if (!up.jumpOff) {
            expect(up.height).toBeGreaterThanOrEqual(bar);
            bar = up.height!;
          }
          called.push(`${up.competitor} ${up.height} ${up.round} ${up.jumpOff}`);
          group.jump(letterFor(draw, up.jumpOff));
          expect(own.verdict).toMatchObject({ standing: 'accepted' });
        }
        expect(new Set(called).size).toBe(called.length);
        expect(group.progress).toMatchObject({ phase: 'complete', up: null, awaits: null, outstanding: [] });
        for (const { state } of group.bars.values()) expect(verticalProgressOf(state).awaits).toBeNull();
      }),
      { numRuns: RUNS },
    );
  });

  it('is finished exactly when all its competitions are', () => {
    fc.assert(
      fc.property(anyBars, fc.nat({ max: 60 }), ({ group, draw }, jumps) => {
        for (let made = 0; made < jumps && group.progress.up; made++) group.jump(letterFor(draw, false));
        const open = [...group.bars].filter(([, { state }]) => verticalProgressOf(state).awaits !== null);
        const { phase, finished } = group.progress;
        expect(finished).toEqual([...group.bars.keys()].filter((key) => !open.some(([one]) => one === key)));
        expect(phase === 'complete').toBe(open.length === 0);
      }),
      { numRuns: RUNS },
    );
  });
});

function letterFor(draw: Draw, jumpOff: boolean): string {
  if (jumpOff) return draw.pick(['O', 'X']);
  return draw.chance(4) ? 'r' : draw.pick(['O', 'X', 'X', '-']);
}

function giveUp(group: BarGroup, key: string): void {
  const bar = group.bars.get(key)!;
  const { left } = verticalProgressOf(bar.state);
  const height = bar.state.heights.at(-1)! + 5;
  bar.enter({ kind: 'bar', height, leavesOut: [] });
  for (const competitor of left) {
    const judgement = { outcome: 'retired', foul: null, incident: null, protested: false } as const;
    bar.enter({ kind: 'jump', competitor, height, trial: 1, ...judgement });
  }
}
