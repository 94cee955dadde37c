import type { ImplementStanding } from '#rules';
import { keyOf } from '../../offline/object-ids.js';

/** An implement of the register, as it was last read. */
export interface KeptImplement {
  readonly id: string;
  readonly label: string;
  readonly grams: number;
  readonly standing: ImplementStanding;
}

/** By the key of a competitor: the own implements and those of the club. */
export type KeptImplements = Readonly<Record<string, readonly KeptImplement[]>>;

export const READ_IMPLEMENTS = `query DeskImplements($id: ID!) {
  competition(id: $id) { checkIn { competitor { id } implements { id label grams status } } }
}`;

export interface ImplementsAnswer {
  readonly competition: {
    readonly checkIn:
      | readonly {
          readonly competitor: { readonly id: string };
          readonly implements: readonly {
            readonly id: string;
            readonly label: string;
            readonly grams: number;
            readonly status: string;
          }[];
        }[]
      | null;
  } | null;
}

export function implementsIn({ competition }: ImplementsAnswer): KeptImplements {
  return Object.fromEntries(
    (competition?.checkIn ?? [])
      .filter((line) => line.implements.length > 0)
      .map((line) => [
        keyOf(line.competitor.id),
        line.implements.map(({ id, label, grams, status }) => ({
          ...{ id, label, grams, standing: standingOf(status) },
        })),
      ]),
  );
}

/** One that has passed again is one that has passed; one in a state that this page does not know yet is not. */
function standingOf(status: string): ImplementStanding {
  if (status === 'PASSED' || status === 'RECHECKED') return 'passed';
  const known = ['NOT_INSPECTED', 'INCOMPLETE', 'FAILED', 'KEPT_BACK'];
  return known.includes(status)
    ? (status.toLowerCase().replaceAll('_', ' ') as ImplementStanding)
    : 'not inspected';
}
