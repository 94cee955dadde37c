import type { Outstanding, RecordKind, WindStanding } from '#rules';
import { enumOf } from '../platform/inputs/enums.js';

/* The words of records as GraphQL enums; the rules write them with spaces, codes have none. */

type Dashed<Words extends string> = Words extends `${infer First} ${infer Rest}`
  ? `${First}-${Dashed<Rest>}`
  : Words;

/** `club record` as a code: `club-record`. */
export function dashed<Words extends string>(words: Words): Dashed<Words> {
  return words.replaceAll(' ', '-') as Dashed<Words>;
}

export const RecordKindEnum = enumOf<Dashed<RecordKind>>(
  'RecordKind',
  ['personal-best', 'season-best', 'club-record', 'meet-record'],
  'Bests count at once; records wait for the referee.',
);

export const RatifiedKindEnum = enumOf<'club-record' | 'meet-record'>(
  'RatifiedRecordKind',
  ['club-record', 'meet-record'],
  'What is ratified or declined.',
);

export const RecordRelationEnum = enumOf<'first' | 'better' | 'equal'>(
  'RecordRelation',
  ['first', 'better', 'equal'],
  'How a mark stood to the best until then: the FIRST of its list, BETTER, or EQUAL to it.',
);

export const WindStandingEnum = enumOf<Dashed<WindStanding>>(
  'WindStanding',
  ['legal', 'over-the-limit', 'not-measured', 'expected'],
  'How the wind lets a mark count. LEGAL where wind does not matter; EXPECTED: the reading has not come in.',
);

export const OutstandingEnum = enumOf<Dashed<Outstanding>>(
  'RecordOutstanding',
  ['wind-reading', 'implement-re-check', 'measuring-of-the-bar', 'ratification'],
  'What is still to be done before a mark counts.',
);

export const RecordDecisionEnum = enumOf<'ratified' | 'refused' | 'withdrawn'>(
  'RecordDecisionKind',
  ['ratified', 'refused', 'withdrawn'],
  'What the referee says. WITHDRAWN takes back what was decided before, as if nothing had been.',
);

export const RecheckEnum = enumOf<'passed' | 'failed' | 'incomplete'>(
  'ImplementRecheck',
  ['passed', 'failed', 'incomplete'],
  'How the implement was found when it was weighed and measured again after the attempt.',
);

export const MeasuringEnum = enumOf<'steel-tape' | 'electronic' | 'bar'>(
  'RecordMeasuring',
  ['steel-tape', 'electronic', 'bar'],
  'How the mark was measured by the officials. BAR: the bar before the trial and after it.',
);
