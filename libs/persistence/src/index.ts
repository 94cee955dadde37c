export * as organisations from './stores/organisation.store.js';
export * as clubs from './stores/club.store.js';
export * as athletes from './stores/athlete.store.js';
export * as meets from './stores/meet.store.js';
export * as competitions from './stores/competition.store.js';
export * as competitors from './stores/competitor.store.js';
export * as journal from './stores/journal.store.js';
export { writeBackup } from './backup/write-backup.js';
export { restoreBackup, type Restored } from './backup/restore-backup.js';
export { BackupUnusable, type BackupSize } from './backup/backup-format.js';
export * as soundness from './soundness.js';
export type { Unsound } from './soundness.js';
export * as briefs from './stores/brief.store.js';
export * as officialResults from './stores/official-result.store.js';
export * as enteredResults from './stores/entered-result.store.js';
export * as recordDecisions from './stores/record-decision.store.js';
export * as recordScope from './stores/record-scope.store.js';
export * as startingMarks from './stores/starting-mark.store.js';
export * as entryTerms from './stores/entry-terms.store.js';
export * as entryChanges from './stores/entry-change.store.js';
export * as tableImports from './stores/table-import.store.js';
export * as pastResults from './stores/past-result.store.js';
export * as draws from './stores/draw.store.js';
export * as qualifications from './stores/qualification.store.js';
export * as timetables from './stores/timetable.store.js';
export * as crews from './stores/crew.store.js';
export * as meetScorings from './stores/meet-scoring.store.js';
export * as categoryDefinitions from './stores/category-definition.store.js';
export * as ageFactors from './stores/age-factors.store.js';
export * as callingGroups from './stores/calling-group.store.js';
export * as implementRegister from './stores/implement.store.js';
export * as inspections from './stores/inspection.store.js';
export * as checkIns from './stores/check-in.store.js';
export * as combinedEvents from './stores/combined-event.store.js';
export * as combinedEntrants from './stores/combined-entrant.store.js';
export * as combinedJournal from './stores/combined-journal.store.js';
export * as combinedRequests from './stores/combined-request.store.js';
export * as combinedOfficialResults from './stores/combined-official-result.store.js';
export * as persons from './stores/person.store.js';
export * as roles from './stores/role.store.js';
export * as sessions from './stores/session.store.js';
export * as deviceLinks from './stores/device-link.store.js';
export * as decisions from './stores/decision.store.js';
export * as practice from './stores/practice.store.js';
export * as observations from './stores/observation.store.js';
export * as notebook from './stores/notebook.store.js';
export * as audit from './stores/audit.store.js';
export * as proceedings from './stores/proceedings.store.js';

export type { NewCompetition, CompetitionChanges } from './stores/competition.store.js';
export type { Brief, BriefLine } from './stores/brief.store.js';
export type { AthleteChanges, NewAthlete, Pseudonym } from './stores/athlete.store.js';
export type { MeetChanges } from './stores/meet.store.js';
export type { CompetitorChanges, EnteredCompetition, PublishedEntry } from './stores/competitor.store.js';
export type { Appended, FoldedRow, NewEntry } from './stores/journal.store.js';
export type { NewOfficialResult } from './stores/official-result.store.js';
export type { NewEnteredResult } from './stores/entered-result.store.js';
export type { NewAgeFactors } from './stores/age-factors.store.js';
export type { NewCategoryDefinition } from './stores/category-definition.store.js';
export type { CallingGroupChanges, NewCallingGroup } from './stores/calling-group.store.js';
export type { NewRecordDecision } from './stores/record-decision.store.js';
export type { ListOwners, NewStartingMark } from './stores/starting-mark.store.js';
export type { NewEntryTerms } from './stores/entry-terms.store.js';
export type { NewEntryChange } from './stores/entry-change.store.js';
export type { NewTableImport } from './stores/table-import.store.js';
export type { NewPastResult } from './stores/past-result.store.js';
export type { EntryChangeRow, EntryTermsRow, PastResultRow, TableImportRow } from './entry-rows.js';
export type { NewDraw, NewDrawAmendment } from './stores/draw.store.js';
export type { NewTimetable } from './stores/timetable.store.js';
export type { CrewMember, CrewPost, CrewRow, TimetableRow } from './timetable-rows.js';
export type { NewMeetScoring } from './stores/meet-scoring.store.js';
export type { NewImplement } from './stores/implement.store.js';
export type { NewInspection } from './stores/inspection.store.js';
export type { CountingThrow, NewPracticeSession, NewPracticeThrow } from './stores/practice.store.js';
export type { CountingObservation, NewObservation } from './stores/observation.store.js';
export type { NewFaultChange, NewNotebookEntry } from './stores/notebook.store.js';
export type {
  ChecklistBody,
  ConsentBody,
  FaultChangeBody,
  FaultChangeRow,
  FocusBody,
  NotebookBody,
  NotebookEntryRow,
  ObservationRow,
  PracticeSessionRow,
  PracticeThrowRow,
  ReleaseBody,
  ReleaseData,
  StageBody,
  VideoBody,
} from './notebook-rows.js';
export type { NewCheckIn } from './stores/check-in.store.js';
export type { NewCombinedEvent } from './stores/combined-event.store.js';
export type { NewCombinedEntry } from './stores/combined-journal.store.js';
export type {
  CombinedEntrantRow,
  CombinedEntryRow,
  CombinedEventRow,
  CombinedLinkRow,
  CombinedOfficialResultRow,
  StoredCombinedVerdict,
} from './combined-rows.js';
export type { DrawAmendmentRow, DrawnFlight, DrawRow, QualificationRow } from './draw-rows.js';
export type { NewPerson } from './stores/person.store.js';
export type { NewRoleGrant } from './stores/role.store.js';
export type { NewDeviceLink } from './stores/device-link.store.js';
export type { NewDecisionRequest } from './stores/decision.store.js';
export type {
  AccessRole,
  CredentialRow,
  DecisionRequestRow,
  DecisionState,
  DeviceLinkRow,
  DeviceLinkState,
  LoginSessionRow,
  PersonRow,
  RefreshTokenRow,
  RoleGrantRow,
  RoleRow,
  SessionEnd,
} from './access-rows.js';
export type {
  AgeFactorsRow,
  AthleteRow,
  CallingGroupRow,
  CategoryDefinitionRow,
  ClubRow,
  CompetitionRow,
  CompetitionStatus,
  CompetitorRow,
  EnteredLine,
  EnteredResultRow,
  JournalBody,
  JournalKind,
  JournalRow,
  MeetRow,
  MeetScoringRow,
  Handedness,
  NameDisplay,
  OfficialResultRow,
  OrganisationRow,
  Qualifying,
  RecordDecisionRow,
  Scoring,
  Sex,
  StartingMarkRow,
  StoredVerdict,
  Unit,
  VerticalTerms,
  WrittenResult,
} from './rows.js';
export type { AuditLine, AuditSearch } from './stores/audit.store.js';
export type { NewPosting, NewProtest, NewProtestStep } from './stores/proceedings.store.js';
export type {
  ProtestRow,
  ProtestState,
  ProtestStepRow,
  ResultPostingRow,
  StoredProceedings,
} from './proceedings-rows.js';
export type { CheckInRow, ImplementRow, InspectionRow } from './inspection-rows.js';

export { inSnapshot, inTransaction, reading, type Reads, type Tx } from './transaction.js';
export { PAGE_LIMIT, PageError, type Page, type PageRequest } from './page.js';
export { sqlStateOf, violationOf, type Violation } from './violation.js';
export { openDatabase, type Database, type DatabaseOptions } from './data-source.js';
export { migrate, migrationsPending, revertMigration, schemaDifference } from './migrate.js';
export { checkDurability, type DurabilityFault } from './durability.js';
export { NOTICES_APPLICATION, openNotices, type Notices, type NoticesOptions } from './notices.js';
export { startEmbedded, type EmbeddedOptions, type EmbeddedServer } from './embedded/start-embedded.js';
export { EmbeddedError, type EmbeddedFault } from './embedded/embedded-error.js';
