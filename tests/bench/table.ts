import { send } from './children.js';
import type { LoadRequest, LoadResult } from './load.js';
import type { Measure } from './measure.js';
import { compare } from './compare.js';
import { answersTo, demandSameFields, headersFor } from './fairness.js';
import { CLIENTS, SCALE } from './scale.js';
import type { Stage } from './stage.js';
import { storeCompetitions, TABLE_QUERY } from './stored-competitions.js';

const TARGET = 1.2;

/** Tables a second: sixteen readers, each of another competition, who ask again as soon as they have an answer. */
export async function measureTable(stage: Stage): Promise<Measure> {
  const ids = await storeCompetitions(stage, CLIENTS);
  const addresses = [stage.api.graphqlUrl, `${stage.floor.url}/table`] as const;
  for (const id of ids) {
    const requests = addresses.map((address) => requestFor(address, id)) as [LoadRequest, LoadRequest];
    demandSameFields('table', await answersTo(addresses, null, requests), true);
  }
  return compare('table', 'tables/s', TARGET, {
    ours: () => read(addresses[0], ids),
    floor: () => read(addresses[1], ids),
  });
}

function read(address: string, ids: readonly string[]): Promise<LoadResult> {
  return send({
    url: new URL(address).origin,
    headers: headersFor(null),
    connections: ids.map((id) => [requestFor(address, id)]),
    seconds: SCALE.readSeconds,
    mustContain: '"rows":[{"competitor":"',
  });
}

function requestFor(address: string, id: string): LoadRequest {
  return {
    method: 'POST',
    path: new URL(address).pathname,
    body: JSON.stringify({ query: TABLE_QUERY, variables: { id } }),
  };
}
