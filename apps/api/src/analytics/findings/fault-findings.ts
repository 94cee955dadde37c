import {
  answerOf,
  assessedThrows,
  chanceOf,
  doubleNotes,
  effectLines,
  effectSentence,
  foulLink,
  foulSentence,
  furtherThrows,
  isArmOrShoulder,
  isTaught,
  movingTogether,
  observerAgreement,
  phaseOrder,
  prevalence,
  prevalenceSentence,
  readAs,
  screened,
  seedOf,
  stageNumber,
  definitionOf,
  type Answer,
  type AssessedSeries,
  type FaultDefinition,
  type FaultEffect,
  type FoulLink,
  type Prevalence,
} from '#technique';
import { flat, intervalOf, refusedOf, type Grounds, type OpenInterval } from './answers.js';
import { idsOf } from './series-of.js';
import { ANALYSIS_VERSION, dateOf, type AnalysisTask, type KnownThrow } from './task.js';

export interface Seen extends Grounds {
  readonly k: number | null;
  readonly n: number | null;
  readonly share: number | null;
  readonly interval: OpenInterval | null;
  /** Throws that were looked at for something else only. */
  readonly notAssessed: number | null;
  readonly sentence: string;
}

export interface Effect extends Grounds {
  readonly percent: number | null;
  readonly interval: OpenInterval | null;
  readonly p: number | null;
  readonly isExact: boolean;
  readonly draws: number;
  readonly informativeSeries: number | null;
  readonly throwsWith: number | null;
  readonly throwsWithout: number | null;
  readonly notYetKnown: boolean;
  /** About how many more throws it would take to know. */
  readonly furtherThrows: number | null;
  readonly sentence: string;
  /** On log marks, for pooling; no field of the API. */
  readonly beta: number | null;
  readonly standardError: number | null;
}

export interface Fouls extends Grounds {
  readonly riskDifference: number | null;
  readonly oddsRatio: number | null;
  readonly interval: OpenInterval | null;
  readonly p: number | null;
  readonly throwsWith: number | null;
  readonly throwsWithout: number | null;
  readonly sentence: string;
}

export interface FaultFindings {
  readonly code: string;
  readonly name: string;
  readonly point: string;
  readonly phase: string;
  readonly caution: string | null;
  readonly isArmOrShoulder: boolean;
  readonly isTaught: boolean;
  readonly seen: Seen;
  readonly overTime: readonly { readonly month: string; readonly seen: Seen }[];
  /** Noted before the mark was known. */
  readonly distance: Effect;
  readonly distanceOfAll: Effect;
  readonly roundTakenOut: Effect;
  readonly perSeverity: Effect;
  readonly fouls: Fouls;
  /** Share of wrong leads among those as striking; null where there is no effect. */
  readonly q: number | null;
  readonly worthTesting: boolean;
  /** Faults that come and go with it. */
  readonly movesWith: readonly string[];
}

/** What the ranking needs beside what is shown. */
export interface Found {
  readonly findings: FaultFindings;
  readonly definition: FaultDefinition;
  readonly effect: Answer<FaultEffect>;
  readonly link: Answer<FoulLink>;
  readonly prevalence: Answer<Prevalence>;
}

/** Codes that somebody looked for or noted in these throws, as they are read now, in the order of the throw. */
export function codesSeen({ throws, observations, vocabulary, event }: AnalysisTask): readonly string[] {
  const known = new Set(idsOf(throws));
  const codes = observations
    .filter(({ throwId }) => known.has(throwId))
    .flatMap(({ scope, marks }) => [
      ...(scope.kind === 'noticed' ? [] : scope.codes),
      ...marks.map(({ code }) => code),
    ]);
  const read = [...new Set(codes)].map((code) => readAs(vocabulary, code));
  const place = (code: string): number => phaseOrder(event, definitionOf(vocabulary, code)?.phase ?? '');
  return [...new Set(read)]
    .filter((code) => definitionOf(vocabulary, code)?.event === event)
    .sort((a, b) => place(a) - place(b) || (a < b ? -1 : 1));
}

export function faultFindings(task: AnalysisTask): readonly Found[] {
  const codes = codesSeen(task);
  const series = new Map(codes.map((code) => [code, assessedThrows(task, code, 'distance').series]));
  const groups = movingTogether(codes, (code) => series.get(code) ?? []);
  const found = codes.map((code) => findingsOf(code, series.get(code) ?? [], task));
  const worth = screened(found.map(({ findings: { code }, effect }) => ({ code, answer: effect })));
  return found.map((one, at) => {
    const { q = null, worthTesting = false } = worth[at] ?? {};
    const movesWith = groups.find((group) => group.includes(one.findings.code)) ?? [];
    const others = movesWith.filter((code) => code !== one.findings.code);
    return { ...one, findings: { ...one.findings, q, worthTesting, movesWith: others } };
  });
}

function findingsOf(code: string, distance: readonly AssessedSeries[], task: AnalysisTask): Found {
  const definition = definitionOf(task.vocabulary, code)!;
  const lookedAt = assessedIds(code, task);
  const whole = assessedThrows(task, code, 'prevalence').series;
  const share = prevalence(whole);
  const lines = effectLines(distance, optionsOf(definition, task), () =>
    chanceOf(seedOf(...task.seed, ANALYSIS_VERSION, code)),
  );
  const link = foulLink(assessedThrows(task, code, 'fouls').series);
  const effect = (answer: Answer<FaultEffect>): Effect => effectOf(answer, lookedAt);
  return {
    definition,
    effect: lines.primary,
    link,
    prevalence: share,
    findings: {
      ...{ code, name: definition.name, point: definition.point, phase: definition.phase },
      caution: definition.caution,
      isArmOrShoulder: isArmOrShoulder(definition),
      isTaught: task.stage === null || isTaught(definition.relevantFrom, task.stage),
      seen: seenOf(share, lookedAt),
      overTime: byMonth(whole, code, task),
      distance: effect(lines.primary),
      distanceOfAll: effect(lines.all),
      roundTakenOut: effect(lines.roundTakenOut),
      perSeverity: effect(lines.perSeverity),
      fouls: foulsOf(link, lookedAt),
      ...{ q: null, worthTesting: false, movesWith: [] },
    },
  };
}

function optionsOf({ code, relevantFrom }: FaultDefinition, task: AnalysisTask) {
  const agreement = agreementOn(code, task);
  const { stage, draws } = task;
  return {
    draws,
    ...(agreement && { agreement }),
    ...(stage !== null && {
      stages: { relevantFrom: stageNumber(relevantFrom), athlete: stageNumber(stage) },
    }),
  };
}

/** Of the two who looked most. */
function agreementOn(
  code: string,
  { observations, vocabulary }: AnalysisTask,
): { readonly kappa: number; readonly throws: number } | null {
  const counts = new Map<string, number>();
  for (const { observer } of observations) counts.set(observer, (counts.get(observer) ?? 0) + 1);
  const [first, second] = [...counts].sort((a, b) => b[1] - a[1]).map(([observer]) => observer);
  if (first === undefined || second === undefined) return null;
  const answer = observerAgreement(doubleNotes(observations, [first, second], code, vocabulary));
  const kappa = answer.kind === 'answer' ? answer.presence.kappa : null;
  return answer.kind === 'answer' && kappa !== null ? { kappa, throws: answer.throws } : null;
}

/** Throws that somebody looked at for the fault with a scope. */
export function assessedIds(code: string, task: AnalysisTask): readonly string[] {
  const { observations, vocabulary } = task;
  const looked = new Set(
    observations
      .filter(
        (one) => one.scope.kind !== 'noticed' && answerOf(one, code, vocabulary).state !== 'not-assessed',
      )
      .map(({ throwId }) => throwId),
  );
  return idsOf(task.throws.filter(({ id, annulled }) => !annulled && looked.has(id)));
}

export function seenOf(answer: Answer<Prevalence>, attempts: readonly string[]): Seen {
  const sentence = answer.kind === 'answer' ? prevalenceSentence(answer) : refusedOf(answer).sentence;
  const nothing = { k: null, n: null, share: null, interval: null, notAssessed: null, sentence };
  return flat(answer, attempts, nothing, ({ k, n, share, interval, notAssessed }) => ({
    ...{ k, n, share, interval: intervalOf(interval), notAssessed, sentence },
  }));
}

export function effectOf(answer: Answer<FaultEffect>, attempts: readonly string[]): Effect {
  const sentence = answer.kind === 'answer' ? effectSentence(answer) : refusedOf(answer).sentence;
  return flat(answer, attempts, { ...NO_EFFECT, sentence }, (effect) => ({
    ...{ percent: effect.percent, interval: intervalOf(effect.interval), p: effect.p, isExact: effect.exact },
    ...{ draws: effect.draws, informativeSeries: effect.informativeSeries, throwsWith: effect.throwsWith },
    ...{ throwsWithout: effect.throwsWithout, notYetKnown: effect.notYetKnown, sentence },
    ...{ beta: effect.beta, standardError: effect.standardError },
    furtherThrows: effect.notYetKnown
      ? furtherThrows(effect.throwsWith + effect.throwsWithout, effect.beta, effect.standardError)
      : null,
  }));
}

const NO_EFFECT = {
  ...{ percent: null, interval: null, p: null, isExact: false, draws: 0, informativeSeries: null },
  ...{ throwsWith: null, throwsWithout: null, notYetKnown: true, furtherThrows: null },
  ...{ beta: null, standardError: null },
};

function foulsOf(answer: Answer<FoulLink>, attempts: readonly string[]): Fouls {
  const sentence = answer.kind === 'answer' ? foulSentence(answer) : refusedOf(answer).sentence;
  const nothing = { riskDifference: null, oddsRatio: null, interval: null, p: null };
  return flat(answer, attempts, { ...nothing, throwsWith: null, throwsWithout: null, sentence }, (link) => ({
    ...{ riskDifference: link.riskDifference, p: link.decidingP, sentence },
    ...{ throwsWith: link.throwsWith, throwsWithout: link.throwsWithout },
    oddsRatio: Number.isFinite(link.oddsRatio) ? link.oddsRatio : null,
    interval: intervalOf(link.interval),
  }));
}

/** By calendar month, as far as anybody looked. */
function byMonth(
  all: readonly AssessedSeries[],
  code: string,
  task: AnalysisTask,
): FaultFindings['overTime'] {
  const months = new Map<string, AssessedSeries[]>();
  for (const series of all) {
    const month = dateOf(series.day).slice(0, 7);
    months.set(month, [...(months.get(month) ?? []), series]);
  }
  const looked = new Set(assessedIds(code, task));
  const inMonth = (month: string) => (one: KnownThrow) => looked.has(one.id) && one.onDate.startsWith(month);
  return [...months]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([month, some]) => ({
      month,
      seen: seenOf(prevalence(some), idsOf(task.throws.filter(inMonth(month)))),
    }))
    .filter(({ seen }) => seen.refused === null);
}
