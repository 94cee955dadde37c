import {
  COMBINED_PROGRAMME_CODES,
  type CombinedEventCode,
  type CombinedProgrammeCode,
  type CombinedTies,
  type Timing,
} from '#rules';
import { registerEnumType } from '@nestjs/graphql';
import { enumOf } from '../inputs/enums.js';

export const CombinedProgrammeEnum = enumOf<CombinedProgrammeCode>(
  'CombinedProgramme',
  COMBINED_PROGRAMME_CODES,
  'The events of a combined event and their order.',
);

const EVENTS: Readonly<Record<string, CombinedEventCode>> = {
  RUN_60: '60m',
  RUN_100: '100m',
  RUN_200: '200m',
  RUN_400: '400m',
  RUN_800: '800m',
  RUN_1000: '1000m',
  RUN_1500: '1500m',
  HURDLES_60: '60mh',
  HURDLES_100: '100mh',
  HURDLES_110: '110mh',
  HIGH_JUMP: 'high-jump',
  POLE_VAULT: 'pole-vault',
  LONG_JUMP: 'long-jump',
  SHOT: 'shot',
  DISCUS: 'discus',
  HAMMER: 'hammer',
  JAVELIN: 'javelin',
  WEIGHT: 'weight',
};

registerEnumType(EVENTS, {
  name: 'CombinedEventCode',
  description: 'An event of a combined event: races in metres, and the field events.',
});
export const CombinedEventEnum = EVENTS;

export const TimingEnum = enumOf<Timing>(
  'Timing',
  ['electronic', 'hand'],
  'How a time was taken. One by hand is worth what the tables say after they add for it.',
);

const TIES: Readonly<Record<string, CombinedTies>> = { STAY: 'stay', MORE_EVENTS: 'more events' };

registerEnumType(TIES, {
  name: 'CombinedTies',
  description:
    'Equal totals STAY level; or MORE_EVENTS with the higher points part them, then the best event, the second best, …',
});
export const CombinedTiesEnum = TIES;
