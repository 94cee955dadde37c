import type { Activity } from '../journal/activity.js';
import type { Away } from '../journal/decisions.js';
import type { JournalItem, Question, Standing } from '../journal/journal-item.js';
import type { SafetyState } from '../safety/interruption.js';
import type { VerticalCard } from '../vertical/vertical-card.js';
import type { JumpJudgement, JumpOrderEntry, JumpTurn, VerticalEntry } from './entry.js';
import type { Condition } from './rows.js';
import type { VerticalSetup } from './setup.js';

/** A jump as it stands now, after corrections, moves and rulings. */
export interface JumpState extends JumpTurn {
  readonly id: string;
  /** Position in the journal, from 1. */
  readonly sequence: number;
  readonly kind: 'jump' | 'jump-off';
  readonly competitor: string;
  readonly judgement: JumpJudgement;
  /** Where the uprights stood, in centimetres behind the zero line; `null`: nothing was asked for. */
  readonly behindZeroCm: number | null;
  readonly standing: Standing;
}

export interface VerticalCompetitorState {
  readonly key: string;
  readonly bib: string;
  readonly status: 'DNS' | 'DQ' | null;
  readonly condition: Condition;
  /** Aligned with the heights: ids of the trials that count there, in their order. */
  readonly series: readonly (readonly string[])[];
  /** Greatest height cleared, without the jump-off; `null`: none. */
  readonly best: number | null;
  /** Since the last clearance, across heights. */
  readonly failuresInARow: number;
  /** The next trial; `null`: none, or not before the bar is set higher than all heights so far. */
  readonly next: JumpTurn | null;
  /** The next trial of somebody who is out unless his protest is upheld. */
  readonly nextUnderProtest: JumpTurn | null;
  /** What the competitor is doing at the height of the bar; `behind`: a trial below it has no entry yet. */
  readonly atBar: 'to jump' | 'cleared' | 'passing' | 'behind' | 'out';
  /** How the uprights are wanted, in centimetres behind the zero line; `null`: nothing was asked for. */
  readonly behindZeroCm: number | null;
}

/** A high jump or pole vault at one moment: a pure function of its setup and its journal. */
export interface VerticalState {
  readonly setup: VerticalSetup;
  readonly journal: readonly JournalItem<VerticalEntry>[];
  readonly attempts: ReadonlyMap<string, JumpState>;
  readonly competitors: readonly VerticalCompetitorState[];
  readonly questions: readonly Question[];
  /** Rising: those announced and those at which the bar was set, less those left out. */
  readonly heights: readonly number[];
  /** Where the bar is; in a jump-off: where it was before. */
  readonly bar: number;
  /** The greatest height at which somebody said that the bar was set. */
  readonly barSet: number | null;
  /** What decides places, as it stands. */
  readonly card: VerticalCard;
  /** As `card`, with every failure that is under protest a clearance; `null` when there is none. */
  readonly cardIfProtestsSucceed: VerticalCard | null;
  /** Orders of call set by officials, by height and trial (`turnKey`). */
  readonly orderChanges: ReadonlyMap<string, JumpOrderEntry>;
  readonly jumpOffDeclined: boolean;
  readonly signedOff: boolean;
  readonly safety: SafetyState;
  /** Who is away at another event, by key. */
  readonly away: ReadonlyMap<string, Away>;
  /** Which entries of the journal are in effect. */
  readonly activity: Activity;
  /** Two jumps count for one trial of one competitor; an entry that would lead to this is refused. */
  readonly clash: boolean;
}
