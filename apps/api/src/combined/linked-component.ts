import type { CombinedEntrantRow } from '#persistence';
import {
  callsOf,
  parseMark,
  parseWind,
  type CombinedPerformance,
  type LinkedComponent,
  type ResultRow,
} from '#rules';
import { resultDocumentOf } from '../platform/competition/documents.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';

/** Something about a linked competition that does not fit; nothing is refused for it. */
export interface ComponentProblem {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
  readonly rule: string | null;
  /** Of the entrant or competitor it is about; `null`: of the competition as a whole. */
  readonly bib: string | null;
}

export interface Linked {
  readonly component: LinkedComponent;
  readonly problems: readonly ComponentProblem[];
}

/** A competition as a combined event looks at it: its competitors matched with the entrants, by athlete, else by bib. */
export function linkedComponent(loaded: LoadedCompetition, entrants: readonly CombinedEntrantRow[]): Linked {
  const { matches, problems } = matched(loaded, entrants);
  const rows = new Map((resultDocumentOf(loaded).results ?? []).map((row) => [row.bib, row]));
  const toCome = stillToCome(loaded);
  const results = new Map<string, CombinedPerformance>();
  const unmeasured: ComponentProblem[] = [];
  for (const [entrantId, { id, bib }] of matches) {
    const row = rows.get(bib);
    if (!row) continue;
    if (row.mark === 'O') unmeasured.push(problemOf('UNMEASURED', bib));
    const performance = performanceOf(row, toCome.has(id));
    if (performance) results.set(entrantId, performance);
  }
  return {
    component: { isOfficial: loaded.state.signedOff, results },
    problems: [...termProblems(loaded), ...problems, ...unmeasured],
  };
}

/** Nothing: a first mark is still to come. */
function performanceOf(row: ResultRow, mayGoOn: boolean): CombinedPerformance | null {
  const none = { hundredths: null, timing: null, wind: null };
  if (row.status === 'DNS' || row.status === 'DQ') return { outcome: row.status, ...none };
  const mark = row.mark === null ? null : parseMark(row.mark);
  if (mark?.unit === 'cm') {
    const wind = row.wind === null ? null : parseWind(row.wind);
    return { outcome: 'valid', hundredths: mark.value, timing: null, wind };
  }
  return mayGoOn && row.mark === null ? null : { outcome: 'NM', ...none };
}

/** Competitors who still have a trial to take. */
function stillToCome({ kind, state }: LoadedCompetition): ReadonlySet<string> {
  if (state.signedOff) return new Set();
  if (kind === 'distance') return new Set([...callsOf(state)].map(({ competitor }) => competitor));
  const isIn = state.competitors.filter(
    ({ condition, nextUnderProtest }) => condition === 'in' || nextUnderProtest !== null,
  );
  return new Set(isIn.map(({ key }) => key));
}

interface Matched {
  /** By entrant. */
  readonly matches: ReadonlyMap<string, { readonly id: string; readonly bib: string }>;
  readonly problems: readonly ComponentProblem[];
}

function matched({ roster }: LoadedCompetition, entrants: readonly CombinedEntrantRow[]): Matched {
  const competitors = roster.map(({ competitor }) => competitor);
  const matches = new Map<string, { readonly id: string; readonly bib: string }>();
  const problems: ComponentProblem[] = [];
  for (const { id, athleteId, bib } of entrants) {
    const own = athleteId === null ? undefined : competitors.find((one) => one.athleteId === athleteId);
    const byBib = competitors.find((one) => one.bib === bib);
    const isSomebodyElse =
      !own && byBib && athleteId !== null && byBib.athleteId !== null && byBib.athleteId !== athleteId;
    const match = own ?? (isSomebodyElse ? undefined : byBib);
    if (match) matches.set(id, match);
    else problems.push(problemOf(isSomebodyElse ? 'ANOTHER_ATHLETE' : 'NOT_IN_COMPETITION', bib));
  }
  const taken = new Set([...matches.values()].map((match) => match.id));
  for (const { id, bib } of competitors) {
    if (!taken.has(id)) problems.push(problemOf('NOT_IN_COMBINED_EVENT', bib));
  }
  return { matches, problems };
}

/** What the rules say of a competition in a combined event, where this one is held otherwise. */
function termProblems({ row, state, kind }: LoadedCompetition): ComponentProblem[] {
  const problems: ComponentProblem[] = [];
  if (row.stage === 'qualification') problems.push(problemOf('A_QUALIFICATION', null));
  if (kind === 'vertical') {
    if (!state.setup.combined) problems.push(problemOf('STEP_NOT_CONSTANT', null));
  } else if (state.setup.plan.rounds !== 3 || state.setup.plan.cuts.length > 0) {
    problems.push(problemOf('NOT_THREE_TRIALS', null));
  }
  return problems;
}

const RULE = 'WA TR39, combined events';

const TEXTS: Readonly<Record<string, Pick<ComponentProblem, 'message' | 'remedy' | 'rule'>>> = {
  NOT_IN_COMPETITION: {
    message: 'The entrant is not in the start list of the competition.',
    remedy: 'Enter the athlete there, or correct the bib; or say that the entrant is out.',
    rule: null,
  },
  NOT_IN_COMBINED_EVENT: {
    message: 'The competitor is not in the combined event.',
    remedy: 'Nothing, if others compete as well; else enter the athlete here.',
    rule: null,
  },
  ANOTHER_ATHLETE: {
    message: 'The bib belongs to another athlete in the competition.',
    remedy: 'Correct the bib, or enter the athlete there.',
    rule: null,
  },
  UNMEASURED: {
    message: 'The only valid trials were not measured, so the tables give nothing.',
    remedy: 'Correct the trial if it was measured.',
    rule: null,
  },
  A_QUALIFICATION: {
    message: 'The competition is a qualification; a combined event has none.',
    remedy: 'Link a final.',
    rule: RULE,
  },
  NOT_THREE_TRIALS: {
    message: 'In combined events everybody has three trials; this competition has another plan.',
    remedy: 'The referee decides whether it stands; set the next one up with three rounds and no cut.',
    rule: RULE,
  },
  STEP_NOT_CONSTANT: {
    message: 'In combined events the bar is raised by a constant step; this competition does not say so.',
    remedy: 'The referee decides whether it stands; set the next one up as of a combined event.',
    rule: RULE,
  },
};

function problemOf(code: string, bib: string | null): ComponentProblem {
  return { code, bib, ...TEXTS[code]! };
}
