import type { EventCode } from '#rules';
import type { FaultDraft, FaultMark, Instant, Stage, Style, Variant, View } from '#technique';

/*
 * What the tables of the notebook hold, as plain values: see rows.ts. People are persons with an account, by UUID.
 * Rows are added and never changed: one that another names as `replacesId` counts no longer.
 */

/** A day at which somebody practised. */
export interface PracticeSessionRow {
  readonly organisationId: string;
  readonly id: string;
  readonly onDate: string;
  readonly place: string | null;
  readonly note: string | null;
  readonly keptBy: string;
  readonly recordedAt: string;
}

/** As far as it was measured: centimetres per second, tenths of a degree, centimetres. */
export interface ReleaseData {
  readonly speedCmS?: number;
  readonly angleTenths?: number;
  readonly heightCm?: number;
  /** Of a disc, against the ground. */
  readonly attitudeTenths?: number;
}

export interface PracticeThrowRow {
  readonly organisationId: string;
  readonly id: string;
  /** Of the first row of the throw; it stays when the throw is corrected. */
  readonly throwId: string;
  readonly sessionId: string;
  readonly athleteId: string;
  readonly event: EventCode;
  readonly variant: Variant;
  readonly implementGrams: number | null;
  /** Order within the session, from 1. */
  readonly round: number;
  readonly outcome: 'valid' | 'foul';
  /** Centimetres; `null` for a foul, and where nobody looked. */
  readonly mark: number | null;
  /** False: paced or guessed, or no mark. */
  readonly isMeasured: boolean;
  /** Said before the throw. */
  readonly effortPercent: number | null;
  readonly voidedOnPurpose: boolean;
  /** Why it was a foul, as officials say it. */
  readonly foul: string | null;
  /** Tenths of m/s along the throw, positive from behind. */
  readonly wind: number | null;
  readonly styles: readonly Style[];
  readonly release: ReleaseData | null;
  /** Struck from the record by this row. */
  readonly isAnnulled: boolean;
  readonly replacesId: string | null;
  readonly reason: string | null;
  readonly loggedBy: string;
  readonly device: string | null;
  readonly deviceAt: string | null;
  readonly recordedAt: string;
  readonly fingerprint: string;
}

/** One observer looking at one throw once: a throw of practice, or a trial of a competition. */
export interface ObservationRow {
  readonly organisationId: string;
  readonly id: string;
  readonly athleteId: string;
  readonly event: EventCode;
  /** The throw's own id; or, of a trial, the other three. */
  readonly practiceThrowId: string | null;
  readonly competitionId: string | null;
  readonly competitorId: string | null;
  readonly round: number | null;
  readonly observerId: string;
  readonly observedAt: string;
  readonly method: 'live' | 'video';
  readonly markKnown: boolean;
  readonly view: View | null;
  /** Name and version of the checklist that the scope is; both or neither. */
  readonly checklist: string | null;
  readonly checklistVersion: number | null;
  /** Codes that were looked for; `null`: only what was noticed was noted. */
  readonly scope: readonly string[] | null;
  readonly marks: readonly FaultMark[];
  /** Of the built-in vocabulary. */
  readonly edition: string;
  readonly note: string | null;
  readonly isWithdrawn: boolean;
  readonly replacesId: string | null;
  readonly reason: string | null;
  readonly device: string | null;
  readonly deviceAt: string | null;
  readonly recordedAt: string;
  readonly fingerprint: string;
}

/** "Today we look at these three". The newest version of a name counts; without codes it is put away. */
export interface ChecklistBody {
  readonly kind: 'checklist';
  readonly event: EventCode;
  readonly name: string;
  readonly version: number;
  readonly codes: readonly string[];
}

/** How far the athlete is in an event, from a day on. */
export interface StageBody {
  readonly kind: 'stage';
  readonly event: EventCode;
  readonly stage: Stage;
  readonly from: string;
}

/** What is worked on and how. It ends by an entry that replaces it and has a last day. */
export interface FocusBody {
  readonly kind: 'focus';
  readonly event: EventCode;
  readonly code: string;
  readonly how: 'task' | 'drill' | 'full-throw';
  readonly from: string;
  readonly to: string | null;
  /** The task or the drill in the coach's words. */
  readonly what: string | null;
}

/** Where a film of a throw lies; nothing of it is stored here. */
export interface VideoBody {
  readonly kind: 'video';
  /** The throw's own id, or the trial. */
  readonly throw:
    | string
    | { readonly competition: string; readonly competitor: string; readonly round: number };
  /** An address or the name of a file. */
  readonly address: string;
  readonly view: View | null;
  readonly instants: readonly { readonly instant: Instant; readonly ms: number }[];
}

/** What of the notebook is shown to the athlete and the guardians; the newest of each counts. */
export interface ReleaseBody {
  readonly kind: 'release';
  readonly what: 'summary' | 'focus' | 'notes' | 'analysis';
  readonly isOpen: boolean;
}

/** Whether what is kept may be kept; the newest of each purpose counts. */
export interface ConsentBody {
  readonly kind: 'consent';
  readonly purpose: 'notes' | 'video' | 'analysis';
  readonly isGiven: boolean;
  readonly by: 'athlete' | 'guardian';
  /** Who gave it, as written on the form. */
  readonly name: string;
  readonly on: string;
  /** Where the form lies. */
  readonly form: string | null;
}

export type NotebookBody = ChecklistBody | StageBody | FocusBody | VideoBody | ReleaseBody | ConsentBody;

/** What is said of an athlete beside throws. */
export interface NotebookEntryRow {
  readonly organisationId: string;
  readonly id: string;
  readonly athleteId: string;
  /** `body.kind`. */
  readonly kind: NotebookBody['kind'];
  readonly body: NotebookBody;
  readonly replacesId: string | null;
  readonly madeBy: string;
  readonly recordedAt: string;
  readonly fingerprint: string;
}

export type FaultChangeBody =
  | { readonly kind: 'define'; readonly drafts: readonly [FaultDraft] }
  | { readonly kind: 'rename'; readonly code: string; readonly name: string }
  | { readonly kind: 'merge'; readonly code: string; readonly into: string }
  | { readonly kind: 'split'; readonly code: string; readonly drafts: readonly FaultDraft[] }
  | { readonly kind: 'retire' | 'hide' | 'show'; readonly code: string };

/** A change of the organisation's vocabulary; the vocabulary is what they come to in order. */
export interface FaultChangeRow {
  readonly organisationId: string;
  /** From 1, without gaps. */
  readonly sequence: number;
  readonly id: string;
  readonly body: FaultChangeBody;
  readonly madeBy: string;
  readonly recordedAt: string;
  readonly fingerprint: string;
}
