import type { JumpJudgement, JumpMoveEntry, Unit, VerticalBody, VerticalSetup } from '#rules';
import type { BarSetInput, JumpOrderSetInput } from './bar.inputs.js';
import type { EntryInput } from './entry.inputs.js';
import { Unreadable, type EntryRequest, type FieldNames } from './entry-request.js';
import type {
  JumpCorrectInput,
  JumpJudgementInput,
  JumpOffRecordInput,
  JumpRecordInput,
  JumpsMoveInput,
} from './jump.inputs.js';
import { markIn } from './marks-in.js';
import { requestFor } from './request-of.js';

const FIELDS: FieldNames = { protested: 'isProtested' };
const JUMP_OFF_FIELDS: FieldNames = { ...FIELDS, trial: 'round' };

export function jumpRequest(input: JumpRecordInput): EntryRequest {
  const { competitorId: competitor, trial } = input;
  const bodyOf = (height: number): VerticalBody => ({
    kind: 'jump',
    competitor,
    height,
    trial,
    ...judgementOf(input),
  });
  return requestAtHeight(input, bodyOf, FIELDS);
}

export function jumpOffRequest(input: JumpOffRecordInput): EntryRequest {
  const { competitorId: competitor, round: trial } = input;
  const bodyOf = (height: number): VerticalBody => ({
    kind: 'jump-off',
    competitor,
    height,
    trial,
    ...judgementOf(input),
  });
  return requestAtHeight(input, bodyOf, JUMP_OFF_FIELDS);
}

export function jumpOrderRequest(input: JumpOrderSetInput): EntryRequest {
  const { trial, competitorIds: competitors, reason } = input;
  return requestAtHeight(input, (height) => ({ kind: 'jump-order', height, trial, competitors, reason }));
}

export function barSetRequest(input: BarSetInput): EntryRequest {
  const bodyFor = ({ unit }: VerticalSetup): VerticalBody | Unreadable => {
    const height = markIn(unit, ['height'], input.height);
    const leavesOut = eachRead(input.leavesOut, (text, at) => markIn(unit, ['leavesOut', String(at)], text));
    if (height instanceof Unreadable) return height;
    return leavesOut instanceof Unreadable ? leavesOut : { kind: 'bar', height, leavesOut };
  };
  return requestFor(input, { in: 'vertical', bodyFor });
}

export function jumpCorrectionRequest(input: JumpCorrectInput): EntryRequest {
  const { attemptId: attempt, reason, expectedVersion } = input;
  const body: VerticalBody = { kind: 'jump-correction', attempt, reason, ...judgementOf(input) };
  const entered = { in: 'vertical', bodyFor: () => body, fields: FIELDS } as const;
  return requestFor(input, entered, expectedVersion);
}

export function jumpMoveRequest(input: JumpsMoveInput): EntryRequest {
  const bodyFor = ({ unit }: VerticalSetup): VerticalBody | Unreadable => {
    const moves = movesIn(unit, input);
    return moves instanceof Unreadable ? moves : { kind: 'jump-move', moves, reason: input.reason };
  };
  return requestFor(input, { in: 'vertical', bodyFor }, input.expectedVersion);
}

function movesIn(unit: Unit, { moves }: JumpsMoveInput): JumpMoveEntry['moves'] | Unreadable {
  return eachRead(moves, ({ attemptId: attempt, competitorId: competitor, height: text, trial }, at) => {
    const height = markIn(unit, ['moves', String(at), 'height'], text);
    return height instanceof Unreadable ? height : { attempt, competitor, height, trial };
  });
}

function requestAtHeight(
  input: EntryInput & { readonly height: string },
  bodyOf: (height: number) => VerticalBody,
  fields?: FieldNames,
): EntryRequest {
  const bodyFor = ({ unit }: VerticalSetup): VerticalBody | Unreadable => {
    const height = markIn(unit, ['height'], input.height);
    return height instanceof Unreadable ? height : bodyOf(height);
  };
  return requestFor(input, { in: 'vertical', bodyFor, ...(fields && { fields }) });
}

function judgementOf({ outcome, foul, incident, isProtested }: JumpJudgementInput): JumpJudgement {
  return { outcome, foul: foul ?? null, incident: incident ?? null, protested: isProtested };
}

/** All of a list, or the first that cannot be read. */
function eachRead<T, U>(list: readonly T[], read: (one: T, at: number) => U | Unreadable): U[] | Unreadable {
  const all: U[] = [];
  for (const [at, one] of list.entries()) {
    const value = read(one, at);
    if (value instanceof Unreadable) return value;
    all.push(value);
  }
  return all;
}
