import {
  competitors,
  draws,
  type CompetitionRow,
  type CompetitorRow,
  type DrawAmendmentRow,
  type DrawRow,
  type Tx,
} from '#persistence';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';

/*
 * What happens to a start list that was drawn: the draw stays as it was made, and what was done to the list since is
 * added beside it. Callers hold the competition's lock.
 */

/** Null: there are no drawn flights, or the entry names one of them. `drawn`: the draw in force. */
export function flightProblem(drawn: DrawRow | null, flight: string | null): Refusal | null {
  const labels = drawn?.flights.flatMap(({ label }) => label ?? []) ?? [];
  if (labels.length === 0 || (flight !== null && labels.includes(flight))) return null;
  return refusal({
    code: 'FLIGHT_MISSING',
    path: ['flight'],
    message: `The flights are drawn: ${labels.join(', ')}. Who enters late goes last in one of them.`,
    remedy: 'Send `flight`, or have the start list drawn again.',
  });
}

/** A line that came to the list, or was taken off it. */
export async function noteBesideDraw(
  tx: Tx,
  { organisationId, competitionId, bib, flight }: CompetitorRow,
  kind: 'entered late' | 'withdrawn',
  viewer: Pick<Identity, 'holder'>,
): Promise<void> {
  await note(tx, { organisationId, id: competitionId }, viewer, () => ({ kind, lines: [{ bib, flight }] }));
}

/** The whole list as somebody has put it. */
export async function noteOrderBesideDraw(
  tx: Tx,
  competition: Pick<CompetitionRow, 'organisationId' | 'id'>,
  viewer: Pick<Identity, 'holder'>,
): Promise<void> {
  await note(tx, competition, viewer, async () => {
    const list = await competitors.ofCompetition(tx, competition.organisationId, competition.id);
    return { kind: 'set by hand', lines: list.map(({ bib, flight }) => ({ bib, flight })) };
  });
}

type Noted = Pick<DrawAmendmentRow, 'kind' | 'lines'>;

async function note(
  tx: Tx,
  { organisationId, id }: Pick<CompetitionRow, 'organisationId' | 'id'>,
  viewer: Pick<Identity, 'holder'>,
  what: () => Noted | Promise<Noted>,
): Promise<void> {
  const drawn = await draws.latest(tx, organisationId, id);
  if (!drawn) return;
  await draws.amend(tx, { organisationId, drawId: drawn.id, ...(await what()), madeBy: viewer.holder ?? '' });
}
