import {
  DISTANCE_EVENT_CODES,
  RULE_SET_CODES,
  VERTICAL_EVENT_CODES,
  type EventCode,
  type Stage,
} from '#rules';
import type { CompetitionStatus, Handedness, NameDisplay, Sex, Unit, VerticalTerms } from '#persistence';
import { enumOf } from '../inputs/enums.js';

/* The trade's words as GraphQL enums: outside LONG_JUMP, inside long-jump. */

export const RuleSetEnum = enumOf(
  'RuleSetCode',
  RULE_SET_CODES,
  'A rule set, by the federation that publishes it.',
);

export const EventEnum = enumOf<EventCode>(
  'EventCode',
  [...DISTANCE_EVENT_CODES, ...VERTICAL_EVENT_CODES],
  'What is contested.',
);

export const StageEnum = enumOf<Stage>(
  'Stage',
  ['final', 'qualification'],
  'A final ranks for the result; a qualification chooses who goes on to one.',
);

export const UnitEnum = enumOf<Unit>(
  'MeasuringUnit',
  ['cm', 'qin'],
  'What marks are whole numbers of: centimetres, or quarter inches.',
);

export const SexEnum = enumOf<Sex>('Sex', ['W', 'M', 'X'], 'Women, men, both or another.');

export const NameDisplayEnum = enumOf<NameDisplay>(
  'NameDisplay',
  ['full', 'initials', 'bib'],
  'How much of a name the public sees.',
);

export const HandednessEnum = enumOf<Handedness>(
  'Handedness',
  ['left', 'right'],
  'With which hand an athlete throws, or from which foot he jumps.',
);

export const CompetitionStatusEnum = enumOf<CompetitionStatus>(
  'CompetitionStatus',
  ['draft', 'open', 'official'],
  'Draft: being set up. Open: being recorded. Official: signed off.',
);

export const CutTiesEnum = enumOf<'next-best' | 'mark'>(
  'CutTies',
  ['next-best', 'mark'],
  'A tie for the last place of a cut is broken by the next best marks, or everybody level on the best mark goes on.',
);

export const ReorderEnum = enumOf<'reverse' | 'leaders-first'>(
  'Reorder',
  ['reverse', 'leaders-first'],
  'After a new ranking the worst is called first, or the best.',
);

export const PassGivesUpEnum = enumOf<VerticalTerms['passGivesUp']>(
  'PassGivesUp',
  ['height', 'trial'],
  'A pass gives up every further trial at the HEIGHT; or, where the regulations of children’s and school meets say so, this one TRIAL only.',
);

export const TieForFirstEnum = enumOf<VerticalTerms['tieForFirst']>(
  'TieForFirst',
  ['jump-off', 'shared'],
  'A tie for first place is jumped off, or left by the regulations of the meet.',
);
