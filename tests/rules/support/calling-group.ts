import {
  groupProgressOf,
  latestJump,
  latestThrow,
  type CallingGroup,
  type CompetitionSetup,
  type GroupCall,
  type GroupProgress,
  type VerticalSetup,
} from '#rules';
import { Bar, highJumpOf } from './bar.js';
import { Circle, discus } from './competition.js';

/** Competitions of throws under one clock; competitors are called by the competition and their letter: `A.a`. */
export class CircleGroup {
  readonly circles: ReadonlyMap<string, Circle>;
  private readonly times = new Map<string, number>();
  private now = 0;

  constructor(
    setups: Readonly<Record<string, CompetitionSetup>>,
    readonly startOrder: readonly string[] | null = null,
  ) {
    this.circles = new Map(Object.entries(setups).map(([key, setup]) => [key, new Circle(setup)]));
  }

  get group(): Extract<CallingGroup, { kind: 'distance' }> {
    const competitions = [...this.circles].map(([key, { state }]) => {
      return { key, state, lastTrialAt: latestThrow(state) === null ? null : (this.times.get(key) ?? null) };
    });
    return { kind: 'distance', competitions, startOrder: this.startOrder };
  }

  get progress(): GroupProgress {
    return groupProgressOf(this.group);
  }

  /** The trial of whoever is called, or of somebody else. */
  trial(
    cell: string,
    call: Pick<GroupCall, 'competition' | 'competitor' | 'round'> = this.progress.up!,
  ): void {
    this.circles.get(call.competition)!.trial(call.competitor, call.round, cell);
    this.times.set(call.competition, (this.now += 1));
  }
}

/** Competitions at one bar. */
export class BarGroup {
  readonly bars: ReadonlyMap<string, Bar>;
  private readonly times = new Map<string, number>();
  private now = 0;

  constructor(
    setups: Readonly<Record<string, VerticalSetup>>,
    readonly startOrder: readonly string[] | null = null,
  ) {
    this.bars = new Map(Object.entries(setups).map(([key, setup]) => [key, new Bar(setup)]));
  }

  get group(): Extract<CallingGroup, { kind: 'vertical' }> {
    const competitions = [...this.bars].map(([key, { state }]) => {
      return { key, state, lastTrialAt: latestJump(state) === null ? null : (this.times.get(key) ?? null) };
    });
    return { kind: 'vertical', competitions, startOrder: this.startOrder };
  }

  get progress(): GroupProgress {
    return groupProgressOf(this.group);
  }

  /** The jump of whoever is called. */
  jump(letter: string, call: GroupCall = this.progress.up!): void {
    const { competition, competitor, round: trial, height, jumpOff } = call;
    const outcome = ({ O: 'cleared', X: 'failed', '-': 'passed', r: 'retired' } as const)[letter]!;
    this.bars.get(competition)!.enter({
      kind: jumpOff ? 'jump-off' : 'jump',
      ...{ competitor, height: height!, trial, outcome, foul: null, incident: null, protested: false },
    });
    this.times.set(competition, (this.now += 1));
  }
}

/** A discus of the group's own competitors, `A.a`, `A.b`, …, by flights: one letter for each competitor. */
export function discusOf(
  key: string,
  flights: readonly (string | null)[],
  changes: Partial<CompetitionSetup> = {},
): CompetitionSetup {
  const setup = discus(flights.length, changes);
  return {
    ...setup,
    competitors: setup.competitors.map((one, at) => ({
      ...one,
      key: `${key}.${one.key}`,
      flight: flights[at] ?? null,
    })),
  };
}

export function highJumpIn(
  key: string,
  heights: string,
  count: number,
  changes: Partial<VerticalSetup> = {},
): VerticalSetup {
  const setup = highJumpOf(heights, count, changes);
  return { ...setup, competitors: setup.competitors.map((one) => ({ ...one, key: `${key}.${one.key}` })) };
}

/** `A.a1 B.x1`: who is called for which round. */
export function inWords(calls: readonly GroupCall[]): string {
  return calls.map(({ competitor, round }) => `${competitor}${round}`).join(' ');
}
