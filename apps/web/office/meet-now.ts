/** A meet to choose from. */
export interface MeetChoice {
  readonly id: string;
  readonly name: string;
}

export const MEETS = `query OfficeMeets { meets(first: 50) { edges { node { id name } } } }`;

/** From what somebody may work on to the meet. */
export const MEET_OF = {
  meet: `query OfficeMeetName($id: ID!) { meet(id: $id) { id name } }`,
  competition: `query OfficeMeetOf($id: ID!) { competition(id: $id) { meet { id name } } }`,
};

/** Everything of a meet that is seen at one look. */
export const MEET = `query OfficeMeet($id: ID!) {
  meet(id: $id) {
    id name venue rules edition needsSecondPerson
    timetable { revision reason slots { competitions { id } facility { name } reportAt startsAt } }
    resultIssue { number at }
    competitions {
      id title status startsAt
      resultState { state postedAt protestsUntil isUnderProtest isReopened revision }
      progress { phase round remaining up { bib name } next { bib name } }
    }
  }
}`;

export interface Called {
  readonly bib: string;
  readonly name: string;
}

/** Where a result is on its way from the field to the archive. */
export interface ResultStateNow {
  readonly state: string;
  readonly postedAt: string | null;
  readonly protestsUntil: string | null;
  readonly isUnderProtest: boolean;
  readonly isReopened: boolean;
  readonly revision: number;
}

export interface CompetitionNow {
  readonly id: string;
  readonly title: string;
  readonly status: string;
  readonly startsAt: string | null;
  readonly resultState: ResultStateNow;
  readonly progress: {
    readonly phase: string;
    readonly round: number | null;
    readonly remaining: number;
    readonly up: Called | null;
    readonly next: Called | null;
  };
}

export interface SlotNow {
  readonly competitions: readonly { readonly id: string }[];
  readonly facility: { readonly name: string };
  readonly reportAt: string;
  readonly startsAt: string;
}

export interface MeetNow extends MeetChoice {
  readonly venue: string;
  readonly rules: string;
  readonly edition: string;
  readonly needsSecondPerson: boolean;
  readonly timetable: {
    readonly revision: number;
    readonly reason: string | null;
    readonly slots: readonly SlotNow[];
  } | null;
  readonly resultIssue: { readonly number: number; readonly at: string | null };
  readonly competitions: readonly CompetitionNow[];
}

/** Where a competition is in the timetable. */
export function slotOf({ timetable }: MeetNow, competitionId: string): SlotNow | null {
  return (
    timetable?.slots.find(({ competitions }) => competitions.some(({ id }) => id === competitionId)) ?? null
  );
}
