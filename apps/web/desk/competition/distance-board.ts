import {
  callsOf,
  countRows,
  neededForAll,
  progressOf,
  reasonsOf,
  type AttemptState,
  type Call,
  type CompetitionState,
} from '#rules';
import { localDecimals, markText, windText } from '../../labels/format.js';
import { t, tCode } from '../../labels/languages.js';
import { neededTexts, reasonText } from '../../labels/reasons.js';
import { holdOf, type Board, type Cell, type Row, type Turn } from './board-shape.js';

/** A throw or a horizontal jump as it stands. */
export function distanceBoard(state: CompetitionState): Board {
  const { phase, remaining, up } = progressOf(state);
  const isStopped = phase === 'official' || state.safety.stops.length > 0;
  const calls = isStopped ? [] : [...callsOf(state)].map(turnOf);
  return { phase, remaining, calls, rows: rowsOf(state, up?.competitor ?? null) };
}

function turnOf({ competitor: key, round, flight }: Call): Turn {
  return { key, round, flight, height: null, isJumpOff: false, isUnderProtest: false };
}

function rowsOf(state: CompetitionState, up: string | null): Row[] {
  const reasons = reasonsOf(state.card);
  const needed = neededForAll(state.card);
  const outside = outsideOf(state);
  const rows = countRows(state.card);
  // Before the first mark any mark would do.
  const isCounted = rows.some(({ row }) => row.place !== null);
  return rows.map(({ competitor, row }, at) => {
    const { key } = state.setup.competitors[competitor]!;
    return {
      key,
      place: row.place,
      isEqual: row.equal,
      best: row.mark === null ? '' : localDecimals(row.mark),
      why: reasonText(reasons[at]!),
      needs: isCounted ? neededTexts(needed[competitor]!) : [],
      isUp: key === up,
      cells: [...cellsOf(state, competitor), ...(outside.get(key) ?? [])],
    };
  });
}

function cellsOf(state: CompetitionState, competitor: number): Cell[] {
  return state.competitors[competitor]!.series.map((id, at) => {
    const attempt = id === null ? undefined : state.attempts.get(id);
    return attempt ? cellOf(state, attempt) : emptyCell(at + 1);
  });
}

function emptyCell(round: number): Cell {
  return { id: null, column: String(round), text: '', note: null, reason: null, hold: null };
}

/** A trial in words: `48,62`, `X`, `-`, `r`, `O`. */
export function attemptText({ judgement }: AttemptState, unit: CompetitionState['setup']['unit']): string {
  const { outcome, mark } = judgement;
  if (mark !== null) return markText(mark, unit);
  return { valid: '', unmeasured: 'O', foul: 'X', pass: '–', retired: 'r' }[outcome];
}

function cellOf({ setup }: CompetitionState, attempt: AttemptState): Cell {
  const { id, round, standing, judgement } = attempt;
  const { foul, wind, protested } = judgement;
  const notes = [
    wind === null ? null : windText(wind),
    protested === null ? null : `${t('question.protest')} ${markText(protested, setup.unit)}`,
  ].filter((note) => note !== null);
  return {
    id,
    column: String(round),
    text: attemptText(attempt, setup.unit),
    note: notes.length > 0 ? notes.join(', ') : null,
    reason: foul === null ? null : tCode('foul', foul),
    hold: holdOf(standing),
  };
}

/** Trials that wait for a decision, or for what is missing, by competitor. */
function outsideOf(state: CompetitionState): ReadonlyMap<string, readonly Cell[]> {
  const outside = new Map<string, Cell[]>();
  for (const attempt of state.attempts.values()) {
    if (holdOf(attempt.standing) === null) continue;
    outside.set(attempt.competitor, [...(outside.get(attempt.competitor) ?? []), cellOf(state, attempt)]);
  }
  return outside;
}

/** The first round in which a competitor has no trial; null: all are taken. */
export function nextRoundOf(state: CompetitionState, key: string): number | null {
  const at = state.competitors.find((one) => one.key === key)?.series.indexOf(null) ?? -1;
  return at < 0 ? null : at + 1;
}

/** Trials whose wind is still to come, the latest first. */
export function withoutWind(state: CompetitionState): readonly AttemptState[] {
  return [...state.attempts.values()]
    .filter(({ judgement }) => judgement.outcome === 'valid' && (judgement.wind ?? 'pending') === 'pending')
    .sort((a, b) => b.sequence - a.sequence);
}
