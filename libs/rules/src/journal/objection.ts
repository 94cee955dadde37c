import { isDistanceEvent } from '../codes.js';
import { ruleSet } from '../rule-sets/index.js';
import { lightningWait } from '../safety/interruption.js';
import type { JournalState } from './journal-state.js';
import type { Objection } from './verdict.js';

/** An objection in words. */
export interface ObjectionText {
  readonly message: string;
  readonly remedy: string;
  readonly rule?: RuleSource;
}

/** Where the rule behind an objection is cited: in the rule set, or our own way of keeping a journal. */
export type RuleSource =
  | 'plan'
  | 'wind'
  | 'measuring'
  | 'step'
  | 'combined-step'
  | 'uprights'
  | 'jump-off'
  | 'safety'
  | 'lightning'
  | 'implement'
  | 'order'
  | 'qualification'
  | 'ours';

/** How Sectorline itself keeps a journal: not a federation's rule. */
const JOURNAL_RULE = 'journal: nothing is changed or removed, every change names what it replaces and why';

/** The usual cautions, which no rule book replaces. */
const SAFETY_RULE = 'safety: nobody is called while a competition is interrupted; the referee decides';

/**
 * An objection in full: what is wrong, by which rule, what to do now. `subject` says whom the entry is about, so that
 * the sentence can be read alone.
 */
export function objectionOf<C extends string>(
  setup: JournalState['setup'],
  { code, field }: { readonly code: C; readonly field: string | null },
  text: ObjectionText,
  subject: string | null,
): Objection<C> {
  return {
    code,
    field,
    message: subject === null ? text.message : `${subject}: ${text.message}`,
    rule: text.rule === undefined ? null : ruleOf(setup, text.rule),
    remedy: text.remedy,
  };
}

function ruleOf({ rules: code, edition, event, stage }: JournalState['setup'], source: RuleSource): string {
  const rules = ruleSet(code, edition);
  if (source === 'ours') return JOURNAL_RULE;
  if (source === 'safety') return SAFETY_RULE;
  if (source === 'lightning') return lightningWait(code).cite.rule;
  if (source === 'wind') return rules.windLimit.cite.rule;
  if (source === 'measuring') return rules.precision[event].cite.rule;
  if (source === 'jump-off') return rules.jumpOff.rule;
  if (source === 'implement') {
    return rules.fouls[event].find(({ value }) => value === 'IMPLEMENT')?.cite.rule ?? JOURNAL_RULE;
  }
  if (source === 'qualification') return rules.qualificationPlan.cite.rule;
  if (source === 'order') return rules.orderChange.cite.rule;
  if (isDistanceEvent(event)) {
    return (stage === 'qualification' ? rules.qualificationPlan : rules.plan).cite.rule;
  }
  const vertical = rules.vertical[event];
  switch (source) {
    case 'plan':
      return vertical.trials.rule;
    case 'step':
      return vertical.minimumStep.cite.rule;
    case 'combined-step':
      return vertical.combinedStep.cite.rule;
    case 'uprights':
      return vertical.uprightsCm.cite.rule;
  }
}
