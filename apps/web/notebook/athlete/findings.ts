/* What the server says of an athlete's throws, as far as the pages show it. */

export interface Interval {
  readonly low: number | null;
  readonly high: number | null;
  readonly level: number;
}

export interface Refused {
  readonly code: string;
  readonly have: number;
  readonly need: number;
  readonly of: string;
  readonly missingThrows: number | null;
}

/** A number, or the reason why there is none yet; and the ids of the attempts behind it. */
export interface Answered {
  readonly refused: Refused | null;
  readonly attempts: readonly string[];
}

export interface SeenShare extends Answered {
  readonly k: number | null;
  readonly n: number | null;
  readonly share: number | null;
  readonly interval: Interval | null;
}

export interface Effect extends Answered {
  readonly percent: number | null;
  readonly interval: Interval | null;
  readonly informativeSeries: number | null;
  readonly throwsWith: number | null;
  readonly throwsWithout: number | null;
  readonly notYetKnown: boolean;
  readonly furtherThrows: number | null;
}

export interface Fouls extends Answered {
  readonly riskDifference: number | null;
  readonly throwsWith: number | null;
  readonly throwsWithout: number | null;
  readonly p: number | null;
}

/** Of one point what is said of everybody; the rest is not said of children. */
export interface PointFindings {
  readonly code: string;
  readonly name: string;
  readonly point: string;
  readonly seen: SeenShare;
  readonly caution?: string | null;
  readonly isTaught?: boolean;
  readonly distance?: Effect;
  readonly fouls?: Fouls;
  readonly worthTesting?: boolean;
}

export interface ImplementFindings {
  readonly implement: string;
  readonly implementGrams: number | null;
  readonly variant: string;
  readonly throws: number;
  readonly best: { readonly cm: number; readonly attempt: string; readonly onDate: string } | null;
  readonly progress: readonly {
    readonly onDate: string;
    readonly inCompetition: boolean;
    readonly bestCm: number;
    readonly medianCm: number;
  }[];
  readonly trend?: Answered & { readonly cmPer30Days: number | null; readonly interval: Interval | null };
  readonly foulRate?: SeenShare;
  readonly consistency?: Answered & { readonly cvPercent: number | null; readonly interval: Interval | null };
}

export interface FocusOutcome {
  readonly focusId: string;
  readonly code: string;
  readonly before: SeenShare;
  readonly windows: readonly {
    readonly window: string;
    readonly seen: SeenShare;
    readonly difference: number | null;
    readonly interval: Interval | null;
    readonly refused: Refused | null;
  }[];
}

export interface Analysis {
  readonly kind: 'AthleteAnalysis' | 'ChildAnalysis';
  readonly throws: number;
  readonly isFirstAnswer: boolean;
  readonly askHowTheAthleteFeels: boolean;
  readonly implements: readonly ImplementFindings[];
  readonly points: readonly PointFindings[];
  readonly focuses: readonly FocusOutcome[];
  readonly foulsByReason?: readonly {
    readonly reason: string;
    readonly count: number;
    readonly attempts: readonly string[];
  }[];
  readonly next?: readonly {
    readonly code: string;
    readonly name: string;
    readonly point: string;
    readonly caution: string | null;
    readonly group: number | null;
    readonly heldBack: string | null;
  }[];
  readonly tryNext?: { readonly code: string; readonly point: string } | null;
}

export interface HistoryThrow {
  readonly id: string;
  readonly thrownIn: 'COMPETITION' | 'PRACTICE';
  readonly occasion: string;
  readonly occasionName: string;
  readonly onDate: string;
  readonly variant: string;
  readonly implementGrams: number | null;
  readonly round: number;
  readonly outcome: 'VALID' | 'FOUL' | 'PASS';
  readonly mark: string | null;
  readonly isMeasured: boolean;
  readonly wind: string | null;
  readonly foul: string | null;
}

/** What of the history is looked at. */
export interface Filter {
  readonly event: string;
  readonly implementGrams: number | null;
  readonly from: string | null;
  readonly to: string | null;
  readonly thrownIn: 'COMPETITION' | 'PRACTICE' | null;
}

const REFUSED = 'refused { code have need of missingThrows } attempts';
const INTERVAL = 'interval { low high level }';
const SEEN = `seen { k n share ${INTERVAL} ${REFUSED} }`;
const PROGRESS = `implement implementGrams variant throws best { cm attempt onDate }
  progress { onDate inCompetition bestCm medianCm }`;
const FOCUSES = `focuses { focusId code before { k n share ${INTERVAL} ${REFUSED} }
  windows { window ${SEEN} difference ${INTERVAL} refused { code have need of missingThrows } } }`;

const ARGUMENTS = `event: $event, implementGrams: $implementGrams, from: $from, to: $to, thrownIn: $thrownIn`;
const VARIABLES = `$id: ID!, $event: EventCode!, $implementGrams: Int, $from: Date, $to: Date, $thrownIn: ThrownIn`;

export const ANALYSIS = `query NotebookAnalysis(${VARIABLES}) {
  notebookAthlete(athleteId: $id) { analysis(${ARGUMENTS}) {
    kind: __typename
    ... on AthleteAnalysis {
      throws isFirstAnswer askHowTheAthleteFeels
      implements { ${PROGRESS}
        trend { cmPer30Days ${INTERVAL} ${REFUSED} }
        foulRate { k n share ${INTERVAL} ${REFUSED} }
        consistency { cvPercent ${INTERVAL} ${REFUSED} } }
      points: faults { code name point caution isTaught worthTesting ${SEEN}
        distance { percent ${INTERVAL} informativeSeries throwsWith throwsWithout notYetKnown furtherThrows ${REFUSED} }
        fouls { riskDifference throwsWith throwsWithout p ${REFUSED} } }
      next { code name point caution group heldBack }
      foulsByReason { reason count attempts }
      ${FOCUSES}
    }
    ... on ChildAnalysis {
      throws isFirstAnswer askHowTheAthleteFeels
      implements { ${PROGRESS} }
      points { code name point ${SEEN} }
      tryNext { code point }
      ${FOCUSES}
    }
  } }
}`;

export const HISTORY = `query NotebookHistory(${VARIABLES}, $after: String) {
  notebookAthlete(athleteId: $id) { history(${ARGUMENTS}, first: 100, after: $after) {
    edges { node { id thrownIn occasion occasionName onDate variant implementGrams round outcome mark isMeasured wind foul } }
    pageInfo { hasNextPage endCursor }
  } }
}`;

export interface HistoryPage {
  readonly edges: readonly { readonly node: HistoryThrow }[];
  readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string | null };
}

/** Marks are metres as text; plots count in centimetres. */
export function centimetres(mark: string): number {
  return Math.round(Number(mark) * 100);
}
