/** What the front door of the library shows of protests. */
export {
  DISQUALIFICATION_GROUNDS,
  PROTEST_GROUNDS,
  type DisqualificationGround,
  type ProtestGround,
  type ProtestRules,
  type ProtestWindow,
} from '../rule-sets/protest-rules.js';
export {
  isOpenProtest,
  nextSteps,
  standingOfProtest,
  type Protest,
  type ProtestOutcome,
  type ProtestStanding,
  type ProtestStep,
  type ProtestStepKind,
} from './protest.js';
export { appealTimeliness, timelinessOf, windowUntil, type Timeliness } from './timeliness.js';
export {
  RESULT_STATES,
  resultStateOf,
  signingObstacle,
  type Proceedings,
  type ResultFacts,
  type ResultState,
  type ResultStateCode,
  type SigningObstacle,
} from './result-state.js';
