import type { ProtestState, StoredProceedings } from '#persistence';
import {
  progressOf,
  resultStateOf,
  ruleSet,
  verticalProgressOf,
  type Proceedings,
  type Protest,
  type ProtestRules,
  type ResultState,
} from '#rules';
import type { LoadedCompetition } from './loaded.js';

/** Nothing was posted, signed or protested. */
export const NO_PROCEEDINGS: StoredProceedings = { signatures: [], postings: [], protests: [] };

/** How results are protested by the rules of the competition. */
export function protestRulesOf({ row }: Pick<LoadedCompetition, 'row'>): ProtestRules {
  return ruleSet(row.rules, row.edition).protests;
}

/** What was stored as the rules read it. */
export function protestOf({ ground, lodgedAt, steps }: ProtestState): Protest {
  return {
    ground,
    lodgedAt: Date.parse(lodgedAt),
    steps: steps.map(({ kind, outcome, doneAt }) => ({ kind, outcome, at: Date.parse(doneAt) })),
  };
}

export function proceedingsOf({ proceedings }: Pick<LoadedCompetition, 'proceedings'>): Proceedings {
  const { signatures, postings, protests } = proceedings;
  return {
    signatures: signatures.map(({ signedAt }) => ({ signedAt: Date.parse(signedAt) })),
    postings: postings.map(({ sequence, postedAt }) => ({ sequence, postedAt: Date.parse(postedAt) })),
    protests: protests.map(protestOf),
  };
}

/** Where the result of the competition is on its way from the field to the archive. */
export function resultStateIn(loaded: LoadedCompetition): ResultState {
  const { state, changedAt } = loaded;
  const facts = {
    journal: state.journal.map(({ entry, hold }) => ({ kind: entry.kind, isHeld: hold !== null })),
    isComplete: isComplete(loaded),
    signedOff: state.signedOff,
    hasTrialUnderProtest: state.questions.some(({ about }) => about === 'protest'),
    changedAt: changedAt?.getTime() ?? null,
  };
  return resultStateOf(facts, proceedingsOf(loaded), protestRulesOf(loaded));
}

/** No trial is outstanding, as things stand. */
export function isComplete(loaded: LoadedCompetition): boolean {
  const { phase } = loaded.kind === 'vertical' ? verticalProgressOf(loaded.state) : progressOf(loaded.state);
  return phase === 'complete' || phase === 'official';
}
