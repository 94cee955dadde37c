/** The rules of field events: the one front door of the library. */
export { apply, applyAll, openCompetition, restoreCompetition, type Applied } from './competition/apply.js';
export { callsOf, progressOf, type Call, type Progress } from './competition/calls.js';
export { entriesOfCard } from './competition/entries-of-card.js';
export type * from './competition/entry.js';
export type { CompetitionSetup, SetupCompetitor } from './competition/setup.js';
export type {
  AttemptState,
  CompetitionState,
  CompetitorState,
  JournalItem,
  Question,
} from './competition/state.js';
export * from './competition/verdict.js';
export * from './card.js';
export * from './codes.js';
export * from './fouls.js';
export * from './plan.js';
export * from './trial.js';
export * from './result/result-document.js';
