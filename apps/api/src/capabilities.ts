import { AnalyticsModule } from './analytics/analytics.module.js';
import { BibsModule } from './bibs/bibs.module.js';
import { CategoriesModule } from './categories/categories.module.js';
import { CallingModule } from './calling/calling.module.js';
import { DrawsModule } from './draws/draws.module.js';
import { CombinedModule } from './combined/combined.module.js';
import { EntriesModule } from './entries/entries.module.js';
import { ExchangeModule } from './exchange/exchange.module.js';
import { InspectionModule } from './inspection/inspection.module.js';
import { MeetsModule } from './meets/meets.module.js';
import { OversightModule } from './oversight/oversight.module.js';
import { PeopleModule } from './people/people.module.js';
import { PrintingModule } from './printing/printing.module.js';
import { PublicModule } from './public/public.module.js';
import { ProtestsModule } from './protests/protests.module.js';
import { QualificationsModule } from './qualifications/qualifications.module.js';
import { RecordingModule } from './recording/recording.module.js';
import { RecordsModule } from './records/records.module.js';
import { ResultsModule } from './results/results.module.js';
import { ScoringModule } from './scoring/scoring.module.js';
import { TablesModule } from './tables/tables.module.js';
import { TechniqueModule } from './technique/technique.module.js';
import { TimetableModule } from './timetable/timetable.module.js';

/** Every capability of the API; each module brings its own resolvers. */
export const CAPABILITIES = [
  MeetsModule,
  EntriesModule,
  BibsModule,
  DrawsModule,
  QualificationsModule,
  RecordingModule,
  ProtestsModule,
  InspectionModule,
  CombinedModule,
  ExchangeModule,
  ResultsModule,
  ScoringModule,
  CallingModule,
  CategoriesModule,
  PrintingModule,
  PublicModule,
  RecordsModule,
  TimetableModule,
  PeopleModule,
  TechniqueModule,
  OversightModule,
  AnalyticsModule,
  TablesModule,
];
