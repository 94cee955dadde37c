import type { ComponentType } from 'preact';
import type { OfficeKey } from '../labels/office/en.js';
import { CompetitionScreen } from './competition/CompetitionScreen.jsx';
import type { Office } from './office.js';
import { EntriesScreen } from './entries/EntriesScreen.jsx';
import { MeetScreen } from './screens/MeetScreen.jsx';
import { ProtestsScreen } from './screens/ProtestsScreen.jsx';
import { QuestionsScreen } from './screens/QuestionsScreen.jsx';
import { TimesScreen } from './screens/TimesScreen.jsx';
import { TrailScreen } from './trail/TrailScreen.jsx';

/** A part of the office with an address of its own (`#/key`). A new one is a line here. */
export interface Section {
  readonly key: string;
  readonly label: OfficeKey;
  readonly Screen: ComponentType;
  /** Reached from elsewhere, so not among the sections at the side. */
  readonly isWithin?: true;
  /** For whom it is; absent: for everybody who works here. */
  readonly isFor?: (office: Office) => boolean;
}

const decides = (office: Office): boolean => office.mayDecide;

export const SECTIONS: readonly Section[] = [
  { key: 'meet', label: 'section.meet', Screen: MeetScreen },
  { key: 'questions', label: 'section.questions', Screen: QuestionsScreen, isFor: decides },
  { key: 'protests', label: 'section.protests', Screen: ProtestsScreen, isFor: decides },
  {
    key: 'entries',
    label: 'section.entries',
    Screen: EntriesScreen,
    isFor: (office) => office.mayDirect,
  },
  { key: 'times', label: 'section.times', Screen: TimesScreen },
  { key: 'trail', label: 'section.trail', Screen: TrailScreen, isFor: decides },
  { key: 'competition', label: 'section.competition', Screen: CompetitionScreen, isWithin: true },
];
