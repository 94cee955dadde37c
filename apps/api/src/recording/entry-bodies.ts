import { parseWind, type CompetitionSetup, type EntryBody, type Judgement } from '#rules';
import { isGiven } from '../platform/inputs/given.js';
import type { JudgementInput } from './entry.inputs.js';
import { Unreadable, type EntryRequest } from './entry-request.js';
import { optionalMarkIn } from './marks-in.js';
import { requestFor, roundRequest } from './request-of.js';
import type {
  AttemptCorrectInput,
  AttemptRecordInput,
  AttemptsMoveInput,
  AttemptWindRecordInput,
} from './trial.inputs.js';

const FIELDS = { protested: 'protestedMark' } as const;

export function attemptRequest(input: AttemptRecordInput): EntryRequest {
  const { competitorId: competitor, round } = input;
  return judgedRequest(input, (judgement) => ({ kind: 'attempt', competitor, round, ...judgement }));
}

export function correctionRequest(input: AttemptCorrectInput): EntryRequest {
  const { attemptId: attempt, reason, expectedVersion } = input;
  return judgedRequest(
    input,
    (judgement) => ({ kind: 'correction', attempt, reason, ...judgement }),
    expectedVersion,
  );
}

function judgedRequest(
  input: JudgementInput,
  bodyOf: (judgement: Judgement) => EntryBody,
  expectedVersion: number | null = null,
): EntryRequest {
  const bodyFor = (setup: CompetitionSetup): EntryBody | Unreadable => {
    const judgement = judgementIn(setup, input);
    return judgement instanceof Unreadable ? judgement : bodyOf(judgement);
  };
  return requestFor(input, { in: 'distance', bodyFor, fields: FIELDS }, expectedVersion);
}

function judgementIn({ unit }: CompetitionSetup, input: JudgementInput): Judgement | Unreadable {
  const mark = optionalMarkIn(unit, ['mark'], input.mark);
  const protested = optionalMarkIn(unit, ['protestedMark'], input.protestedMark);
  if (mark instanceof Unreadable) return mark;
  if (protested instanceof Unreadable) return protested;
  return {
    outcome: input.outcome,
    mark,
    wind: typeof input.wind === 'string' ? parseWind(input.wind) : null,
    foul: input.foul ?? null,
    protested,
    implementGrams: input.implementGrams ?? null,
    ...(isGiven(input.implementId) && { implementId: input.implementId }),
  };
}

/** A wind by itself: measured, or not measured and never will be. */
export function windRequest(input: AttemptWindRecordInput): EntryRequest {
  // The scalar has read it: what is left here can be read again.
  const wind = parseWind(input.wind) ?? 'NWI';
  return { ...roundRequest(input, { kind: 'wind', attempt: input.attemptId, wind }), isWind: true };
}

export function moveRequest(input: AttemptsMoveInput): EntryRequest {
  const moves = input.moves.map(({ attemptId: attempt, competitorId: competitor, round }) => ({
    attempt,
    competitor,
    round,
  }));
  return roundRequest(input, { kind: 'move', moves, reason: input.reason }, input.expectedVersion);
}
