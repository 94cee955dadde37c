import type { AthleteNotes } from '../shapes.js';

/** What was done with an athlete lately. */
export interface Recent {
  readonly athleteId: string;
  readonly practiceThrows: readonly { readonly onDate: string; readonly isAnnulled: boolean }[];
  readonly observations: readonly {
    readonly observedAt: string;
    readonly scope: readonly string[] | null;
  }[];
}

export const RECENT = `query NotebookRecent($from: Date) {
  notebookAthletes {
    athleteId
    practiceThrows(from: $from) { onDate isAnnulled }
    observations(from: $from) { observedAt scope }
  }
}`;

/** How far back the overview looks. */
export const LOOKED_BACK_DAYS = 28;
/** A choice of ours: after so long without a look somebody is due. */
export const DUE_AFTER_DAYS = 14;

export interface SquadState {
  /** `YYYY-MM-DD`; null: none in the time that is looked at. */
  readonly lastThrow: string | null;
  readonly throws: number;
  /** Throws that somebody looked at for something; what merely caught the eye says nothing of the rest. */
  readonly looked: number;
  readonly isDue: boolean;
  readonly isUnassessed: boolean;
}

const DAY_MS = 86_400_000;

/** Says who is due for a look; it compares nobody with anybody. */
export function squadState(recent: Recent | undefined, today: string): SquadState {
  const throws = (recent?.practiceThrows ?? []).filter(({ isAnnulled }) => !isAnnulled);
  const looked = (recent?.observations ?? []).filter(({ scope }) => scope !== null);
  const newest = (days: readonly string[]): string | null => [...days].sort().at(-1) ?? null;
  const lastLook = newest(looked.map(({ observedAt }) => observedAt.slice(0, 10)));
  const sinceLook = lastLook === null ? Infinity : (Date.parse(today) - Date.parse(lastLook)) / DAY_MS;
  return {
    lastThrow: newest(throws.map(({ onDate }) => onDate)),
    throws: throws.length,
    looked: looked.length,
    isDue: sinceLook >= DUE_AFTER_DAYS,
    isUnassessed: looked.length === 0,
  };
}

/** The day that many days before. */
export function daysBefore(today: string, days: number): string {
  return new Date(Date.parse(today) - days * DAY_MS).toISOString().slice(0, 10);
}

/** What is being worked on now. */
export function openFocuses({ focuses }: AthleteNotes): AthleteNotes['focuses'] {
  return focuses.filter(({ to }) => to === null);
}
