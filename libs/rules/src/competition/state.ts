import type { Card } from '../card.js';
import type { Activity } from '../journal/activity.js';
import type { Away } from '../journal/decisions.js';
import type { JournalItem, Question, Standing } from '../journal/journal-item.js';
import type { SafetyState } from '../safety/interruption.js';
import type { Judgement, OrderEntry } from './entry.js';
import type { CompetitionSetup } from './setup.js';

/** A trial as it stands now, after winds, corrections, moves and rulings. */
export interface AttemptState {
  readonly id: string;
  /** Position in the journal, from 1. */
  readonly sequence: number;
  readonly competitor: string;
  readonly round: number;
  readonly judgement: Judgement;
  readonly standing: Standing;
}

export interface CompetitorState {
  readonly key: string;
  readonly bib: string;
  readonly status: 'DNS' | 'DQ' | null;
  /** By round, index 0 = round 1; ids of the trials that count. */
  readonly series: readonly (string | null)[];
}

/** The competition at one moment: a pure function of its setup and its journal. */
export interface CompetitionState {
  readonly setup: CompetitionSetup;
  readonly journal: readonly JournalItem[];
  readonly attempts: ReadonlyMap<string, AttemptState>;
  readonly competitors: readonly CompetitorState[];
  readonly questions: readonly Question[];
  /** What decides places, as it stands. */
  readonly card: Card;
  /** As `card`, with every trial that is held under protest counted; `null` when there is none. */
  readonly cardIfProtestsSucceed: Card | null;
  /** Orders of call set by officials, by round; the last for a round holds. */
  readonly orderChanges: ReadonlyMap<number, OrderEntry>;
  readonly signedOff: boolean;
  readonly safety: SafetyState;
  /** Who is away at another event, by key. */
  readonly away: ReadonlyMap<string, Away>;
  /** Which entries of the journal are in effect. */
  readonly activity: Activity;
  /** Two trials count in one round of one competitor; an entry that would lead to this is refused. */
  readonly clash: boolean;
}
