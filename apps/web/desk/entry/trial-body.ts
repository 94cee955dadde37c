import type { FoulCode, JumpJudgement, Unit, Wind } from '#rules';
import type { Turn } from '../competition/board-shape.js';
import type { KeptImplement } from '../competition/implements.js';
import type { Body } from '../competition/request.js';
import type { Draft } from './draft.js';
import { readTyped, readTypedWind } from '../../ui/typed.js';

/** The entry that a draft makes of a trial in rounds; null: it is not whole yet. */
export function attemptBody(
  draft: Draft,
  turn: Turn,
  {
    unit,
    isWindy,
    thrown,
  }: { readonly unit: Unit; readonly isWindy: boolean; readonly thrown: KeptImplement | null },
): Body | null {
  const typed = readTyped(draft.text, unit);
  if (typed.kind !== 'mark' && typed.kind !== 'outcome') return null;
  const outcome = typed.kind === 'mark' ? 'valid' : typed.outcome;
  return {
    kind: 'attempt',
    competitor: turn.key,
    round: turn.round,
    outcome,
    mark: typed.kind === 'mark' ? typed.value : null,
    wind: isWindy && outcome === 'valid' ? windIn(draft) : null,
    foul: outcome === 'foul' ? draft.foul : null,
    protested: outcome === 'foul' ? protestedIn(draft, unit) : null,
    ...(thrown === null || outcome === 'pass' || outcome === 'retired'
      ? { implementGrams: null }
      : { implementGrams: thrown.grams, implementId: thrown.id, implementStanding: thrown.standing }),
  };
}

/** Measured under protest; null while it is not read. */
function protestedIn({ protested }: Draft, unit: Unit): number | null {
  const typed = readTyped(protested ?? '', unit);
  return typed.kind === 'mark' ? typed.value : null;
}

/** Without a reading it is still to come. */
function windIn({ wind, isWindUnmeasured }: Draft): Wind | null {
  return isWindUnmeasured ? 'NWI' : readTypedWind(wind);
}

/** The same at a bar. */
export function jumpBody({ outcome, foul, protested }: Draft, turn: Turn): Body | null {
  if (outcome === null || turn.height === null) return null;
  return {
    kind: turn.isJumpOff ? 'jump-off' : 'jump',
    competitor: turn.key,
    height: turn.height,
    trial: turn.round,
    ...judgementOf(outcome, foul),
    protested: outcome === 'failed' && protested !== null,
  };
}

export function judgementOf(outcome: JumpJudgement['outcome'], foul: FoulCode | null): JumpJudgement {
  return { outcome, foul: outcome === 'failed' ? foul : null, incident: null, protested: false };
}
