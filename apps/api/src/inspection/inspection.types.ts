import type { InspectionRow } from '#persistence';
import type { Dimension, FindingVerdict, InspectionOutcome } from '#rules';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { enumOf } from '../platform/inputs/enums.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';

export const DimensionEnum = enumOf<Dimension>(
  'ImplementDimension',
  ['diameter', 'centre plate', 'head', 'shaft', 'length'],
  'What is measured beside the mass: the DIAMETER of a shot, or of a discus over its rim; the metal CENTRE_PLATE of a discus; the HEAD of a hammer; the SHAFT of a javelin where it is thickest; the LENGTH of a javelin, of a hammer with wire and grip, of a weight with its harness.',
);

export const InspectionOutcomeEnum = enumOf<InspectionOutcome>(
  'InspectionOutcome',
  ['passed', 'failed', 'incomplete'],
  'FAILED: something is outside its limits. INCOMPLETE: nothing is, but it was not weighed.',
);

export const FindingVerdictEnum = enumOf<FindingVerdict>(
  'FindingVerdict',
  ['passes', 'too small', 'too large', 'not measured'],
  'How one measure lies to its limits, which are included.',
);

export const InspectionKindEnum = enumOf<InspectionRow['kind']>(
  'InspectionKind',
  ['inspection', 'recheck'],
  'Looked at before it is used, or again afterwards.',
);

export const RecheckCauseEnum = enumOf<NonNullable<InspectionRow['cause']>>(
  'RecheckCause',
  ['record', 'referee'],
  'Why an implement is looked at again: after a RECORD, or because the REFEREE ordered it.',
);

@ObjectType({ description: 'One limit with what was measured.' })
export class InspectionFinding {
  @Field({ description: '"mass", "diameter", "centre plate", "head", "shaft" or "length".' })
  what: string;

  @Field({ description: '"g" or "mm".' })
  unit: string;

  @Field(() => Int, { nullable: true })
  measured: number | null;

  @Field(() => Int, { nullable: true, description: 'At least so much; null: no limit.' })
  min: number | null;

  @Field(() => Int, { nullable: true, description: 'At most so much; null: no limit.' })
  max: number | null;

  @Field(() => FindingVerdictEnum)
  verdict: FindingVerdict;

  @Field({ description: 'All of it as a sentence: "mass 1998 g, at least 2000 g (WA TR32, …)".' })
  sentence: string;

  @Field({ description: 'The rule behind the limit. The book in force and the referee decide.' })
  rule: string;

  @Field({ description: 'The rule was read, at least in part, and is not only remembered.' })
  isConfirmed: boolean;
}

@ObjectType()
export class MeasuredDimension {
  @Field(() => DimensionEnum)
  what: Dimension;

  @Field(() => Int)
  mm: number;
}

@ObjectType({ description: 'One look at an implement. Nothing in it is ever changed or removed.' })
export class Inspection {
  @Field(() => Uuid)
  id: string;

  @Field(() => Int, { description: 'From 1, for the implement at this meet.' })
  sequence: number;

  @Field(() => InspectionKindEnum)
  kind: InspectionRow['kind'];

  @Field(() => RecheckCauseEnum, { nullable: true })
  cause: InspectionRow['cause'];

  @Field(() => Uuid, { nullable: true, description: 'The attempt after which it was looked at again.' })
  attemptId: string | null;

  @Field(() => InspectionOutcomeEnum)
  outcome: InspectionOutcome;

  @Field(() => Int, { nullable: true })
  grams: number | null;

  @Field(() => [MeasuredDimension], { complexity: 2 })
  dimensions: MeasuredDimension[];

  @Field(() => [InspectionFinding], {
    complexity: 3,
    description: 'Every limit as it was held against then, the mass first.',
  })
  findings: InspectionFinding[];

  @Field({ description: 'The officials keep the implement.' })
  isKeptBack: boolean;

  @Field(() => String, { nullable: true })
  note: string | null;

  @Field(() => Uuid, { nullable: true, description: 'The look that this one corrects.' })
  replacesId: string | null;

  @Field(() => String, { nullable: true, description: 'Why it was corrected.' })
  reason: string | null;

  @Field({ description: 'With which right: official, referee or director.' })
  authority: string;

  @Field({ description: 'Whose token.' })
  inspectedBy: string;

  @Field(() => String, { nullable: true })
  device: string | null;

  @Field(() => Instant, { nullable: true, description: 'By the clock of the device, believed by nobody.' })
  deviceAt: Date | null;

  @Field(() => Instant)
  inspectedAt: Date;
}
