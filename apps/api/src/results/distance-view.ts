import {
  callsOf,
  countRows,
  cutsOf,
  eventOf,
  formatMark,
  formatWind,
  orderOf,
  progressOf,
  reasonsOf,
  sentenceOf,
  type Call,
  type Card,
  type CompetitionState,
  type Reason,
} from '#rules';
import type { LoadedDistance } from '../platform/competition/loaded.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { CompetitionProgress, ResultTable, RoundOrder, TableRow, TableTrial } from './results.types.js';
import type { TrialCall } from './trial-call.type.js';
import { idsByBib, nameOf, rowHead, type View } from './view.js';

type DistanceView = View<LoadedDistance>;

/** What the table of a throw or a horizontal jump says of the places. */
export function distanceTable(
  view: DistanceView,
): Pick<ResultTable, 'rows' | 'rowsIfProtestsSucceed' | 'cuts' | 'vertical'> {
  const { card, cardIfProtestsSucceed } = view.loaded.state;
  const idOf = idsByBib(view.loaded);
  return {
    rows: rowsOf(view, card),
    rowsIfProtestsSucceed: cardIfProtestsSucceed && rowsOf(view, cardIfProtestsSucceed),
    cuts: cutsOf(card).map(({ after, through }) => ({ afterRound: after, through: through.map(idOf) })),
    vertical: null,
  };
}

function rowsOf(view: DistanceView, card: Card): TableRow[] {
  const { state, roster } = view.loaded;
  const reasons = reasonsOf(card);
  const stillCalled = new Set([...callsOf(state)].map((call) => call.competitor));
  return countRows(card).map(({ competitor, row }, at) => {
    const line = roster[competitor]!;
    const isWaiting = row.status === 'NM' && stillCalled.has(line.competitor.id);
    const reason = isWaiting ? 'No valid mark yet' : sentenceOf(reasons[at]!);
    const because = { reason, rule: ruleOf(reasons[at]!), isWaiting };
    return { ...rowHead(view, line, row, because), series: seriesOf(state, competitor), vertical: null };
  });
}

function ruleOf(reason: Reason): string | null {
  return reason.place === null ? null : reason.rule.rule;
}

function seriesOf(state: CompetitionState, competitor: number): TableTrial[] {
  return state.competitors[competitor]!.series.flatMap((id, at) =>
    id === null ? [] : [trialOf(state, id, at + 1)],
  );
}

function trialOf({ attempts, setup, signedOff }: CompetitionState, id: string, round: number): TableTrial {
  const { competitor, judgement } = attempts.get(id)!;
  const { outcome, mark, wind, foul, protested } = judgement;
  const known = wind === 'pending' ? null : wind;
  const isThrown = outcome !== 'pass' && outcome !== 'retired';
  const hasWind = outcome === 'valid' && eventOf(setup.event).hasWind(setup.indoor);
  return {
    entry: id,
    round,
    cell: mark === null ? CELLS[outcome] : formatMark(mark, setup.unit),
    wind: known === null ? null : formatWind(known),
    isWindPending: hasWind && known === null && !signedOff,
    foul,
    protestedMark: protested === null ? null : formatMark(protested, setup.unit),
    implementGrams: judgement.implementGrams ?? (isThrown ? dueOf(setup, competitor) : null),
    implementId: judgement.implementId ?? null,
  };
}

function dueOf({ competitors }: CompetitionState['setup'], competitor: string): number | null {
  return competitors.find(({ key }) => key === competitor)?.implementGrams ?? null;
}

/** As a field card writes them; a valid trial shows its mark. */
const CELLS = { valid: '', unmeasured: 'O', foul: 'X', pass: '-', retired: 'r' } as const;

/** Who takes part in each round, in order, as things stand. */
export function distanceOrders(loaded: LoadedDistance): RoundOrder[] {
  const idOf = idsByBib(loaded);
  return Object.entries(orderOf(loaded.state.card)).map(([round, bibs]) => ({
    round: Number(round),
    competitors: bibs.map(idOf),
  }));
}

/** Where the competition is and who is called. */
export function distanceProgress(view: DistanceView): CompetitionProgress {
  const { up, next, then, ...where } = progressOf(view.loaded.state);
  const calls = { up: callView(view, up), next: callView(view, next), then: callView(view, then) };
  return { ...where, ...calls, vertical: null };
}

function callView(view: DistanceView, call: Call | null): TrialCall | null {
  if (!call) return null;
  const line = view.loaded.roster.find(({ competitor }) => competitor.id === call.competitor)!;
  return {
    competitor: globalId('Competitor', call.competitor),
    bib: line.competitor.bib,
    name: nameOf(view, line),
    round: call.round,
    flight: call.flight,
    height: null,
    isJumpOff: false,
    isUnderProtest: false,
  };
}
