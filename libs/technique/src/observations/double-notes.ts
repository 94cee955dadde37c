import type { DoubleNote } from '../faults/agreement.js';
import type { Severity } from '../faults/assessed.js';
import { grouped } from '../numbers/moments.js';
import type { Vocabulary } from '../vocabulary/vocabulary.js';
import { answerOf, type FaultAnswer, type Observation } from './observation.js';

/** What two observers noted of the same throws for one fault, both with it in scope; the latest of each counts. */
export function doubleNotes(
  observations: readonly Observation[],
  observers: readonly [string, string],
  code: string,
  vocabulary: Vocabulary,
): readonly DoubleNote[] {
  return [...grouped(observations, ({ throwId }) => throwId).values()].flatMap((all) => {
    const [first, second] = observers.map((observer) =>
      severityOf(
        lastOf(all.filter((one) => one.observer === observer && one.scope.kind !== 'noticed')),
        code,
        vocabulary,
      ),
    );
    return first === null || first === undefined || second === null || second === undefined
      ? []
      : [{ first, second }];
  });
}

function lastOf(observations: readonly Observation[]): Observation | null {
  return observations.reduce<Observation | null>(
    (latest, one) => (latest === null || one.observedAt > latest.observedAt ? one : latest),
    null,
  );
}

function severityOf(observation: Observation | null, code: string, vocabulary: Vocabulary): Severity | null {
  const answer: FaultAnswer = observation
    ? answerOf(observation, code, vocabulary)
    : { state: 'not-assessed' };
  if (answer.state === 'not-assessed') return null;
  return answer.state === 'present' ? answer.severity : 0;
}
