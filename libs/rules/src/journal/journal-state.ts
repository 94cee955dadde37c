import type { EventCode, RuleSetCode, Stage } from '../codes.js';
import type { SafetyState } from '../safety/interruption.js';
import type { Activity } from './activity.js';
import type { AnyEntry } from './any-entry.js';
import type { Away } from './decisions.js';
import type { Question, JournalItem, Standing } from './journal-item.js';

/** A line of the start list, as far as entries about the list are decided by it. */
export interface ListedCompetitor {
  readonly key: string;
  readonly bib: string;
  readonly flight: string | null;
  /** Entered at the circle, and nobody has said yet who it is. */
  readonly unmatched?: boolean;
}

/** What decisions that are the same in every event look at: a part of the state of any competition. */
export interface JournalState {
  readonly setup: {
    readonly rules: RuleSetCode;
    readonly edition: string;
    readonly event: EventCode;
    readonly stage: Stage;
    readonly competitors: readonly ListedCompetitor[];
  };
  readonly journal: readonly JournalItem<AnyEntry>[];
  readonly attempts: ReadonlyMap<string, { readonly competitor: string; readonly standing: Standing }>;
  readonly competitors: readonly { readonly key: string; readonly status: 'DNS' | 'DQ' | null }[];
  readonly card: {
    readonly admitted: readonly { readonly bib: string; readonly after: number | null }[];
  };
  readonly questions: readonly Question[];
  readonly activity: Activity;
  readonly signedOff: boolean;
  readonly safety: SafetyState;
  readonly away: ReadonlyMap<string, Away>;
}
