import { answersTo, demandSameFields, headersFor } from './fairness.js';
import type { LoadRequest } from './load.js';
import { absolute, againstFloor, type Measure } from './measure.js';
import { SCALE } from './scale.js';
import type { Stage } from './stage.js';
import { storeMeets } from './stored-meets.js';

const QUERY = `query Clubs($id: ID!) { meet(id: $id) { id clubTable {
  isProvisional combined { place club points }
} } }`;

/** Meets that warm both sides up: the first tables of a process are made by code that was not compiled yet. */
const WARMING = 12;
const MOST_MS = 20;
const TARGET = 1;

/**
 * The table of the clubs of a meet that nobody has asked for: forty competitions with 1,200 competitors, read, folded,
 * ranked and scored. The process is warm, from other meets of the same size; of the meet itself nothing is at hand.
 * One client, who waits for each answer, so that the time of one answer is measured.
 */
export async function measureClubTable(stage: Stage): Promise<Measure[]> {
  const meets = await storeMeets(stage, WARMING + 2 * SCALE.rounds + 1);
  const addresses = [stage.api.graphqlUrl, `${stage.floor.url}/club-table`] as const;
  const requests = addresses.map((address) => requestFor(address, meets[0]!)) as [LoadRequest, LoadRequest];
  demandSameFields('club-table', await answersTo(addresses, null, requests), false);
  const times: [number[], number[]] = [[], []];
  for (const id of meets.slice(1)) {
    for (const side of [0, 1] as const) times[side].push(await timeOf(addresses[side], id));
  }
  const [ours, floor] = times.map((all) => all.slice(WARMING));
  const perSecond = (all: readonly number[]): number[] => all.map((ms) => 1000 / ms);
  return [
    absolute('club-table', 'ms', ours!, MOST_MS),
    againstFloor('club-table', 'tables/s', {
      values: perSecond(ours!),
      floor: perSecond(floor!),
      target: TARGET,
    }),
  ];
}

/** Milliseconds from the question to the whole answer. */
async function timeOf(address: string, id: string): Promise<number> {
  const { method, body } = requestFor(address, id);
  const from = performance.now();
  const response = await fetch(address, { method, body: body!, headers: headersFor(null) });
  const text = await response.text();
  const took = performance.now() - from;
  if (!response.ok || !text.includes('"combined":[{"place":1,')) throw new Error(text.slice(0, 500));
  return took;
}

function requestFor(address: string, id: string): LoadRequest {
  return {
    method: 'POST',
    path: new URL(address).pathname,
    body: JSON.stringify({ query: QUERY, variables: { id } }),
  };
}
