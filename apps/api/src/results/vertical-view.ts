import {
  countVertical,
  formatJumpOffTry,
  formatMark,
  formatVerticalCell,
  verticalReasonsOf,
  verticalSentenceOf,
  verticalStanding,
  type JumpState,
  type VerticalCard,
  type VerticalReason,
  type VerticalState,
} from '#rules';
import type { LoadedVertical } from '../platform/competition/loaded.js';
import type { ResultTable, TableRow } from './results.types.js';
import type { JumpOffRound, TableHeight, TableJump, VerticalRow } from './vertical.types.js';
import { idsByBib, rowHead, type View } from './view.js';

type VerticalView = View<LoadedVertical>;

/** What the table of a high jump or pole vault says of the places. */
export function verticalTable(
  view: VerticalView,
): Pick<ResultTable, 'rows' | 'rowsIfProtestsSucceed' | 'cuts' | 'vertical'> {
  const { card, cardIfProtestsSucceed } = view.loaded.state;
  return {
    rows: rowsOf(view, card),
    rowsIfProtestsSucceed: cardIfProtestsSucceed && rowsOf(view, cardIfProtestsSucceed),
    cuts: [],
    vertical: {
      heights: card.heights.map((height) => formatMark(height, card.unit)),
      jumpOff: roundsOf(view, card),
    },
  };
}

function rowsOf(view: VerticalView, card: VerticalCard): TableRow[] {
  const { state, roster } = view.loaded;
  const indexOf = new Map(card.competitors.map(({ bib }, index) => [bib, index]));
  const jumpOff = jumpOffTrials(state);
  const reasons = verticalReasonsOf(card);
  return countVertical(card).results.map((row, at) => {
    const index = indexOf.get(row.bib)!;
    const competitor = state.competitors[index]!;
    const mayGoOn = competitor.condition === 'in' || competitor.nextUnderProtest !== null;
    const isWaiting = row.status === 'NM' && mayGoOn && !state.signedOff;
    const reason = isWaiting ? 'No height cleared yet' : verticalSentenceOf(reasons[at]!);
    const because = { reason, rule: ruleOf(reasons[at]!), isWaiting };
    return {
      ...rowHead(view, roster[index]!, row, because),
      series: [],
      vertical: verticalRow(state, card, index, jumpOff.get(competitor.key) ?? []),
    };
  });
}

function ruleOf(reason: VerticalReason): string | null {
  return reason.place === null ? null : reason.rule.rule;
}

/** @param card may be the one in which protests succeed: it has the cells, the state has the trials as entered */
function verticalRow(
  state: VerticalState,
  card: VerticalCard,
  index: number,
  jumpOff: readonly JumpState[],
): VerticalRow {
  const { condition, atBar, behindZeroCm } = state.competitors[index]!;
  const standing = verticalStanding(card.competitors[index]!.series);
  return {
    heights: heightsOf(state, card, index),
    jumpOff: jumpOff.map((jump) => trialOf(state, jump)),
    failuresAtBest: standing.failuresAtBest,
    failuresToBest: standing.failuresToBest,
    failuresInARow: standing.consecutiveFailures,
    condition,
    atBar,
    behindZeroCm,
  };
}

function heightsOf(state: VerticalState, card: VerticalCard, index: number): TableHeight[] {
  const { series: cells } = card.competitors[index]!;
  const { series: trials } = state.competitors[index]!;
  return card.heights.map((height, at) => ({
    height: formatMark(height, card.unit),
    cell: cells[at] ? formatVerticalCell(cells[at]) : null,
    trials: (trials[at] ?? []).map((id) => trialOf(state, state.attempts.get(id)!)),
  }));
}

function trialOf(
  { setup }: VerticalState,
  { id, height, trial, judgement, behindZeroCm }: JumpState,
): TableJump {
  const { outcome, foul, incident, protested: isProtested } = judgement;
  return {
    entry: id,
    height: formatMark(height, setup.unit),
    trial,
    cell: formatJumpOffTry(outcome),
    foul,
    incident,
    isProtested,
    behindZeroCm,
  };
}

/** The trials of the jump-off that count, by competitor and in the order of the rounds. */
function jumpOffTrials({ attempts }: VerticalState): ReadonlyMap<string, readonly JumpState[]> {
  const trials = new Map<string, JumpState[]>();
  for (const jump of attempts.values()) {
    if (jump.kind !== 'jump-off' || jump.standing !== 'counts') continue;
    trials.set(jump.competitor, [...(trials.get(jump.competitor) ?? []), jump]);
  }
  for (const own of trials.values()) own.sort((a, b) => a.trial - b.trial);
  return trials;
}

function roundsOf({ loaded }: VerticalView, { jumpOff, unit }: VerticalCard): JumpOffRound[] {
  const idOf = idsByBib(loaded);
  return jumpOff.map(({ height, tries }, index) => ({
    round: index + 1,
    height: formatMark(height, unit),
    tries: tries.map(({ bib, trial }) => ({ competitor: idOf(bib), cell: formatJumpOffTry(trial) })),
  }));
}
