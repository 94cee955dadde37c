import type { CompetitionState } from '../competition/state.js';
import type { VerticalState } from '../vertical-competition/state.js';

/*
 * A calling group is called in one order at one circle, runway or bar and carries several competitions, each with its
 * own rules, plan, places and records. Nothing is decided for a group that its competitions have not decided: a call of
 * the group is always one that its competition expects now. How competitions that are held together take turns is in no
 * rule book that was read; what is said here of it is common practice, no published source.
 */

/** One competition of a group at one moment. */
export interface CalledCompetition<State extends CompetitionState | VerticalState> {
  /** How the group names the competition. */
  readonly key: string;
  readonly state: State;
  /**
   * When its latest trial that counts was recorded, in milliseconds of any clock that the group shares; `null`: none
   * has been.
   */
  readonly lastTrialAt: number | null;
}

/** All in rounds, or all at a bar with heights of one unit: they share the circle, or the bar. */
export type CallingGroup =
  | {
      readonly kind: 'distance';
      /** In the group's sequence. */
      readonly competitions: readonly CalledCompetition<CompetitionState>[];
      /** Competitors in the order that was drawn or set for the group; `null`: one competition after the other. */
      readonly startOrder: readonly string[] | null;
    }
  | {
      readonly kind: 'vertical';
      readonly competitions: readonly CalledCompetition<VerticalState>[];
      readonly startOrder: readonly string[] | null;
    };

/** One trial that is to be called, and for which competition. */
export interface GroupCall {
  /** The competition's key. */
  readonly competition: string;
  readonly competitor: string;
  /** At a bar the trial at the height; in a jump-off its round. */
  readonly round: number;
  readonly flight: string | null;
  /** Where the bar is; `null` in a throw or a horizontal jump. */
  readonly height: number | null;
  readonly jumpOff: boolean;
  /** Somebody who is out unless his protest is upheld. */
  readonly underProtest: boolean;
}
