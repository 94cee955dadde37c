import type { ConsentBody, FocusBody, ReleaseBody } from '#persistence';
import {
  INSTANTS,
  SEGMENTS,
  STAGES,
  STYLES,
  VARIANTS,
  type Instant,
  type Segment,
  type Stage,
  type Style,
  type Variant,
  type View,
} from '#technique';
import { enumOf } from '../platform/inputs/enums.js';

/* The coach's words as GraphQL enums. */

const all = <C extends string>(by: Readonly<Record<string, readonly C[]>>): readonly C[] => [
  ...new Set(Object.values(by).flat()),
];

export const VariantEnum = enumOf<Variant>(
  'ThrowVariant',
  all<Variant>(VARIANTS),
  'How much of the event was done, or in which manner. Which ones an event has: see the vocabulary.',
);

export const StyleEnum = enumOf<Style>(
  'ThrowStyle',
  all<Style>(STYLES),
  'A thrower’s own way; it is never a fault.',
);

export const StageEnum = enumOf<Stage>(
  'LearningStage',
  STAGES,
  'How far an athlete is in an event. Points of a later stage are not taught yet.',
);

export const SegmentEnum = enumOf<Segment>('BodySegment', SEGMENTS, 'What a point is about.');

export const InstantEnum = enumOf<Instant>(
  'ThrowInstant',
  Object.keys(INSTANTS) as Instant[],
  'A moment at which phases meet.',
);

export const ViewEnum = enumOf<View>(
  'ViewFrom',
  ['side', 'rear', 'front', 'above'],
  'From where a throw is watched.',
);

export const ThrowOutcomeEnum = enumOf<'valid' | 'foul'>(
  'PracticeOutcome',
  ['valid', 'foul'],
  'Whether a throw of practice would have counted.',
);

export const MethodEnum = enumOf<'live' | 'video'>(
  'ObservationMethod',
  ['live', 'video'],
  'Whether a throw was seen as it was thrown, or on film.',
);

export const FocusHowEnum = enumOf<FocusBody['how']>(
  'FocusHow',
  ['task', 'drill', 'full-throw'],
  'How something is worked on: by a task, in a drill, or in the full throw.',
);

export const ReleaseWhatEnum = enumOf<ReleaseBody['what']>(
  'ReleasedPart',
  ['summary', 'focus', 'notes', 'analysis'],
  'A part of the notebook that a coach may show to the athlete and the guardians.',
);

export const ConsentPurposeEnum = enumOf<ConsentBody['purpose']>(
  'ConsentPurpose',
  ['notes', 'video', 'analysis'],
  'What somebody agreed to.',
);

export const ConsentByEnum = enumOf<ConsentBody['by']>(
  'ConsentBy',
  ['athlete', 'guardian'],
  'Who agreed: for a child a guardian.',
);

export const FaultChangeEnum = enumOf<'rename' | 'retire' | 'merge' | 'hide' | 'show'>(
  'FaultChangeKind',
  ['rename', 'retire', 'merge', 'hide', 'show'],
  'RENAME, RETIRE and MERGE are for faults of one’s own, HIDE and SHOW for built-in ones. What was noted stays.',
);

export const LogStatusEnum = enumOf<'stored' | 'replayed' | 'refused'>(
  'LogStatus',
  ['stored', 'replayed', 'refused'],
  'STORED: kept now; REPLAYED: kept before under this id; REFUSED: see the user errors.',
);
