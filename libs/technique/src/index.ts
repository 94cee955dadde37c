/** What a coach saw and what the marks say: the one front door of the library. */
export {
  isRefused,
  REFUSAL_CODES,
  type Answer,
  type Counted,
  type Interval,
  type Refusal,
  type RefusalCode,
} from './answer.js';
export { chanceOf, seedOf, type Chance } from './numbers/random.js';
export type { Series, Trial } from './series.js';

export { markDistribution, type MarkDistribution, type MarkSummary } from './marks/mark-distribution.js';
export { consistency, type Consistency } from './marks/consistency.js';
export { bestAndMedian, type BestAndMedian } from './marks/best-and-median.js';
export { foulRate, foulsByReason, type FoulRate, type FoulsByReason } from './marks/foul-rate.js';
export type { ClusteredProportion } from './marks/proportion.js';
export { roundEffect, type RoundEffect, type RoundMean, type RoundOptions } from './marks/rounds.js';
export { lastAttempt, type LastAttempt, type SignFlip } from './marks/last-attempt.js';
export { openingTrial, type OpeningTrial } from './marks/opening-trial.js';
export {
  practiceToCompetition,
  type PracticeTrial,
  type Transfer,
  type TransferPair,
} from './marks/practice-to-competition.js';
export { levelOnDay, trends, type LevelOnDay, type Trend } from './marks/trend.js';
export type { DayMark, TheilSen } from './marks/theil-sen.js';
export type { LevelState, LocalLevel } from './marks/local-level.js';
export { smoothLine } from './marks/smooth-line.js';
export {
  brierScore,
  chanceOfBest,
  expectedBest,
  foulCost,
  type ExpectedBest,
  type ThrowModel,
} from './marks/best-of-trials.js';
export { chanceOfStandard, type StandardOutlook, type StandardQuestion } from './marks/standard.js';

export { FIRST_DRAWS, FULL_DRAWS, type WithinSeriesTest } from './within-series/within-series-test.js';
export { PRESENT_FROM, type AssessedSeries, type AssessedTrial, type Severity } from './faults/assessed.js';
export { prevalence, type Prevalence } from './faults/prevalence.js';
export {
  EFFECT_NEEDS,
  faultEffect,
  type EffectOptions,
  type FaultEffect,
  type RoundAdjustment,
} from './faults/fault-effect.js';
export { effectLines, type EffectLines } from './faults/effect-lines.js';
export { foulLink, type FoulLink } from './faults/foul-link.js';
export type { FoulTable, MantelHaenszel } from './faults/mantel-haenszel.js';
export type { ConditionalTest } from './faults/conditional-test.js';
export {
  falseDiscoveryRates,
  movingTogether,
  screened,
  TOGETHER_PHI,
  WORTH_TESTING_Q,
  type Screened,
} from './faults/many-faults.js';
export { poolEffects, type OwnEffect, type PooledEffect, type Pooling } from './faults/pooling.js';
export {
  nextToWorkOn,
  oneFocus,
  type Candidate,
  type HeldBack,
  type Ranked,
  type RankingOptions,
} from './faults/next-to-work-on.js';
export {
  furtherThrows,
  plannedEffect,
  throwsPerArm,
  type EffectPlan,
  type PlannedEffect,
} from './faults/how-many.js';
export { observerAgreement, type DoubleNote, type ObserverAgreement } from './faults/agreement.js';
export type { AgreementTable, Kappa, PresenceAgreement, Weighting } from './faults/kappa.js';
export { krippendorffAlpha, type Metric } from './faults/krippendorff.js';
export { acrossDays, type AcrossDays, type SquadSeries } from './faults/across-days.js';

export {
  isTechniqueEvent,
  STYLES,
  TECHNIQUE_EVENT_CODES,
  TECHNIQUE_EVENTS,
  VARIANTS,
  type Style,
  type TechniqueEvent,
  type Variant,
} from './vocabulary/technique-event.js';
export {
  INSTANTS,
  phaseOrder,
  phasesOf,
  type Instant,
  type Phase,
  type Support,
} from './vocabulary/phases.js';
export { isTaught, stageNumber, STAGES, stageWords, type Stage } from './vocabulary/stage.js';
export {
  INJURY_CAUTION,
  isArmOrShoulder,
  SEGMENTS,
  type FaultDefinition,
  type Plane,
  type Segment,
  type View,
} from './vocabulary/fault-definition.js';
export { BUILT_IN_EDITION, BUILT_IN_FAULTS } from './vocabulary/built-in.js';
export {
  codesReadAs,
  definitionOf,
  isActive,
  newVocabulary,
  offered,
  readAs,
  type CodeChange,
  type Offer,
  type Offered,
  type Vocabulary,
} from './vocabulary/vocabulary.js';
export {
  defineFault,
  hideFault,
  mergeFault,
  renameFault,
  retireFault,
  showFault,
  splitFault,
  VOCABULARY_REFUSAL_CODES,
  type FaultDraft,
  type VocabularyRefusalCode,
  type VocabularyResult,
} from './vocabulary/own-faults.js';

export type { Thrown } from './observations/thrown.js';
export {
  answerOf,
  type FaultAnswer,
  type FaultMark,
  type Observation,
  type Scope,
} from './observations/observation.js';
export {
  OBSERVATION_PROBLEM_CODES,
  observationProblems,
  rootsOf,
  type ObservationProblem,
  type ObservationProblemCode,
} from './observations/check-observation.js';
export {
  assessedThrows,
  LEFT_OUT_REASONS,
  type AssessedThrows,
  type LeftOutReason,
  type Notes,
  type Purpose,
} from './observations/assess-series.js';
export { doubleNotes } from './observations/double-notes.js';

export { sidedText, sideNeutral, type Handedness } from './words/sides.js';
export { severityWords } from './words/severity.js';
export { refusalSentence } from './words/refusal-sentence.js';
export { effectSentence, foulSentence, prevalenceSentence } from './words/answer-sentence.js';

export {
  FOCUS_WINDOWS,
  focusFollowUp,
  type FocusChange,
  type FocusFollowUp,
  type FocusPeriod,
  type FocusWindow,
} from './faults/focus.js';

/** Arithmetic held to outside values, for questions of one's own. */
export { median, quantile, type QuantileType } from './numbers/quantiles.js';
export { kruskalWallis, rankSum, signedRank, type RankTest, type Side } from './numbers/rank-tests.js';
export { kendall, type Kendall } from './numbers/kendall.js';
export { straightLine, type StraightLine } from './numbers/straight-line.js';
export { fitMixed, type MixedData, type MixedFit, type RandomTerm } from './numbers/mixed-model.js';
export { clopperPearson, jeffreys, wilson } from './marks/proportion.js';
