/** What the front door of the library shows of bests and records. */
export { listedAges, OPEN_AGE, type AgeContext } from './listed-ages.js';
export { compareInTime, windStanding, type Performance, type WindStanding } from './performance.js';
export {
  performancesOfCard,
  performancesOfVerticalCard,
  type Occasion,
  type Performer,
} from './performances-of.js';
export {
  performancesOfState,
  performancesOfVerticalState,
  type Identified,
} from './performances-of-state.js';
export { decisionKey, type Ratification, type RatificationDecision } from './ratification.js';
export {
  RATIFICATION_PROBLEM_CODES,
  ratificationProblems,
  type Measuring,
  type RatificationChecks,
  type RatificationProblem,
  type RatificationProblemCode,
} from './ratification-problems.js';
export { recognise, recognitionSentence, type Outstanding, type Recognition } from './recognise.js';
export {
  recordBook,
  recordLine,
  recordLines,
  withCompetition,
  withoutPerformance,
  withPerformance,
  withRatification,
  type RecordBook,
} from './record-book.js';
export { recordHistory, type Holding } from './record-history.js';
export type { RecordLine } from './record-line.js';
export { listKey, listsOf, type RecordKind, type RecordList } from './record-list.js';
export { recordTerms, ROOF, type RecordTerms, type Roof } from './record-terms.js';
