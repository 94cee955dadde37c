import {
  callsOf,
  countRows,
  cutsOf,
  eventOf,
  formatMark,
  formatWind,
  progressOf,
  reasonsOf,
  ruleSet,
  sentenceOf,
  type Call,
  type Card,
  type CompetitionState,
  type Reason,
} from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { RosterLine } from '../platform/roster/roster.js';
import type { CompetitionProgress, ResultTable, TableRow, TableTrial, TrialCall } from './results.types.js';

/** Whole names for those who work at the meet, for everybody else what the meet shows. */
export type Audience = 'public' | 'crew';

interface View {
  readonly loaded: LoadedCompetition;
  readonly audience: Audience;
}

/** The table of one version. Computed once and shown many times: see `TableMemory`. */
export function tableView(loaded: LoadedCompetition, audience: Audience): ResultTable {
  const { state, row } = loaded;
  const view = { loaded, audience };
  const alternative = state.cardIfProtestsSucceed;
  return {
    version: row.version,
    rules: `${row.rules} ${row.edition}`,
    isOfficial: state.signedOff,
    isDisputed: state.questions.length > 0,
    changedAt: loaded.changedAt,
    rows: rowsOf(view, state.card),
    rowsIfProtestsSucceed: alternative && rowsOf(view, alternative),
    cuts: cutsOf(state.card).map(({ after, through }) => ({
      afterRound: after,
      through: through.map((bib) => globalId('Competitor', lineOf(loaded, bib).competitor.id)),
    })),
  };
}

function rowsOf(view: View, card: Card): TableRow[] {
  const reasons = reasonsOf(card);
  const stillCalled = new Set([...callsOf(view.loaded.state)].map((call) => call.competitor));
  return countRows(card).map((counted, at) => {
    const { windLegal, equal, wind, ...row } = counted.row;
    const line = view.loaded.roster[counted.competitor]!;
    const reason = reasons[at]!;
    // Whoever has a trial to come is not without a mark yet, only without one so far.
    const isWaiting = row.status === 'NM' && stillCalled.has(line.competitor.id);
    return {
      competitor: globalId('Competitor', line.competitor.id),
      bib: row.bib,
      name: nameOf(view, line),
      club: line.club,
      place: row.place,
      isEqual: equal,
      mark: row.mark,
      wind,
      isWindLegal: windLegal,
      windLegalMark: row.windLegalMark,
      status: isWaiting ? null : row.status,
      decidedBy: row.decidedBy,
      reason: isWaiting ? 'No valid mark yet' : sentenceOf(reason),
      reasonRule: ruleOf(view.loaded, reason),
      qualified: row.qualified,
      series: seriesOf(view.loaded, counted.competitor),
    };
  });
}

function ruleOf({ row }: LoadedCompetition, reason: Reason): string | null {
  return reason.place === null ? null : `${row.rules} ${ruleSet(row.rules, row.edition).ties.rule}`;
}

function seriesOf({ state }: LoadedCompetition, competitor: number): TableTrial[] {
  return state.competitors[competitor]!.series.flatMap((id, at) =>
    id === null ? [] : [trialOf(state, id, at + 1)],
  );
}

function trialOf({ attempts, setup, signedOff }: CompetitionState, id: string, round: number): TableTrial {
  const { outcome, mark, wind, foul, protested } = attempts.get(id)!.judgement;
  const known = wind === 'pending' ? null : wind;
  const hasWind = outcome === 'valid' && eventOf(setup.event).hasWind(setup.indoor);
  return {
    entry: id,
    round,
    cell: mark === null ? CELLS[outcome] : formatMark(mark, setup.unit),
    wind: known === null ? null : formatWind(known),
    isWindPending: hasWind && known === null && !signedOff,
    foul,
    protestedMark: protested === null ? null : formatMark(protested, setup.unit),
  };
}

/** As a field card writes them; a valid trial shows its mark. */
const CELLS = { valid: '', unmeasured: 'O', foul: 'X', pass: '-', retired: 'r' } as const;

/** Where the competition is and who is called. */
export function progressView(loaded: LoadedCompetition, audience: Audience): CompetitionProgress {
  const { up, next, then, ...where } = progressOf(loaded.state);
  const view = { loaded, audience };
  return { ...where, up: callView(view, up), next: callView(view, next), then: callView(view, then) };
}

function callView(view: View, call: Call | null): TrialCall | null {
  if (!call) return null;
  const line = view.loaded.roster.find(({ competitor }) => competitor.id === call.competitor)!;
  return {
    competitor: globalId('Competitor', call.competitor),
    bib: line.competitor.bib,
    name: nameOf(view, line),
    round: call.round,
    flight: call.flight,
  };
}

function nameOf({ audience }: View, line: RosterLine): string {
  return audience === 'crew' ? (line.name ?? line.displayName) : line.displayName;
}

function lineOf({ roster }: LoadedCompetition, bib: string): RosterLine {
  return roster.find(({ competitor }) => competitor.bib === bib)!;
}
