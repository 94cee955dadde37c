import type { EventCode, RuleSetCode, VerticalEventCode } from '../codes.js';
import type { FoulCode } from '../fouls.js';
import type { Plan } from '../plan.js';
import type { Unit } from '../quantities/mark.js';
import type { DisqualificationGround, ProtestRules } from './protest-rules.js';
import type { VerticalRules } from './vertical-rules.js';

/**
 * Where a value comes from: the rule by its number in the book, and whether the text was read. `read in part`: in an
 * older edition or a text that quotes it. `memory`: recalled, to be checked against the current book before a record
 * hangs on it. `constructed`: chosen here because the book says nothing.
 */
export interface Citation {
  readonly rule: string;
  readonly basis: 'read' | 'read in part' | 'memory' | 'constructed';
  /** What a reader should know before relying on it. */
  readonly note?: string;
}

export interface Cited<T> {
  readonly value: T;
  readonly cite: Citation;
}

/** Seconds allowed for one trial (throws and horizontal jumps). */
export interface TimeAllowed {
  readonly trialS: number;
  /** Two consecutive trials of the same competitor. */
  readonly consecutiveS: number;
}

/** Seconds allowed for one trial over a bar, by how many competitors are left. */
export interface VerticalTimeAllowed {
  readonly moreThanThreeS: number;
  readonly twoOrThreeS: number;
  readonly oneS: number;
  /** Two consecutive trials of the same competitor. */
  readonly consecutiveS: number;
  /** A competitor's very first trial, however many are left. */
  readonly firstTrialS: number;
}

/** The smallest step in which an event is recorded: 1 cm; 1 quarter inch; 4 quarter inches = 1 inch. */
export type Precision = Readonly<Record<Unit, number>>;

/** In which rounds somebody may be called at another place of the order, because of a clash with another event. */
export type OrderChange = 'not in the last round' | 'any round';

export interface FlightSize {
  readonly min: number;
  readonly max: number;
}

/** One edition of one federation's rules, as data. Every value names its rule. */
export interface RuleSet {
  readonly code: RuleSetCode;
  readonly edition: string;
  readonly name: string;
  /** Throws and horizontal jumps, a final. */
  readonly plan: Cited<Plan>;
  readonly qualificationPlan: Cited<Plan>;
  readonly precision: Readonly<Record<EventCode, Cited<Precision>>>;
  /** Whole tenths of m/s, at most, for a mark to count in records and lists. */
  readonly windLimit: Cited<number>;
  readonly timeAllowed: Cited<TimeAllowed>;
  readonly verticalTimeAllowed: Readonly<Record<VerticalEventCode, Cited<VerticalTimeAllowed>>>;
  /** How the bar is raised and a tie for first is jumped off. */
  readonly vertical: Readonly<Record<VerticalEventCode, VerticalRules>>;
  /** Fouls that this rule set knows for each event, with the rule of each. */
  readonly fouls: Readonly<Record<EventCode, readonly Cited<FoulCode>[]>>;
  /** How ties in throws and horizontal jumps are resolved. */
  readonly ties: Citation;
  /** How ties in vertical jumps are resolved, without the jump-off. */
  readonly verticalTies: Citation;
  readonly jumpOff: Citation;
  /** The order of competition is drawn, and that of a final anew. */
  readonly draw: Citation;
  /** Largest and smallest flight that the rule set names, if it does. */
  readonly flightSize: Cited<FlightSize | null>;
  /** In rounds of trials. Over a bar the order may be changed for each trial: nobody knows which one is the last. */
  readonly orderChange: Cited<OrderChange>;
  /** The same in a combined event. */
  readonly combinedOrderChange: Cited<OrderChange>;
  /** How a result may be protested, and until when. */
  readonly protests: ProtestRules;
  /** What somebody may be disqualified for, with the rule of each. */
  readonly disqualifications: readonly Cited<DisqualificationGround>[];
}
