import { competitions, type Reads } from '#persistence';
import type { Capacity, Identity } from './identity.js';

/**
 * With which right the viewer acts on a competition at this moment, read where the caller decides; `null`: with none, or
 * there is no such competition. An official of a calling group is one on each competition that is in it now. Who holds
 * the competition's row already asks `viewer.capacityIn(row)`.
 */
export async function capacityAt(
  at: Reads,
  viewer: Identity,
  competitionId: string,
): Promise<Capacity | null> {
  const row = await competitions.find(at, viewer.organisationId, competitionId);
  return row && viewer.capacityIn(row);
}
