import {
  groupProgressOf,
  type CalledCompetition,
  type CompetitionState,
  type GroupCall,
  type VerticalState,
} from '#rules';
import type { OpenCompetition } from '../desk-store.js';
import type { KeptGroup } from '../keeping/database.js';
import type { Turn } from './board-shape.js';

/** A turn, and in which competition it counts. */
export interface GroupTurn {
  readonly competitionId: string;
  readonly turn: Turn;
}

/** Who is called where several competitions are called in one order. */
export function groupTurns(group: KeptGroup, open: readonly OpenCompetition[]): readonly GroupTurn[] {
  const { startOrder } = group;
  const distance = open.flatMap(({ kept, folded }) =>
    folded.kind === 'distance' ? [called(kept, folded.state)] : [],
  );
  const vertical = open.flatMap(({ kept, folded }) =>
    folded.kind === 'vertical' ? [called(kept, folded.state)] : [],
  );
  const progress =
    vertical.length > 0
      ? groupProgressOf({ kind: 'vertical', competitions: vertical, startOrder })
      : groupProgressOf({ kind: 'distance', competitions: distance, startOrder });
  return [...progress.calls, ...progress.outstanding].map(turnOf);
}

function called<State extends CompetitionState | VerticalState>(
  { id: key, items }: OpenCompetition['kept'],
  state: State,
): CalledCompetition<State> {
  const times = items.flatMap(({ recordedAtMs }) => recordedAtMs ?? []);
  return { key, state, lastTrialAt: times.at(-1) ?? null };
}

function turnOf({
  competition,
  competitor,
  round,
  flight,
  height,
  jumpOff,
  underProtest,
}: GroupCall): GroupTurn {
  const turn = { key: competitor, round, flight, height, isJumpOff: jumpOff, isUnderProtest: underProtest };
  return { competitionId: competition, turn };
}
