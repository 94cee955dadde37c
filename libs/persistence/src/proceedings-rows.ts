import type { ProtestGround, ProtestOutcome, ProtestStepKind, Timeliness } from '#rules';
import type { Authority } from './rows.js';

/* How a result was posted, protested and decided, in the manner of rows.ts. */

/** Who wrote something down, when, and on what. */
export interface Written {
  readonly authority: Authority;
  readonly actor: string;
  readonly device: string | null;
  readonly deviceAt: string | null;
  readonly recordedAt: string;
}

/** A result as it was announced. */
export interface ResultPostingRow extends Written {
  readonly organisationId: string;
  readonly id: string;
  readonly competitionId: string;
  /** The journal up to this entry. */
  readonly sequence: number;
  readonly postedAt: string;
  /** Where it hangs. */
  readonly place: string | null;
  /** Why trials are outstanding; `null`: none are. */
  readonly incomplete: string | null;
}

export interface ProtestRow extends Written {
  readonly organisationId: string;
  readonly id: string;
  readonly competitionId: string;
  readonly form: 'oral' | 'written';
  readonly ground: ProtestGround;
  /** Who protested, by what he is to the competitor rather than by name. */
  readonly lodgedBy: string;
  readonly lodgedAt: string;
  /** For whom; `null`: nobody in particular. */
  readonly competitorId: string | null;
  /** The trial it is about; `null`: the result, or who is in it. */
  readonly attemptId: string | null;
  readonly reason: string;
  /** What was lodged with it; `null`: nothing. */
  readonly deposit: string | null;
  readonly depositPaid: boolean;
  /** As it was found when it came in. */
  readonly timeliness: Timeliness;
  readonly windowUntil: string | null;
}

/** What was done about a protest. */
export interface ProtestStepRow extends Written {
  readonly organisationId: string;
  readonly id: string;
  readonly protestId: string;
  /** From 1, without gaps. */
  readonly number: number;
  readonly kind: ProtestStepKind;
  readonly outcome: ProtestOutcome | null;
  /** Who decided, appealed or withdrew. */
  readonly doneBy: string;
  readonly doneAt: string;
  readonly reason: string;
  readonly rule: string | null;
  /** What became of the deposit; of an appeal: that one was paid. */
  readonly deposit: 'paid' | 'returned' | 'forfeited' | null;
  readonly timeliness: 'in time' | 'late';
}

/** A protest with what was done about it, in order. */
export interface ProtestState extends ProtestRow {
  readonly steps: readonly ProtestStepRow[];
}

/** All of it about one competition, each list in order. */
export interface StoredProceedings {
  readonly signatures: readonly { readonly revision: number; readonly signedAt: string }[];
  readonly postings: readonly ResultPostingRow[];
  readonly protests: readonly ProtestState[];
}
