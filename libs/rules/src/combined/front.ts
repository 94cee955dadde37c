/** What the front door of the rules shows of combined events. */
export type { CombinedCard, CombinedCompetitor, CombinedMark } from './combined-card.js';
export type { CombinedResultDocument, CombinedRow } from './combined-result.js';
export { parseCombinedMark, type Timing } from './combined-mark.js';
export { formatRaceTime, parseRaceTime, type RaceTime } from './race-time.js';
export { COMBINED_TABLE_CODES, COMBINED_TABLES, type CombinedTableCode } from './combined-tables.js';
export { combinedPoints, countCombined } from './count-combined.js';
export type { CombinedEventCode, ScoringSex } from './scoring-table.js';
export {
  combinedWindOf,
  combinedWindRule,
  windEventsOf,
  type CombinedWind,
  type CombinedWindRule,
} from './combined-wind.js';
export { COMBINED_TIES, type CombinedDecision, type CombinedTies } from './combined-ranking.js';
export { countCombinedField, type CombinedField, type CountedCombinedRow } from './count-combined.js';
export { THROWS_PENTATHLON, type CombinedTable } from './combined-tables.js';
export { runningTotals, type CombinedStage, type CombinedStageRow } from './running-totals.js';
export { isTrackEvent } from './scoring-table.js';
export {
  COMBINED_PROGRAMME_CODES,
  combinedProgramme,
  scoringSexesOf,
  type CombinedProgrammeCode,
} from './programme.js';
export { applyCombined, restoreCombined, type CombinedApplied } from './journal/apply.js';
export {
  componentProgress,
  isComplete as isCombinedComplete,
  type ComponentProgress,
} from './journal/complete.js';
export {
  COMBINED_OUTCOMES,
  type CombinedBody,
  type CombinedEntry,
  type CombinedEntryKind,
  type CombinedOutcome,
  type CombinedPerformance,
} from './journal/entry.js';
export type {
  CombinedEntrant,
  CombinedEventState,
  CombinedItem,
  CombinedQuestion,
  CombinedSetup,
  ComponentResult,
  LinkedComponent,
} from './journal/state.js';
export { combinedCardOf, standingRows, standingStages, type StandingRow } from './journal/standing.js';
export { combinedSentence, combinedWindSentence, meanWindText } from './journal/sentence.js';
export {
  COMBINED_HOLD_CODES,
  COMBINED_NOTICE_CODES,
  type CombinedHoldCode,
  type CombinedNoticeCode,
  type CombinedRefusalCode,
  type CombinedVerdict,
} from './journal/verdict.js';
