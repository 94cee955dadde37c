import {
  formatMark,
  ruleSet,
  resolvePlan,
  waitsUntil,
  type InterruptionCause,
  type StartDelay,
} from '#rules';
import {
  COMPETITION_FORMAT,
  type Call,
  type Cut,
  type Delay,
  type PublicCompetition,
  type ResultState,
  type SafetyStop,
} from '#scoreboard';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { resultStateIn } from '../platform/competition/proceedings.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { CompetitionProgress, PubliclyShown } from '../results/results.service.js';
import { meetHead } from './heads.js';
import { rowsOf } from './snapshot-rows.js';

type TrialCall = NonNullable<CompetitionProgress['up']>;

/** What everybody may see of a competition at one version. */
export function competitionSnapshot(shown: PubliclyShown, startDelay: StartDelay | null): PublicCompetition {
  const { loaded, table, progress } = shown;
  const { row, meet } = loaded;
  const protested = table.rowsIfProtestsSucceed;
  return {
    format: COMPETITION_FORMAT,
    id: globalId('Competition', row.id),
    version: row.version,
    changedAt: loaded.changedAt?.toISOString() ?? null,
    meet: meetHead(meet),
    title: row.title,
    event: row.event,
    kind: loaded.kind === 'vertical' ? 'bar' : 'rounds',
    stage: row.stage,
    isIndoor: row.indoor,
    rules: table.rules,
    unit: row.unit === 'cm' ? 'cm' : 'quarter-inch',
    sex: row.categorySex,
    age: row.categoryAge,
    implementGrams: row.implementGrams,
    startsAt: row.startsAt === null ? null : new Date(row.startsAt).toISOString(),
    delay: delayOf(startDelay, progress),
    stop: stopOf(loaded),
    state: stateOf(shown),
    isDisputed: table.isDisputed,
    isJumpOff: progress.phase === 'jump-off',
    round: progress.round,
    rounds: roundsOf(loaded),
    bar: progress.vertical && { height: progress.vertical.bar, next: progress.vertical.nextHeight },
    calls: callsOf(shown),
    qualifying: row.qualifying && {
      standard: formatMark(row.qualifying.standard, row.unit),
      fill: row.qualifying.fill,
    },
    cuts: cutsOf(shown),
    heights: table.vertical?.heights ?? [],
    rows: rowsOf(shown),
    ifProtestsSucceed:
      protested && protested.map(({ competitor, place, mark }) => ({ competitor, place, mark })),
  };
}

/** Until the first trial there is no result that could stand anywhere. */
export function stateOf({ loaded, progress }: PubliclyShown): ResultState {
  return progress.phase === 'not started' ? 'scheduled' : resultStateIn(loaded).state;
}

/** Once it has begun nobody asks any more when it should have. */
export function delayOf(
  delay: StartDelay | null,
  { phase }: Pick<CompetitionProgress, 'phase'>,
): Delay | null {
  if (delay === null || phase !== 'not started') return null;
  const { plannedAt, startsAt, reason } = delay;
  return {
    plannedAt: new Date(plannedAt).toISOString(),
    startsAt: new Date(startsAt).toISOString(),
    reason,
  };
}

/** That somebody was hurt, or what broke, is for those at the circle. */
const PUBLIC_CAUSE: Readonly<Record<InterruptionCause, SafetyStop['cause']>> = {
  lightning: 'lightning',
  weather: 'weather',
  'wet-surface': 'weather',
  light: 'weather',
  'person-in-sector': 'safety',
  'cage-or-net': 'safety',
  implement: 'safety',
  injury: 'safety',
  other: 'safety',
};

/** Lightning before all else, since everybody has to go. */
export function stopOf({ state, row }: LoadedCompetition): SafetyStop | null {
  const { stops } = state.safety;
  const stop = stops.find(({ cause }) => cause === 'lightning') ?? stops[0];
  if (stop === undefined) return null;
  const until = waitsUntil(stops, row.rules);
  return {
    cause: PUBLIC_CAUSE[stop.cause],
    since: new Date(stop.seenAt).toISOString(),
    notBefore: until === null ? null : new Date(until).toISOString(),
  };
}

export function roundsOf({ row }: Pick<LoadedCompetition, 'row'>): number | null {
  if (row.vertical) return null;
  const plan = resolvePlan(ruleSet(row.rules, row.edition), row.stage, row.plan);
  return plan.ok ? plan.plan.rounds : null;
}

function callsOf({ loaded, progress }: PubliclyShown): Call[] {
  const clubs = new Map(loaded.roster.map(({ competitor, club }) => [competitor.bib, club]));
  return [progress.up, progress.next, progress.then].flatMap((call) =>
    call ? [callOf(call, clubs.get(call.bib) ?? null)] : [],
  );
}

function callOf({ competitor, bib, name, round, flight, height }: TrialCall, club: string | null): Call {
  return { competitor, bib, name, club, round, flight, height };
}

/** Only where there are more than may go on does anybody have to beat a mark. */
function cutsOf({ loaded, table }: PubliclyShown): Cut[] {
  if (loaded.kind === 'vertical') return [];
  const { state } = loaded;
  const { cuts } = state.setup.plan;
  const bestUntil = (competitor: string, round: number): string | null => {
    const own = state.competitors.find(({ key }) => globalId('Competitor', key) === competitor);
    const marks = (own?.series ?? []).slice(0, round).flatMap((id) => {
      const mark = id === null ? null : state.attempts.get(id)!.judgement.mark;
      return mark === null ? [] : [mark];
    });
    return marks.length === 0 ? null : formatMark(Math.max(...marks), state.setup.unit);
  };
  return table.cuts.map(({ afterRound, through }) => {
    const size = cuts.find(({ after }) => after === afterRound)?.through ?? Infinity;
    const last = through.length >= size ? through[size - 1] : undefined;
    const isOpen = state.competitors.length > size;
    return { afterRound, line: isOpen && last !== undefined ? bestUntil(last, afterRound) : null, through };
  });
}
