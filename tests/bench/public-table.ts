import { seriesOf, plannedTrials } from '../support/planned-trials.js';
import { discusSheet, staffedCompetition } from '../support/circle.js';
import { send, startFloor } from './children.js';
import { compare } from './compare.js';
import type { LoadResult } from './load.js';
import type { Measure } from './measure.js';
import { CLIENTS, COMPETITORS, ROUNDS, SCALE } from './scale.js';
import type { Stage } from './stage.js';

/** Shares of what fastify sends that has nothing to do but send the same bytes. */
const TARGET = 0.7;
const TARGET_UNCHANGED = 0.85;

/** A public table by its trusted document, and the answer that nothing has changed, against bytes kept in memory. */
export async function measurePublicTable(stage: Stage): Promise<Measure[]> {
  const floor = await startFloor(stage.databaseUrl, 'floor-crowd.ts');
  try {
    const series = seriesOf(plannedTrials(COMPETITORS, ROUNDS, 1));
    const competitors = Object.entries(series).map(([bib, cells]) => ({
      bib,
      name: `Given${bib} Family${bib}`,
      series: cells,
    }));
    const plan = { rounds: ROUNDS, cuts: [], reorderAfter: [] };
    const { id } = await staffedCompetition(
      stage.api,
      stage.meet,
      discusSheet(COMPETITORS, { competitors, plan }),
    );
    const query = new URLSearchParams({ documentId: 'competition-table', variables: JSON.stringify({ id }) });
    const ours = { url: new URL(stage.api.graphqlUrl).origin, path: `/public/graphql?${query}` };
    const answer = await fetch(`${ours.url}${ours.path}`);
    const etag = answer.headers.get('etag')!;
    const body = await answer.text();
    await fetch(`${floor.url}/kept`, { method: 'PUT', headers: { 'content-type': 'text/plain' }, body });
    const floors = { url: floor.url, path: '/kept' };
    return [
      await compare('public table', 'tables/s', TARGET, {
        ours: () => read(ours, {}, 200),
        floor: () => read(floors, {}, 200),
      }),
      await compare('public table unchanged', 'answers/s', TARGET_UNCHANGED, {
        ours: () => read(ours, { 'if-none-match': etag }, 304),
        floor: () => read(floors, { 'if-none-match': '"kept"' }, 304),
      }),
    ];
  } finally {
    await floor.stop();
  }
}

function read(
  { url, path }: { readonly url: string; readonly path: string },
  headers: Record<string, string>,
  status: number,
): Promise<LoadResult> {
  return send({
    ...{ url, headers, status },
    connections: Array.from({ length: CLIENTS }, () => [{ method: 'GET' as const, path }]),
    seconds: SCALE.readSeconds,
    mustContain: status === 200 ? '"rows":[{"competitor":"' : '',
  });
}
