import {
  assessedThrows,
  BUILT_IN_EDITION,
  foulsByReason,
  FULL_DRAWS,
  practiceToCompetition,
  type PracticeTrial,
  type Series,
} from '#technique';
import { flat, intervalOf, type Grounds, type OpenInterval } from './answers.js';
import { faultFindings, type FaultFindings } from './fault-findings.js';
import { focusOutcomes, type FocusOutcome } from './focus-outcomes.js';
import { implementFindings, weekStart, type ImplementFindings } from './implement-findings.js';
import { childPoint, nextPoints, type NextPoint } from './next-point.js';
import { byImplement, idsOf, plainSeries } from './series-of.js';
import { ANALYSIS_VERSION, type AnalysisTask, type KnownThrow } from './task.js';

export interface Week {
  readonly from: string;
  readonly throws: number;
  readonly inCompetition: number;
  readonly days: number;
}

export interface Transfer extends Grounds {
  readonly ratio: number | null;
  readonly interval: OpenInterval | null;
  readonly p: number | null;
  readonly pairs: number | null;
  readonly hasEstimatedMarks: boolean;
}

interface Common {
  readonly analysisVersion: number;
  readonly vocabularyEdition: string;
  /** A first answer with few draws; a more exact one is being made. */
  readonly isFirstAnswer: boolean;
  readonly draws: number;
  readonly implements: readonly ImplementFindings[];
  /** A count and never a target. */
  readonly weeks: readonly Week[];
  readonly suddenDrop: boolean;
}

export interface WholeAnalysis extends Common {
  readonly kind: 'whole';
  readonly faults: readonly FaultFindings[];
  readonly next: readonly NextPoint[];
  readonly foulsByReason: readonly {
    readonly reason: string;
    readonly count: number;
    readonly attempts: readonly string[];
  }[];
  readonly transfer: Transfer;
  readonly focuses: readonly FocusOutcome[];
}

/** For a child nothing that compares, forecasts or prices: own progress, how often points are seen, one to try. */
export interface ChildAnalysis extends Common {
  readonly kind: 'child';
  readonly faults: readonly Pick<FaultFindings, 'code' | 'name' | 'point' | 'seen' | 'overTime'>[];
  readonly tryNext: { readonly code: string; readonly point: string } | null;
  readonly focuses: readonly FocusOutcome[];
}

export type Analysis = WholeAnalysis | ChildAnalysis;

/** Everything about one athlete in one event. What comes out depends on the task alone. */
export function analyse(task: AnalysisTask): Analysis {
  const found = faultFindings(task);
  const implementsFound = implementFindings(task);
  const common: Common = {
    ...{ analysisVersion: ANALYSIS_VERSION, vocabularyEdition: BUILT_IN_EDITION, draws: task.draws },
    isFirstAnswer:
      task.draws < FULL_DRAWS && found.some(({ effect }) => effect.kind === 'answer' && !effect.exact),
    implements: implementsFound,
    weeks: weeksOf(task.throws),
    suddenDrop: implementsFound.some(({ suddenDrop }) => suddenDrop),
  };
  const focuses = focusOutcomes(task);
  if (task.child) {
    const faults = found.map(({ findings: { code, name, point, seen, overTime } }) => ({
      ...{ code, name, point, seen, overTime },
    }));
    return { kind: 'child', ...common, faults, tryNext: childPoint(found, task), focuses };
  }
  return {
    kind: 'whole',
    ...common,
    faults: found.map(({ findings }) => findings),
    next: nextPoints(found, task),
    foulsByReason: reasonsOf(task.throws),
    transfer: transferOf(task),
    focuses,
  };
}

function weeksOf(throws: readonly KnownThrow[]): readonly Week[] {
  const weeks = new Map<string, KnownThrow[]>();
  for (const one of throws.filter(({ outcome }) => outcome !== 'pass')) {
    const from = weekStart(one.onDate);
    const week = weeks.get(from);
    if (week) week.push(one);
    else weeks.set(from, [one]);
  }
  return [...weeks]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([from, all]) => ({
      ...{ from, throws: all.length, days: new Set(all.map(({ onDate }) => onDate)).size },
      inCompetition: all.filter(({ thrownIn }) => thrownIn === 'competition').length,
    }));
}

function reasonsOf(throws: readonly KnownThrow[]): WholeAnalysis['foulsByReason'] {
  const fouls = throws.filter(
    ({ outcome, annulled, voidedOnPurpose }) => outcome === 'foul' && !annulled && !voidedOnPurpose,
  );
  return foulsByReason(fouls.map(({ foul }) => foul)).map(({ reason, count }) => ({
    ...{ reason, count },
    attempts: idsOf(fouls.filter(({ foul }) => (foul ?? 'unknown') === reason)),
  }));
}

/** Of the implement and the variant that most competitions were thrown with. */
function transferOf(task: AnalysisTask): Transfer {
  const [main] = byImplement(task.throws.filter(({ thrownIn }) => thrownIn === 'competition'));
  const same = byImplement(task.throws).find(({ implement }) => implement === main?.implement)?.throws ?? [];
  const answer = practiceToCompetition(
    plainSeries(main?.throws ?? [], task, 'fouls'),
    practicesOf(same, task),
  );
  const none = { ratio: null, interval: null, p: null, pairs: null, hasEstimatedMarks: false };
  return flat(answer, idsOf(same), none, ({ ratio, interval, p, pairs, estimatedMarks }) => ({
    ...{ ratio, interval: intervalOf(interval), p, pairs: pairs.length, hasEstimatedMarks: estimatedMarks },
  }));
}

/** Practice marks that were paced stay in here, and say so. */
function practicesOf(
  throws: readonly KnownThrow[],
  { vocabulary }: AnalysisTask,
): readonly Series<PracticeTrial>[] {
  const practice = throws.filter(({ thrownIn }) => thrownIn === 'practice');
  const measuredIn = new Map(
    practice.map(({ occasion, round, measured }) => [`${occasion} ${round}`, measured]),
  );
  const { series } = assessedThrows({ throws: practice, observations: [], vocabulary }, '', 'prevalence');
  return series.map((one) => ({
    ...one,
    trials: one.trials.map(({ round, markCm }) => ({
      ...{ round, markCm, measured: measuredIn.get(`${one.id.split(' ')[1]} ${round}`) ?? false },
    })),
  }));
}
