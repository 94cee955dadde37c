import {
  formatMark,
  parseMark,
  parseWind,
  type CompetitionSetup,
  type EntryBody,
  type Judgement,
} from '#rules';
import type { EntryInput, JudgementInput } from './entry.inputs.js';
import { Unreadable, type EntryRequest } from './entry-request.js';
import type {
  AttemptCorrectInput,
  AttemptRecordInput,
  AttemptsMoveInput,
  AttemptWindRecordInput,
} from './trial.inputs.js';

const UNIT_NAMES = { cm: 'metres with two decimals', qin: 'feet-inches' } as const;
const UNIT_EXAMPLES = { cm: formatMark(5810, 'cm'), qin: formatMark(9151, 'qin') } as const;

/** The request for an entry whose body needs nothing of the competition. */
export function requestOf(
  input: EntryInput,
  body: EntryBody,
  expectedVersion: number | null = null,
): EntryRequest {
  return requestFor(input, () => body, expectedVersion);
}

export function attemptRequest(input: AttemptRecordInput): EntryRequest {
  const { competitorId: competitor, round } = input;
  return requestFor(input, (setup) =>
    withJudgement(input, setup, (judgement) => ({ kind: 'attempt', competitor, round, ...judgement })),
  );
}

export function correctionRequest(input: AttemptCorrectInput): EntryRequest {
  const { attemptId: attempt, reason, expectedVersion } = input;
  return requestFor(
    input,
    (setup) =>
      withJudgement(input, setup, (judgement) => ({ kind: 'correction', attempt, reason, ...judgement })),
    expectedVersion,
  );
}

function requestFor(
  { competitionId, entryId, device, deviceAt }: EntryInput,
  bodyFor: EntryRequest['bodyFor'],
  expectedVersion: number | null = null,
): EntryRequest {
  return {
    competitionId,
    entryId,
    device: device ?? null,
    deviceAt: deviceAt ?? null,
    expectedVersion,
    bodyFor,
  };
}

function withJudgement(
  input: JudgementInput,
  setup: CompetitionSetup,
  body: (judgement: Judgement) => EntryBody,
): EntryBody | Unreadable {
  const mark = markIn(setup, 'mark', input.mark);
  const protested = markIn(setup, 'protestedMark', input.protestedMark);
  if (mark instanceof Unreadable) return mark;
  if (protested instanceof Unreadable) return protested;
  return body({
    outcome: input.outcome,
    mark,
    wind: typeof input.wind === 'string' ? parseWind(input.wind) : null,
    foul: input.foul ?? null,
    protested,
    implementGrams: input.implementGrams ?? null,
  });
}

/** A competition is measured in one unit; a mark of the other is a mark of another event's tape. */
function markIn(
  { unit }: CompetitionSetup,
  field: string,
  text: string | null | undefined,
): number | null | Unreadable {
  const mark = typeof text === 'string' ? parseMark(text) : null;
  if (mark === null) return null;
  if (mark.unit === unit) return mark.value;
  return new Unreadable({
    code: 'MARK_UNIT',
    message: `This competition is measured in ${UNIT_NAMES[unit]}.`,
    path: [field],
    remedy: `Send the mark as it was measured, like "${UNIT_EXAMPLES[unit]}"; it is never converted.`,
  });
}

/** A wind by itself: measured, or not measured and never will be. */
export function windRequest(input: AttemptWindRecordInput): EntryRequest {
  // The scalar has read it: what is left here can be read again.
  return requestOf(input, { kind: 'wind', attempt: input.attemptId, wind: parseWind(input.wind) ?? 'NWI' });
}

export function moveBody({ moves, reason }: AttemptsMoveInput): EntryBody {
  return {
    kind: 'move',
    moves: moves.map(({ attemptId: attempt, competitorId: competitor, round }) => ({
      attempt,
      competitor,
      round,
    })),
    reason,
  };
}
