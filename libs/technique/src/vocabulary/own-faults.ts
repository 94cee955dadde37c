import type { FaultDefinition } from './fault-definition.js';
import { phaseOrder } from './phases.js';
import { TECHNIQUE_EVENTS } from './technique-event.js';
import { definitionOf, isActive, readAs, type CodeChange, type Vocabulary } from './vocabulary.js';

/** Why a change of the vocabulary is refused, in order of precedence. */
export const VOCABULARY_REFUSAL_CODES = [
  'UNKNOWN_CODE',
  'BUILT_IN',
  'NOT_BUILT_IN',
  'NOT_ACTIVE',
  'OTHER_EVENT',
  'PHASE_NOT_OF_EVENT',
  'NAME_MISSING',
  'NAME_TAKEN',
  'INTO_ITSELF',
  'TOO_FEW_PARTS',
] as const;
export type VocabularyRefusalCode = (typeof VOCABULARY_REFUSAL_CODES)[number];

const SENTENCES: Readonly<Record<VocabularyRefusalCode, string>> = {
  UNKNOWN_CODE: 'The vocabulary has no fault with this code.',
  BUILT_IN: 'Built-in faults stay as they are. Hide it, and define one of your own beside it.',
  NOT_BUILT_IN: 'Only built-in faults are hidden. Retire one of your own instead.',
  NOT_ACTIVE: 'The fault is retired already. What was noted under it stays.',
  OTHER_EVENT: 'The two faults belong to different events.',
  PHASE_NOT_OF_EVENT: 'The event has no such phase. Choose one of its phases.',
  NAME_MISSING: 'A fault needs a name that a coach can read at the circle.',
  NAME_TAKEN: 'The event has an active fault of that name. Use it, or choose another name.',
  INTO_ITSELF: 'A fault is not merged into itself.',
  TOO_FEW_PARTS: 'A fault is split into two or more.',
};

export type VocabularyResult =
  | { readonly kind: 'changed'; readonly vocabulary: Vocabulary; readonly codes: readonly string[] }
  | { readonly kind: 'refused'; readonly code: VocabularyRefusalCode; readonly sentence: string };

/** A fault as a coach describes it; the code is given to it. */
export type FaultDraft = Omit<FaultDefinition, 'code' | 'owner' | 'basis'>;

/** Adds a fault of the club's own under the next code of its event, which is never used again. */
export function defineFault(vocabulary: Vocabulary, draft: FaultDraft): VocabularyResult {
  const refusal = objectionToDraft(vocabulary, draft);
  if (refusal) return refusedBy(refusal);
  const code = nextCode(vocabulary, draft);
  const own: FaultDefinition = { ...draft, name: draft.name.trim(), code, owner: 'own', basis: 'own' };
  return changed({ ...vocabulary, own: [...vocabulary.own, own] }, code);
}

/** Code and history stay. */
export function renameFault(vocabulary: Vocabulary, code: string, name: string): VocabularyResult {
  const found = definitionOf(vocabulary, code);
  const refusal =
    objectionToChange(vocabulary, code) ?? (found && objectionToName(vocabulary, { ...found, name }, code));
  if (refusal) return refusedBy(refusal);
  const own = vocabulary.own.map((one) => (one.code === code ? { ...one, name: name.trim() } : one));
  return changed({ ...vocabulary, own }, code);
}

export function retireFault(vocabulary: Vocabulary, code: string): VocabularyResult {
  const refusal = objectionToChange(vocabulary, code);
  return refusal ? refusedBy(refusal) : changed(withChange(vocabulary, { kind: 'retired', code }), code);
}

/** From now on what was noted under one code reads as noted under the other, which may be built in. */
export function mergeFault(vocabulary: Vocabulary, code: string, into: string): VocabularyResult {
  const [from, target] = [definitionOf(vocabulary, code), definitionOf(vocabulary, into)];
  const refusal =
    objectionToChange(vocabulary, code) ??
    (target === null ? 'UNKNOWN_CODE' : null) ??
    (isActive(vocabulary, into) ? null : 'NOT_ACTIVE') ??
    (from?.event === target?.event ? null : 'OTHER_EVENT') ??
    (readAs(vocabulary, into) === code ? 'INTO_ITSELF' : null);
  return refusal
    ? refusedBy(refusal)
    : changed(withChange(vocabulary, { kind: 'merged', code, into }), code, into);
}

/** Retires a fault and defines its parts; nobody can say now which part an old note meant, so old notes stay on it. */
export function splitFault(
  vocabulary: Vocabulary,
  code: string,
  parts: readonly FaultDraft[],
): VocabularyResult {
  const found = definitionOf(vocabulary, code);
  const refusal =
    objectionToChange(vocabulary, code) ??
    (parts.some(({ event }) => event !== found?.event) ? 'OTHER_EVENT' : null) ??
    (parts.length < 2 ? 'TOO_FEW_PARTS' : null);
  if (refusal) return refusedBy(refusal);
  // Retired first, so that a part may take over the name.
  let current = withChange(vocabulary, { kind: 'retired', code });
  const into: string[] = [];
  for (const part of parts) {
    const result = defineFault(current, part);
    if (result.kind === 'refused') return result;
    current = result.vocabulary;
    into.push(...result.codes);
  }
  return changed(
    { ...current, changes: [...vocabulary.changes, { kind: 'split', code, into }] },
    code,
    ...into,
  );
}

/** A built-in fault is no longer offered; what was noted under it stays and is counted. */
export function hideFault(vocabulary: Vocabulary, code: string): VocabularyResult {
  const found = definitionOf(vocabulary, code);
  if (found === null) return refusedBy('UNKNOWN_CODE');
  if (found.owner === 'own') return refusedBy('NOT_BUILT_IN');
  return changed({ ...vocabulary, hidden: [...new Set([...vocabulary.hidden, code])] }, code);
}

export function showFault(vocabulary: Vocabulary, code: string): VocabularyResult {
  if (definitionOf(vocabulary, code) === null) return refusedBy('UNKNOWN_CODE');
  return changed({ ...vocabulary, hidden: vocabulary.hidden.filter((other) => other !== code) }, code);
}

function changed(vocabulary: Vocabulary, ...codes: string[]): VocabularyResult {
  return { kind: 'changed', vocabulary, codes };
}

function refusedBy(code: VocabularyRefusalCode): VocabularyResult {
  return { kind: 'refused', code, sentence: SENTENCES[code] };
}

function withChange(vocabulary: Vocabulary, change: CodeChange): Vocabulary {
  return { ...vocabulary, changes: [...vocabulary.changes, change] };
}

function objectionToChange(vocabulary: Vocabulary, code: string): VocabularyRefusalCode | null {
  const found = definitionOf(vocabulary, code);
  if (found === null) return 'UNKNOWN_CODE';
  if (found.owner === 'built-in') return 'BUILT_IN';
  return isActive(vocabulary, code) ? null : 'NOT_ACTIVE';
}

function objectionToDraft(vocabulary: Vocabulary, draft: FaultDraft): VocabularyRefusalCode | null {
  if (phaseOrder(draft.event, draft.phase) < 0) return 'PHASE_NOT_OF_EVENT';
  return objectionToName(vocabulary, draft, null);
}

function objectionToName(
  vocabulary: Vocabulary,
  { name, event }: Pick<FaultDraft, 'name' | 'event'>,
  itself: string | null,
): VocabularyRefusalCode | null {
  const wanted = name.trim().toLowerCase();
  if (wanted === '') return 'NAME_MISSING';
  const taken = [...vocabulary.builtIn, ...vocabulary.own].some(
    (other) =>
      other.event === event &&
      other.code !== itself &&
      isActive(vocabulary, other.code) &&
      other.name.toLowerCase() === wanted,
  );
  return taken ? 'NAME_TAKEN' : null;
}

/** Own faults are only ever added to, so their number in the event says what comes next. */
function nextCode({ own }: Vocabulary, { event }: FaultDraft): string {
  const number = own.filter((other) => other.event === event).length + 1;
  return `${TECHNIQUE_EVENTS[event]}-X${String(number).padStart(2, '0')}`;
}
