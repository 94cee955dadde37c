import { throwsMissing, type Answer } from '../answer.js';
import { PRESENT_FROM, type Severity } from './assessed.js';
import {
  cohenKappa,
  presenceAgreement,
  type AgreementTable,
  type Kappa,
  type PresenceAgreement,
} from './kappa.js';

/** What two observers, or one on two days, noted of the same throw and fault; both had it in scope. */
export interface DoubleNote {
  readonly first: Severity;
  readonly second: Severity;
}

export interface ObserverAgreement extends PresenceAgreement {
  readonly throws: number;
  /** Present against absent. */
  readonly presence: Kappa;
  /** Over the four severities, near misses counting half. */
  readonly severity: Kappa;
}

const LEAST_THROWS = 20;
const SEVERITIES: readonly Severity[] = [0, 1, 2, 3];

/** Kappa alone misleads for a rare fault, so agreement on present and on absent stands beside it. */
export function observerAgreement(
  notes: readonly DoubleNote[],
  presentFrom: Severity = PRESENT_FROM,
): Answer<ObserverAgreement> {
  if (notes.length < LEAST_THROWS) return throwsMissing('LT_DOUBLE_LOGGED', notes.length, LEAST_THROWS);
  const count = (of: (note: DoubleNote) => boolean): number => notes.filter(of).length;
  const states = [true, false];
  const presence: AgreementTable = states.map((one) =>
    states.map((other) =>
      count(({ first, second }) => first >= presentFrom === one && second >= presentFrom === other),
    ),
  );
  const severity: AgreementTable = SEVERITIES.map((one) =>
    SEVERITIES.map((other) => count(({ first, second }) => first === one && second === other)),
  );
  return {
    kind: 'answer',
    throws: notes.length,
    presence: cohenKappa(presence),
    severity: cohenKappa(severity, 'linear'),
    ...presenceAgreement(presence),
  };
}
