import type { AssessedSeries, AssessedTrial, Severity } from '../faults/assessed.js';
import { grouped } from '../numbers/moments.js';
import type { Vocabulary } from '../vocabulary/vocabulary.js';
import { answerOf, type Observation } from './observation.js';
import type { Thrown } from './thrown.js';

/** What the series are for: what stays out depends on it. */
export type Purpose = 'distance' | 'fouls' | 'prevalence';

/** Why a throw is in no number. */
export const LEFT_OUT_REASONS = [
  'PASS',
  'ANNULLED',
  'VOIDED_ON_PURPOSE',
  'EFFORT_NOT_SAID',
  'NOT_MEASURED',
] as const;
export type LeftOutReason = (typeof LEFT_OUT_REASONS)[number];

export interface AssessedThrows {
  readonly series: readonly AssessedSeries[];
  readonly leftOut: readonly { readonly throwId: string; readonly reason: LeftOutReason }[];
}

/** All that is noted of some throws. */
export interface Notes {
  readonly throws: readonly Thrown[];
  readonly observations: readonly Observation[];
  readonly vocabulary: Vocabulary;
}

/**
 * The series of one athlete with what was noted of one fault, for a purpose. Throws are compared only with throws of
 * the same occasion, implement, variant and intended effort. A practice throw whose effort nobody said, or whose mark
 * nobody measured, is in no link with distance or fouls.
 */
export function assessedThrows(
  { throws, observations, vocabulary }: Notes,
  code: string,
  purpose: Purpose,
): AssessedThrows {
  const leftOut: { throwId: string; reason: LeftOutReason }[] = [];
  const used = throws.filter((thrown) => {
    const reason = reasonToLeaveOut(thrown, purpose);
    if (reason) leftOut.push({ throwId: thrown.id, reason });
    return reason === null;
  });
  const byThrow = grouped(observations, ({ throwId }) => throwId);
  const series = [...grouped(used, seriesKey)].map(([id, members]): AssessedSeries => {
    const [first] = members;
    return {
      id,
      day: first?.day ?? 0,
      implement: implementKey(members[0] as Thrown),
      trials: [...members]
        .sort((a, b) => a.round - b.round)
        .map((thrown) => trialOf(thrown, byThrow.get(thrown.id) ?? [], code, vocabulary)),
    };
  });
  return { series, leftOut };
}

function reasonToLeaveOut(thrown: Thrown, purpose: Purpose): LeftOutReason | null {
  if (thrown.outcome === 'pass') return 'PASS';
  if (thrown.annulled) return 'ANNULLED';
  if (thrown.voidedOnPurpose) return 'VOIDED_ON_PURPOSE';
  if (purpose === 'prevalence') return null;
  if (thrown.thrownIn === 'practice' && thrown.effortPercent === null) return 'EFFORT_NOT_SAID';
  const unmeasured = thrown.outcome === 'valid' && (thrown.markCm === null || !thrown.measured);
  return unmeasured ? 'NOT_MEASURED' : null;
}

function implementKey({ event, massG, variant }: Thrown): string {
  return [event, massG ?? 'any', variant].join(' ');
}

/** In a competition everybody means it; in practice throws at 80 per cent are not set against throws at 95. */
function seriesKey(thrown: Thrown): string {
  const effort = thrown.thrownIn === 'competition' ? '' : ` ${thrown.effortPercent ?? 'any'} %`;
  return `${thrown.athlete} ${thrown.occasion} ${implementKey(thrown)}${effort}`;
}

function trialOf(
  { round, markCm, outcome }: Thrown,
  observations: readonly Observation[],
  code: string,
  vocabulary: Vocabulary,
): AssessedTrial {
  const mark = outcome === 'foul' ? null : markCm;
  const answers = byTrust(observations).map((observation) => ({
    observation,
    answer: answerOf(observation, code, vocabulary),
  }));
  const looked = answers.filter(({ answer }) => answer.state !== 'not-assessed');
  const scoped = looked.find(({ observation }) => observation.scope.kind !== 'noticed');
  const chosen = scoped ?? looked[0];
  if (!chosen) return { round, markCm: mark, severity: null };
  const severity: Severity = chosen.answer.state === 'present' ? chosen.answer.severity : 0;
  return {
    round,
    markCm: mark,
    severity,
    markKnown: chosen.observation.markKnown,
    noticedOnly: scoped === undefined,
  };
}

/** Of several observations of one throw: before the mark was known, then from video, then the earliest. */
export function byTrust(observations: readonly Observation[]): readonly Observation[] {
  const live = ({ method }: Observation): number => (method === 'live' ? 1 : 0);
  return [...observations].sort(
    (a, b) =>
      Number(a.markKnown) - Number(b.markKnown) ||
      live(a) - live(b) ||
      (a.observedAt < b.observedAt ? -1 : a.observedAt > b.observedAt ? 1 : 0),
  );
}
