import type { AthleteNotes } from '../shapes.js';

/** Of one athlete: when something was thrown and looked at last. No mark is in it, and no order by marks. */
export interface SquadLine {
  readonly athlete: { readonly athleteId: string };
  /** Days, `YYYY-MM-DD`; null: never. */
  readonly lastThrowOn: string | null;
  readonly lastObservedOn: string | null;
  readonly throwsInFourWeeks: number;
  readonly isDue: boolean;
  readonly notAssessed: readonly {
    readonly event: string;
    readonly code: string;
    readonly lastLookedFor: string | null;
  }[];
}

export const OVERVIEW = `query NotebookOverview {
  squadOverview {
    athlete { athleteId }
    lastThrowOn lastObservedOn throwsInFourWeeks isDue
    notAssessed { event code lastLookedFor }
  }
}`;

/** What is being worked on now. */
export function openFocuses({ focuses }: AthleteNotes): AthleteNotes['focuses'] {
  return focuses.filter(({ to }) => to === null);
}
