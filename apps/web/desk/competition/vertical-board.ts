import {
  countVertical,
  formatJumpOffTry,
  formatVerticalCell,
  verticalNeededForAll,
  verticalProgressOf,
  verticalReasonsOf,
  type JumpCall,
  type JumpState,
  type VerticalState,
} from '#rules';
import { localDecimals, markText } from '../../labels/format.js';
import { t, tCode } from '../../labels/languages.js';
import { verticalNeededTexts, verticalReasonText } from '../../labels/reasons.js';
import { holdOf, type Board, type Cell, type Row, type Turn } from './board-shape.js';
import type { CompetitionHead } from './head.js';

/** A high jump or pole vault as it stands. */
export function verticalBoard(head: CompetitionHead, state: VerticalState): Board {
  const { phase, calls, outstanding, up } = verticalProgressOf(state);
  const flights = new Map(head.callList.map(({ competitor }) => [competitor.bib, competitor.flight]));
  const flightOf = (key: string): string | null => {
    const bib = state.competitors.find((one) => one.key === key)?.bib;
    return (bib === undefined ? null : flights.get(bib)) ?? null;
  };
  return {
    phase,
    remaining: calls.length + outstanding.length,
    calls: [...calls, ...outstanding].map((call) => turnOf(call, flightOf(call.competitor))),
    rows: rowsOf(state, up?.competitor ?? null),
  };
}

function turnOf(
  { competitor: key, trial, height, jumpOff, underProtest }: JumpCall,
  flight: string | null,
): Turn {
  return { key, round: trial, flight, height, isJumpOff: jumpOff, isUnderProtest: underProtest };
}

function rowsOf(state: VerticalState, up: string | null): Row[] {
  const { card } = state;
  const reasons = verticalReasonsOf(card);
  const needed = new Map(verticalNeededForAll(card).map((one) => [one.bib, one]));
  return countVertical(card).results.map((row, at) => {
    const competitor = state.competitors.findIndex(({ bib }) => bib === row.bib);
    const { key } = state.competitors[competitor]!;
    return {
      key,
      place: row.place,
      isEqual: row.equal,
      best: row.mark === null ? '' : localDecimals(row.mark),
      why: verticalReasonText(reasons[at]!),
      needs: verticalNeededTexts(needed.get(row.bib)!),
      isUp: key === up,
      cells: [...cellsOf(state, competitor), ...otherCells(state, key)],
    };
  });
}

/** One cell a height; it opens the last trial there. */
function cellsOf(state: VerticalState, competitor: number): Cell[] {
  const { series } = state.competitors[competitor]!;
  return state.heights.map((height, at) => {
    const trials = (series[at] ?? []).map((id) => state.attempts.get(id)!);
    const last = trials.at(-1);
    return {
      id: last?.id ?? null,
      column: markText(height, state.setup.unit),
      text: formatVerticalCell(trials.map(({ judgement }) => judgement.outcome)).replace('-', '–'),
      note: last ? noteOf(last) : null,
      reason: last ? reasonOf(last) : null,
      hold: null,
    };
  });
}

function noteOf({ judgement: { protested } }: JumpState): string | null {
  return protested ? t('question.protest') : null;
}

function reasonOf({ judgement: { foul } }: JumpState): string | null {
  return foul === null ? null : tCode('foul', foul);
}

/** Trials of the jump-off, and those that wait for a decision. */
function otherCells({ attempts, setup }: VerticalState, key: string): Cell[] {
  return [...attempts.values()]
    .filter((jump) => jump.competitor === key && (jump.kind === 'jump-off' || holdOf(jump.standing)))
    .filter((jump) => jump.standing === 'counts' || holdOf(jump.standing))
    .map((jump) => ({
      id: jump.id,
      column: `${jump.kind === 'jump-off' ? '↕ ' : ''}${markText(jump.height, setup.unit)}`,
      text: formatJumpOffTry(jump.judgement.outcome).replace('-', '–'),
      note: noteOf(jump),
      reason: reasonOf(jump),
      hold: holdOf(jump.standing),
    }));
}
