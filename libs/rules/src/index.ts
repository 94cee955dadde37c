/** The rules of field events: the one front door of the library. */
export { apply, applyAll, openCompetition, restoreCompetition, type Applied } from './competition/apply.js';
export { countedOf, type Counted } from './competition/counted.js';
export { callsOf, progressOf, type Call, type Progress } from './competition/calls.js';
export { entriesOfCard } from './competition/entries-of-card.js';
export { trialsMadeWith } from './competition/implement-in-question.js';
export type * from './competition/entry.js';
export * from './journal/front.js';
export type { AnyEntry, AnyEntryKind } from './journal/any-entry.js';
export type * from './journal/entry.js';
export { HOLD_TEXTS } from './journal/hold-texts.js';
export { isTrial, targetsOf } from './journal/targets.js';
export type { Fate, JournalItem, Question, Standing } from './journal/journal-item.js';
export type { CompetitionSetup, SetupCompetitor } from './competition/setup.js';
export type { AttemptState, CompetitionState, CompetitorState } from './competition/state.js';
export * from './card.js';
export * from './codes.js';
export * from './fouls.js';
export * from './plan.js';
export * from './trial.js';
export * from './result/result-document.js';
export { editionsOf, ruleSet, RULE_SETS } from './rule-sets/index.js';
export type {
  Citation,
  Cited,
  FlightSize,
  OrderChange,
  Precision,
  RuleSet,
  TimeAllowed,
  VerticalTimeAllowed,
} from './rule-sets/rule-set.js';
export type { Step, VerticalRules } from './rule-sets/vertical-rules.js';
export { FOULS, foulsOf, type Foul, type FoulRule } from './foul-rules.js';
export {
  SAFETY_CAUTION,
  SAFETY_CHECK_CODES,
  safetyChecklist,
  type SafetyCheck,
  type SafetyCheckCode,
} from './safety/checklist.js';
export {
  INTERRUPTION_CAUSES,
  INTERRUPTION_CAUTIONS,
  lightningWait,
  waitsUntil,
  type InterruptionCause,
  type SafetyState,
  type Stop,
} from './safety/interruption.js';
export { clashesOf, type Clash } from './timetable/clashes.js';
export { delaySlot, delaysIn, type PlannedSlots, type StartDelay } from './timetable/delay.js';
export {
  endOf,
  reportAt,
  type Facility,
  type SharedGround,
  type Slot,
  type Timetable,
} from './timetable/timetable.js';
export {
  timetableProblems,
  type TimetableFault,
  type TimetableProblem,
} from './timetable/timetable-problems.js';
export { eventOf, imperialOf, isFarOutside } from './events/event.js';
export type { EventKind, EventRules, PlausibleRange } from './events/event-rules.js';
export { MAX_ROUNDS, resolvePlan, type PlanProblem, type ResolvedPlan } from './progression/resolve-plan.js';
export { cutsOf } from './progression/cuts.js';
export { orderOf } from './progression/order.js';
export { countCard, countRows, type CardCount, type CountedRow } from './result/count-card.js';
export { reasonsOf, type NoPlaceReason, type PlaceReason, type Reason } from './result/reason.js';
export { sentenceOf } from './result/sentence.js';
export { neededFor, neededForAll, type Needed } from './needed/needed.js';
export type { NeededPass, RivalInPass } from './needed/needed-pass.js';
export type { EqualMark, NeededPlace, RivalAtPlace } from './needed/needed-place.js';
export type { Barrier, NextTrial } from './needed/next-trial.js';
export { ordinal, type Decision } from './ranking/decision.js';
export {
  compareMarks,
  formatMark,
  isMark,
  MAX_MARK,
  parseMark,
  type Mark,
  type Unit,
} from './quantities/mark.js';
export { toImperial, toMetric, type ImperialStyle } from './quantities/conversion.js';
export { displayMark } from './quantities/display.js';
export {
  isOnStep,
  measureDown,
  measureDownMillimetres,
  parseReading,
  type Reading,
} from './quantities/measuring.js';
export { formatPoints, type Fraction } from './quantities/fraction.js';
export {
  formatWind,
  isWindLegal,
  MAX_WIND_TENTHS,
  parseWind,
  roundWindUp,
  type Wind,
} from './quantities/wind.js';
export type * from './vertical/vertical-card.js';
export {
  formatJumpOffTry,
  formatVerticalCell,
  parseJumpOffTry,
  parseVerticalCell,
} from './vertical/vertical-cell.js';
export {
  verticalNeededFor,
  verticalNeededForAll,
  type Clearance,
  type NeededClearance,
  type VerticalBarrier,
  type VerticalNeeded,
} from './vertical/vertical-needed.js';
export {
  applyAllVertical,
  applyVertical,
  openVertical,
  restoreVertical,
  type VerticalApplied,
} from './vertical-competition/apply.js';
export { countedVerticalOf } from './vertical-competition/counted.js';
export { entriesOfVerticalCard } from './vertical-competition/entries-of-vertical-card.js';
export type * from './vertical-competition/entry.js';
export {
  INCIDENT_CODES,
  INCIDENTS,
  type Incident,
  type IncidentCode,
  type IncidentOutcome,
} from './vertical-competition/incidents.js';
export type { JumpOffCourse } from './vertical-competition/jump-off-course.js';
export {
  verticalProgressOf,
  type JumpCall,
  type VerticalProgress,
  type Winner,
} from './vertical-competition/progress.js';
export {
  heightsWithoutEntry,
  progressionProblems,
  type ProgressionFault,
  type ProgressionProblem,
} from './vertical-competition/progression.js';
export type { Condition } from './vertical-competition/rows.js';
export type { VerticalSetup, VerticalSetupCompetitor } from './vertical-competition/setup.js';
export type { JumpState, VerticalCompetitorState, VerticalState } from './vertical-competition/state.js';
export { timeAllowedFor, type JumpTime } from './vertical-competition/time-allowed.js';
export { verticalStanding, type VerticalStanding } from './vertical/vertical-standing.js';
export { rankVertical, type VerticalDecidedBy, type VerticalPlacing } from './vertical/vertical-ranking.js';
export { verticalReasonsOf, type Countback, type VerticalReason } from './vertical/vertical-reason.js';
export { verticalSentenceOf } from './vertical/vertical-sentence.js';
export { countVertical, type VerticalResult } from './vertical/count-vertical.js';
export { parsePlacePoints, type Scoring } from './scoring/scoring.js';
export { scoreRows, type PlacedRow, type ScoredRow } from './scoring/shared-points.js';
export { placesOn, verticalPlacesOn } from './scoring/places.js';
export { clubTable, rankClubs, type ClubTie, type ClubTies, type RankedClub } from './scoring/club-table.js';
export { clubTieWords } from './scoring/club-tie-words.js';
export {
  MAX_TEAMS,
  SCORING_PRESET_CODES,
  SCORING_PRESETS,
  type PointsTable,
  type ScoringPreset,
  type ScoringPresetCode,
} from './scoring/presets.js';
export {
  belongsTo,
  scoreMatch,
  type Division,
  type MatchEvent,
  type MatchResult,
  type MatchScoring,
} from './scoring/match.js';
export {
  placedRows,
  scoreMeet,
  scoreResult,
  type ClubMembers,
  type MeetEvent,
  type MeetResultDocument,
  type ScoredResult,
} from './scoring/score-result.js';
export { countCompetition, countSheet, recount, type RecountDocument } from './recount.js';
export type { JsonObject, JsonValue, PlainJson, PlainObject } from './sheet/json.js';
export { PROBLEM_CODES, type ProblemCode } from './sheet/problem-codes.js';
export { normaliseSheet, sameJson } from './sheet/normalise.js';
export { MAX_COMPETITORS, readSheet, readSheetSource, type SheetReading } from './sheet/read-sheet.js';
export { MAX_BYTES, readSource, type SourceReading } from './sheet/read-source.js';
export { type SheetHead } from './sheet/sheet-head.js';
export type * from './sheet/sheet-content.js';
export { writeSheet } from './sheet/write-sheet.js';
export { DRAW_PROCEDURE, drawFlights, isAsDrawn, type Draw, type DrawOutcome } from './draw/draw.js';
export { isDrawSeed } from './draw/draw-seed.js';
export type { DrawProblem } from './draw/draw-problems.js';
export type { DrawEntry, DrawMethod, DrawTerms } from './draw/draw-terms.js';
export { flightSizes, flightsNeeded } from './draw/flight-sizes.js';
export {
  drawFinal,
  qualifyingTable,
  verticalQualifyingTable,
  type QualifyingOutcome,
  type QualifyingRow,
  type QualifyingTable,
} from './qualification/qualifying-table.js';
export type { MergeProblem } from './qualification/merge-problems.js';
export { mergeProblems } from './qualification/merge-problems.js';
export { qualifyingReason, type QualifyingTerms } from './qualification/qualifying-reason.js';
export {
  combinedWindOf,
  combinedWindRule,
  windEventsOf,
  type CombinedWind,
  type CombinedWindRule,
} from './combined/combined-wind.js';
export { COMBINED_TIES, type CombinedDecision, type CombinedTies } from './combined/combined-ranking.js';
export {
  countCombinedField,
  type CombinedField,
  type CountedCombinedRow,
} from './combined/count-combined.js';
export { THROWS_PENTATHLON, type CombinedTable } from './combined/combined-tables.js';
export { runningTotals, type CombinedStage, type CombinedStageRow } from './combined/running-totals.js';
export { categoryDefinitions, categoryOf, type AgeCategory } from './categories/category-of.js';
export type { CategoryOutcome, CategoryProblem } from './categories/category-of.js';
export type { AgeBand, AgeDay, CategoryDefinition } from './categories/category-definition.js';
export { CATEGORY_DEFINITIONS } from './categories/category-definitions.js';
export {
  ageFactorProblems,
  ageGradedList,
  type AgeFactor,
  type AgeFactorProblem,
  type AgeFactorTable,
  type GradedEntry,
  type GradedRow,
} from './categories/age-graded.js';
export { isDate } from './categories/calendar-date.js';
export type { Validity } from './categories/validity.js';
export {
  comparable,
  comparisonClass,
  incomparable,
  type Incomparable,
  type MarkContext,
} from './implements/comparable.js';
export { implementFor, implementOf, type Implement } from './implements/implement-for.js';
export type { ImplementRule } from './implements/implement-rule.js';
export { IMPLEMENT_RULES } from './implements/implement-rules.js';
export { ENGLAND_CLUB_IMPLEMENTS, ENGLISH_SCHOOLS_IMPLEMENTS } from './implements/national-implements.js';
export {
  findingSentence,
  inspect,
  measuredProblems,
  type Finding,
  type FindingVerdict,
  type Inspection,
  type InspectionOutcome,
  type Measured,
  type MeasuredProblem,
} from './implements/inspection.js';
export {
  IMPLEMENT_STATUSES,
  implementStatus,
  inForce,
  recheckOf,
  standingOf,
  statusOf as statusOfImplement,
  type ImplementStatus,
  type InspectionEntry,
  type Look,
  type Recheck,
  type Replacing,
} from './implements/inspection-log.js';
export {
  expectedImplement,
  registeredImplement,
  type ExpectedImplement,
  type Thrower,
} from './implements/expected-implement.js';
export { dimensionsOf } from './implements/dimensions.js';
export { IMPLEMENT_STANDINGS, type ImplementStanding, type NamedImplement } from './implements/standing.js';
export { SPECIFICATIONS } from './implements/specifications.js';
export type { Dimension, DimensionLimit, Specification } from './implements/specification.js';
export { isThrowEvent, THROW_EVENT_CODES, type ThrowEventCode } from './implements/throw-event.js';
export * from './records/front.js';
export { callTime, latestJump, latestThrow, type CallTime, type TakenTrial } from './calling/call-time.js';
export { commonOrder, type OrderedCompetition, type OrderedCompetitor } from './calling/group-order.js';
export type { CalledCompetition, CallingGroup, GroupCall } from './calling/group.js';
export { groupProgressOf, type GroupProgress } from './calling/group-progress.js';
export * from './protests/front.js';
export * from './combined/front.js';
export { formatCombinedMark } from './sheet/combined-text.js';
export { definitionProblems, type DefinitionProblem } from './categories/definition-problems.js';
export {
  definitionsOf,
  foundCategory,
  type CompetitionCategory,
  type FoundCategory,
} from './categories/competition-category.js';
export {
  CATEGORY_FINDINGS,
  eligibilityOf,
  type CategoryFinding,
  type Eligibility,
  type Entrant,
} from './categories/eligibility.js';
export { entrantGrams } from './implements/entrant-implement.js';
export { gradedAge, isByYears, type GradedAge } from './categories/graded-age.js';
