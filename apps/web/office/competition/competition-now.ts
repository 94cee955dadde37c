import { tCode } from '../../labels/languages.js';
import type { ResultStateNow } from '../meet-now.js';

const ROW = `competitor bib name club place mark status`;

/** Everything of a competition that is decided upon here. */
export const COMPETITION = `query OfficeCompetition($id: ID!) {
  competition(id: $id) {
    id title status version unit event vertical { heights }
    meet { id needsSecondPerson }
    resultState { state postedAt protestsUntil isUnderProtest isReopened revision }
    progress { phase remaining }
    table {
      version
      rows { ${ROW} reason
        series { entry round cell wind foul protestedMark }
        vertical { heights { height trials { entry trial cell isProtested } } } }
      rowsIfProtestsSucceed { ${ROW} }
    }
    protests {
      id standing form ground lodgedBy lodgedAt competitor trial reason deposit isDepositPaid timeliness windowUntil next
      steps { id kind outcome by at reason rule deposit timeliness }
    }
    protestTimes { ground minutes isTaken rule }
    disqualificationRules { ground rule isConfirmed }
    decisionRequests { id kind reason version authority askedAt entryId }
    crew { post name }
    callList { isUnmatched name competitor { id bib club } }
  }
}`;

export interface Trial {
  readonly entry: string;
  /** What it is called: its round, or its height and number. */
  readonly where: string;
  readonly cell: string;
  readonly isProtested: boolean;
}

export interface Row {
  readonly competitor: string;
  readonly bib: string;
  readonly name: string;
  readonly club: string | null;
  readonly place: number | null;
  readonly mark: string | null;
  readonly status: string | null;
}

interface SeriesTrial {
  readonly entry: string;
  readonly round: number;
  readonly cell: string;
  readonly wind: string | null;
  readonly foul: string | null;
  readonly protestedMark: string | null;
}

interface Height {
  readonly height: string;
  readonly trials: readonly {
    readonly entry: string;
    readonly trial: number;
    readonly cell: string;
    readonly isProtested: boolean;
  }[];
}

export interface TableRow extends Row {
  readonly reason: string;
  readonly series: readonly SeriesTrial[];
  readonly vertical: { readonly heights: readonly Height[] } | null;
}

export interface Step {
  readonly id: string;
  readonly kind: string;
  readonly outcome: string | null;
  readonly by: string;
  readonly at: string;
  readonly reason: string;
  readonly rule: string | null;
  readonly deposit: string | null;
  readonly timeliness: string;
}

export interface Protest {
  readonly id: string;
  readonly standing: string;
  readonly form: string;
  readonly ground: string;
  readonly lodgedBy: string;
  readonly lodgedAt: string;
  readonly competitor: string | null;
  readonly trial: string | null;
  readonly reason: string;
  readonly deposit: string | null;
  readonly isDepositPaid: boolean;
  readonly timeliness: string;
  readonly windowUntil: string | null;
  readonly next: readonly string[];
  readonly steps: readonly Step[];
}

export interface DecisionRequest {
  readonly id: string;
  readonly kind: string;
  readonly reason: string | null;
  readonly version: number;
  readonly authority: string;
  readonly askedAt: string;
  readonly entryId: string | null;
}

export interface CrewMember {
  readonly post: string;
  readonly name: string;
}

/** Of somebody on the start list, for those who work at the competition. */
export interface CallLine {
  readonly isUnmatched: boolean;
  readonly name: string | null;
  readonly competitor: { readonly id: string; readonly bib: string; readonly club: string | null };
}

export interface Competition {
  readonly id: string;
  readonly title: string;
  readonly status: string;
  readonly version: number;
  readonly unit: string;
  readonly event: string;
  /** Null: a throw or a horizontal jump. */
  readonly vertical: object | null;
  readonly meet: { readonly id: string; readonly needsSecondPerson: boolean };
  readonly resultState: ResultStateNow;
  readonly progress: { readonly phase: string; readonly remaining: number };
  readonly table: {
    readonly version: number;
    readonly rows: readonly TableRow[];
    readonly rowsIfProtestsSucceed: readonly Row[] | null;
  };
  readonly protests: readonly Protest[];
  readonly protestTimes: readonly {
    readonly ground: string;
    readonly minutes: number | null;
    readonly isTaken: boolean;
    readonly rule: string;
  }[];
  readonly disqualificationRules: readonly { readonly ground: string; readonly rule: string }[];
  readonly decisionRequests: readonly DecisionRequest[];
  readonly crew: readonly CrewMember[] | null;
  readonly callList: readonly CallLine[] | null;
}

/** The trials of a row, in order. */
export function trialsOf({ series, vertical }: TableRow): Trial[] {
  if (!vertical) {
    return series.map(({ entry, round, cell, wind, foul, protestedMark }) => ({
      entry,
      where: String(round),
      cell: [cell, foul && tCode('foul', foul), protestedMark && `(${protestedMark})`, wind]
        .filter(Boolean)
        .join(' '),
      isProtested: protestedMark !== null,
    }));
  }
  return vertical.heights.flatMap(({ height, trials }) =>
    trials.map(({ entry, trial, cell, isProtested }) => ({
      ...{ entry, cell, isProtested },
      where: `${height}/${trial}`,
    })),
  );
}
