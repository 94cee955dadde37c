import { AgeFactors } from './age-factors.entity.js';
import { Athlete } from './athlete.entity.js';
import { CallingGroup } from './calling-group.entity.js';
import { CheckIn } from './check-in.entity.js';
import { CategoryDefinition } from './category-definition.entity.js';
import { Club } from './club.entity.js';
import { CombinedEntrant } from './combined-entrant.entity.js';
import { CombinedEntry } from './combined-entry.entity.js';
import { CombinedEvent } from './combined-event.entity.js';
import { CombinedLink } from './combined-link.entity.js';
import { CombinedRequest } from './combined-request.entity.js';
import { CombinedOfficialResult } from './combined-official-result.entity.js';
import { Competition } from './competition.entity.js';
import { Competitor } from './competitor.entity.js';
import { Draw } from './draw.entity.js';
import { DrawAmendment } from './draw-amendment.entity.js';
import { EntryChange } from './entry-change.entity.js';
import { EntryTerms } from './entry-terms.entity.js';
import { PastResult } from './past-result.entity.js';
import { TableImport } from './table-import.entity.js';
import { EnteredResult } from './entered-result.entity.js';
import { Implement } from './implement.entity.js';
import { Inspection } from './inspection.entity.js';
import { JournalEntry } from './journal-entry.entity.js';
import { Crew } from './crew.entity.js';
import { Timetable } from './timetable.entity.js';
import { Meet } from './meet.entity.js';
import { MeetScoring } from './meet-scoring.entity.js';
import { OfficialResult } from './official-result.entity.js';
import { Organisation } from './organisation.entity.js';
import { RecordDecision } from './record-decision.entity.js';
import { StartingMark } from './starting-mark.entity.js';
import { Protest } from './protest.entity.js';
import { ProtestStep } from './protest-step.entity.js';
import { ResultPosting } from './result-posting.entity.js';
import { Qualification } from './qualification.entity.js';
import { QualificationGroup } from './qualification-group.entity.js';
import { Credential } from './credential.entity.js';
import { DecisionConfirmation } from './decision-confirmation.entity.js';
import { DecisionRequest } from './decision-request.entity.js';
import { DeviceLink } from './device-link.entity.js';
import { DeviceLinkRevocation } from './device-link-revocation.entity.js';
import { DeviceLinkUse } from './device-link-use.entity.js';
import { LoginSession } from './login-session.entity.js';
import { Person } from './person.entity.js';
import { RefreshToken } from './refresh-token.entity.js';
import { RoleGrant } from './role-grant.entity.js';
import { RoleRevocation } from './role-revocation.entity.js';
import { TokenRevocation } from './token-revocation.entity.js';
import { FaultChange } from './fault-change.entity.js';
import { NotebookEntry } from './notebook-entry.entity.js';
import { Observation } from './observation.entity.js';
import { PracticeSession } from './practice-session.entity.js';
import { PracticeThrow } from './practice-throw.entity.js';

/** Named one by one: a pattern over files would load a class twice under a test runner. */
export const ENTITIES = [
  Organisation,
  Club,
  Athlete,
  Meet,
  Competition,
  Competitor,
  JournalEntry,
  OfficialResult,
  MeetScoring,
  Timetable,
  Crew,
  EntryTerms,
  EntryChange,
  TableImport,
  PastResult,
  EnteredResult,
  StartingMark,
  RecordDecision,
  CallingGroup,
  CategoryDefinition,
  AgeFactors,
  Implement,
  Inspection,
  CheckIn,
  CombinedEvent,
  CombinedEntrant,
  CombinedLink,
  CombinedEntry,
  CombinedOfficialResult,
  CombinedRequest,
  Draw,
  DrawAmendment,
  Qualification,
  QualificationGroup,
  Person,
  Credential,
  RoleGrant,
  RoleRevocation,
  LoginSession,
  RefreshToken,
  TokenRevocation,
  DeviceLink,
  DeviceLinkUse,
  DeviceLinkRevocation,
  DecisionRequest,
  DecisionConfirmation,
  PracticeSession,
  PracticeThrow,
  Observation,
  NotebookEntry,
  FaultChange,
  ResultPosting,
  Protest,
  ProtestStep,
];
