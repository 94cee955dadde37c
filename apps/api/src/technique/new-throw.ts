import type { NewPracticeThrow, ReleaseData } from '#persistence';
import { formatMark, foulsOf, parseMark, parseWind } from '#rules';
import { isTechniqueEvent, STYLES, VARIANTS } from '#technique';
import { fingerprintOf } from '../platform/competition/fingerprint.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { isGiven } from '../platform/inputs/given.js';
import { reasonOf } from './batch.js';
import type { ReleaseInput, ThrowLogInput } from './practice.inputs.js';
import { notTaught } from './vocabulary.service.js';

export interface LoggedBy {
  readonly organisationId: string;
  readonly personId: string;
  readonly device: string | null;
  readonly deviceAt: string | null;
}

/** The row of a throw as it was sent. `throwId` is that of what it replaces, once that is known. */
export function newThrow(
  input: ThrowLogInput,
  sessionId: string,
  by: LoggedBy,
  path: readonly string[],
): NewPracticeThrow | readonly Refusal[] {
  const problems = problemsOf(input, path);
  if (problems.length > 0) return problems;
  const mark = isGiven(input.mark) ? parseMark(input.mark)!.value : null;
  const wind = isGiven(input.wind) ? parseWind(input.wind) : null;
  const { id, athleteId, event, variant, round, outcome, voidedOnPurpose, styles, isAnnulled } = input;
  const content = {
    ...{ athleteId, event, variant, round, outcome, voidedOnPurpose, styles, isAnnulled, mark },
    implementGrams: input.implementGrams ?? null,
    isMeasured: mark !== null && input.isMeasured,
    effortPercent: input.effortPercent ?? null,
    foul: input.foul ?? null,
    wind: typeof wind === 'number' ? wind : null,
    release: releaseOf(input.release),
    replacesId: input.replacesId ?? null,
    reason: input.reason ?? null,
  };
  const { organisationId, personId: loggedBy, device, deviceAt } = by;
  const fingerprint = fingerprintOf(sessionId, content);
  return { ...content, organisationId, id, throwId: id, sessionId, loggedBy, device, deviceAt, fingerprint };
}

function releaseOf(input: ReleaseInput | null | undefined): ReleaseData | null {
  if (!isGiven(input)) return null;
  const { speedCmS, angleTenths, heightCm, attitudeTenths } = input;
  const release = {
    ...(isGiven(speedCmS) && { speedCmS }),
    ...(isGiven(angleTenths) && { angleTenths }),
    ...(isGiven(heightCm) && { heightCm }),
    ...(isGiven(attitudeTenths) && { attitudeTenths }),
  };
  return Object.keys(release).length > 0 ? release : null;
}

function problemsOf(input: ThrowLogInput, path: readonly string[]): readonly Refusal[] {
  const { event, variant, outcome, styles } = input;
  if (!isTechniqueEvent(event)) return [notTaught([...path, 'event'])];
  const at = (field: string): readonly string[] => [...path, field];
  const found: (Refusal | null)[] = [
    (VARIANTS[event] as readonly string[]).includes(variant) ? null : otherEvent(at('variant')),
    styles.every((style) => (STYLES[event] as readonly string[]).includes(style))
      ? null
      : otherEvent(at('styles')),
    isGiven(input.mark) && outcome === 'foul' ? markOfFoul(at('mark')) : null,
    isGiven(input.mark) && parseMark(input.mark)?.unit !== 'cm' ? inMetres(at('mark')) : null,
    isGiven(input.foul) && outcome !== 'foul' ? reasonWithoutFoul(at('foul')) : null,
    isGiven(input.foul) && !foulsOf(event).some(({ code }) => code === input.foul)
      ? otherEvent(at('foul'))
      : null,
    input.voidedOnPurpose && outcome !== 'foul' ? reasonWithoutFoul(at('voidedOnPurpose')) : null,
    isGiven(input.implementGrams) === isThrown(event) ? null : massOf(at('implementGrams'), isThrown(event)),
    reasonOf(input.replacesId, input.reason, input.isAnnulled, path),
  ];
  return found.flatMap((one) => one ?? []);
}

function isThrown(event: string): boolean {
  return !event.endsWith('jump');
}

function otherEvent(path: readonly string[]): Refusal {
  return refusal({
    code: 'OTHER_EVENT',
    path,
    message: 'The event has no such thing.',
    remedy: 'Take it from faultVocabulary, or from the event’s reasons for a foul.',
  });
}

function markOfFoul(path: readonly string[]): Refusal {
  return refusal({
    code: 'MARK_OF_FOUL',
    path,
    message: 'A foul has no mark.',
    remedy: 'Leave the mark out, or say that the throw was valid.',
  });
}

function inMetres(path: readonly string[]): Refusal {
  return refusal({
    code: 'MARK_UNIT',
    path,
    message: 'Practice is measured in metres with two decimals.',
    remedy: `Send it like "${formatMark(3412, 'cm')}"; it is never converted.`,
  });
}

function reasonWithoutFoul(path: readonly string[]): Refusal {
  return refusal({
    code: 'NOT_A_FOUL',
    path,
    message: 'Only a foul has a reason, or was made on purpose.',
    remedy: 'Leave it out, or say that the throw was a foul.',
  });
}

function massOf(path: readonly string[], isThrow: boolean): Refusal {
  return refusal({
    code: isThrow ? 'IMPLEMENT_MISSING' : 'NO_IMPLEMENT',
    path,
    message: isThrow ? 'A throw has an implement.' : 'Nothing is thrown in a jump.',
    remedy: isThrow ? 'Send its mass in grams.' : 'Leave it out.',
  });
}
