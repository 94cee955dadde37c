/** What the server says of an athlete whom the viewer coaches, is, or is the guardian of. */
export interface AthleteNotes {
  readonly athleteId: string;
  readonly name: string;
  /** In completed years; null: not known. */
  readonly age: number | null;
  readonly isChild: boolean;
  readonly isGrowing: boolean;
  readonly isCoach: boolean;
  readonly checklists: readonly Checklist[];
  readonly stages: readonly { readonly event: string; readonly stage: string; readonly from: string }[];
  readonly focuses: readonly Focus[];
  readonly releases: readonly { readonly what: string; readonly isOpen: boolean }[];
  readonly consents: readonly Consent[];
}

export interface Checklist {
  readonly id: string;
  readonly event: string;
  readonly name: string;
  readonly version: number;
  readonly codes: readonly string[];
}

export interface Focus {
  readonly id: string;
  readonly event: string;
  readonly code: string;
  readonly how: string;
  readonly what: string | null;
  /** Days, `YYYY-MM-DD`; `to` null: it goes on. */
  readonly from: string;
  readonly to: string | null;
}

export interface Consent {
  readonly purpose: string;
  readonly isGiven: boolean;
  readonly by: string;
  readonly name: string;
  readonly on: string;
  readonly form: string | null;
}

/** Something that a throw can show, in English, with {throw} and {block} for the sides. */
export interface Point {
  readonly code: string;
  readonly name: string;
  readonly looksLike: string;
  readonly point: string;
  readonly caution: string | null;
  readonly relevantFrom: string;
  readonly variants: readonly string[] | null;
  readonly isActive: boolean;
  readonly isHidden: boolean;
  readonly opposite: string | null;
}

export interface Vocabulary {
  readonly variants: readonly string[];
  readonly faults: readonly Point[];
}

const NOTES = `athleteId name age isChild isGrowing isCoach
  checklists { id event name version codes }
  stages { event stage from }
  focuses { id event code how what from to }
  releases { what isOpen }
  consents { purpose isGiven by name on form }`;

export const SQUAD = `query NotebookSquad { notebookAthletes { ${NOTES} } }`;

export const VOCABULARY = `query NotebookVocabulary($event: EventCode!) {
  faultVocabulary(event: $event) {
    variants
    faults { code name looksLike point caution relevantFrom variants isActive isHidden opposite }
  }
}`;
