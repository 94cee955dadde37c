import {
  implementRegister,
  inspections,
  type CompetitionRow,
  type JournalBody,
  type Reads,
} from '#persistence';
import { standingOf, statusOfImplement, type ImplementStanding, type Judgement } from '#rules';

/**
 * The body of an entry with what the register knows now of the implement that it names: what decides about the entry
 * gets plain values, and the journal keeps what was known when it was decided. Read under the competition's lock, so
 * that an implement cannot fail unseen between the look and the entry.
 */
export async function withImplement(
  at: Reads,
  competition: CompetitionRow,
  body: JournalBody,
): Promise<JournalBody> {
  if ((body.kind !== 'attempt' && body.kind !== 'correction') || body.implementId === undefined) return body;
  return { ...body, ...(await knownOf(at, competition, body, body.implementId)) };
}

type Known = Pick<Judgement, 'implementGrams'> & { readonly implementStanding: ImplementStanding };

async function knownOf(
  at: Reads,
  { organisationId, meetId, event }: CompetitionRow,
  { implementGrams: sent }: Judgement,
  implementId: string,
): Promise<Known> {
  const implement = await implementRegister.find(at, organisationId, implementId);
  if (!implement) return { implementGrams: sent, implementStanding: 'unknown' };
  if (implement.event !== event) return { implementGrams: sent, implementStanding: 'other event' };
  if (sent !== null && sent !== implement.grams)
    return { implementGrams: sent, implementStanding: 'other mass' };
  const log = await inspections.ofImplements(at, organisationId, meetId, [implementId]);
  return { implementGrams: implement.grams, implementStanding: standingOf(statusOfImplement(log)) };
}
