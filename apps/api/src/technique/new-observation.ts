import type { NewObservation } from '#persistence';
import type { EventCode } from '#rules';
import {
  isTechniqueEvent,
  observationProblems,
  type Handedness,
  type Observation,
  type Scope,
  type Vocabulary,
} from '#technique';
import { fingerprintOf } from '../platform/competition/fingerprint.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { isGiven } from '../platform/inputs/given.js';
import { reasonOf } from './batch.js';
import type { LoggedBy } from './new-throw.js';
import type { ObservationNoteInput } from './observations.inputs.js';
import { notTaught } from './vocabulary.service.js';
import { stored } from './words-for.js';

/** The throw that was looked at: one of practice, or a trial. */
export interface ThrowSeen {
  readonly athleteId: string;
  readonly event: EventCode;
  /** As far as it is known yet. */
  readonly outcome: 'valid' | 'foul' | 'pass';
  readonly practiceThrowId: string | null;
  readonly trial: {
    readonly competitionId: string;
    readonly competitorId: string;
    readonly round: number;
  } | null;
}

/** The row of an observation as it was sent, or everything that is wrong with it. */
export function newObservation(
  input: ObservationNoteInput,
  seen: ThrowSeen,
  by: LoggedBy & { readonly vocabulary: Vocabulary; readonly hand: Handedness | null },
  path: readonly string[],
): NewObservation | readonly Refusal[] {
  const problems = problemsOf(input, seen, by.vocabulary, path);
  if (problems.length > 0) return problems;
  const content = {
    ...{ athleteId: seen.athleteId, event: seen.event, practiceThrowId: seen.practiceThrowId },
    ...(seen.trial ?? { competitionId: null, competitorId: null, round: null }),
    ...{ observedAt: input.observedAt.toISOString(), method: input.method, markKnown: input.markKnown },
    ...{ view: input.view ?? null, scope: input.scope ?? null },
    checklist: input.checklist?.name ?? null,
    checklistVersion: input.checklist?.version ?? null,
    marks: marksOf(input),
    note: isGiven(input.note) ? stored(input.note, by.hand) : null,
    ...{ isWithdrawn: input.isWithdrawn, replacesId: input.replacesId ?? null, reason: input.reason ?? null },
  };
  const { organisationId, personId: observerId, device, deviceAt } = by;
  const { edition } = by.vocabulary;
  // The hand may become known between two sends of the same note.
  const fingerprint = fingerprintOf(seen.athleteId, { ...content, note: input.note ?? null });
  return { ...content, organisationId, id: input.id, observerId, edition, device, deviceAt, fingerprint };
}

function marksOf({ marks }: ObservationNoteInput): NewObservation['marks'] {
  return marks.map(({ code, severity, sure, causedBy }) => ({
    ...{ code, severity, sure, causedBy: causedBy ?? null },
  }));
}

function problemsOf(
  input: ObservationNoteInput,
  { event, outcome }: ThrowSeen,
  vocabulary: Vocabulary,
  path: readonly string[],
): readonly Refusal[] {
  if (!isTechniqueEvent(event)) return [notTaught(path)];
  const without = reasonOf(input.replacesId, input.reason, input.isWithdrawn, path);
  const unscoped = isGiven(input.checklist) && !isGiven(input.scope) ? [scopeMissing(path)] : [];
  const observation: Observation = {
    ...{ id: input.id, throwId: '', observer: '', observedAt: '', note: null, view: input.view ?? null },
    ...{ method: input.method, markKnown: input.markKnown, scope: scopeOf(input), marks: marksOf(input) },
  };
  const problems = observationProblems(observation, { event, outcome }, vocabulary).map((problem) =>
    refusal({
      code: problem.code,
      path: [...path, ...problem.path.replace(/^scope\.codes/, 'scope').split('.')],
      message: problem.sentence,
      remedy: 'Note only what was looked at; faultVocabulary has the points of the event.',
    }),
  );
  return [...(without ? [without] : []), ...unscoped, ...problems];
}

function scopeOf({ scope, checklist }: ObservationNoteInput): Scope {
  if (!isGiven(scope)) return { kind: 'noticed' };
  return isGiven(checklist)
    ? { kind: 'checklist', name: checklist.name, version: checklist.version, codes: scope }
    : { kind: 'codes', codes: scope };
}

function scopeMissing(path: readonly string[]): Refusal {
  return refusal({
    code: 'SCOPE_MISSING',
    path: [...path, 'scope'],
    message: 'A checklist says what was looked for.',
    remedy: 'Send the codes of the checklist as the scope.',
  });
}
