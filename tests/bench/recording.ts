import { randomUUID } from 'node:crypto';
import { attemptOf, discusSheet, staffedCompetition, type StaffedCompetition } from '../support/circle.js';
import { plannedTrials } from '../support/planned-trials.js';
import { send } from './children.js';
import { compare } from './compare.js';
import { answersTo, demandSameFields, headersFor } from './fairness.js';
import type { LoadRequest, LoadResult } from './load.js';
import type { Measure } from './measure.js';
import { CLIENTS, COMPETITORS, ROUNDS } from './scale.js';
import type { Stage } from './stage.js';

const TARGET = 0.4;

const RECORD = `mutation Record($input: AttemptRecordInput!) { attemptRecord(input: $input) {
  entry { id sequence standing hold { code message remedy } notices recordedAt }
  isReplay
  competition { id version status }
  userErrors { code message path rule remedy }
} }`;

/** Entries a second: sixteen officials, each at a competition of his own, from the first trial to the last. */
export async function measureRecording(stage: Stage): Promise<Measure> {
  const addresses = [stage.api.graphqlUrl, `${stage.floor.url}/record`] as const;
  const [ours, floors] = [await newCompetition(stage), await newCompetition(stage)];
  const requests = [requestsOf(ours, addresses[0], 0)[0]!, requestsOf(floors, addresses[1], 0)[0]!] as const;
  demandSameFields('recording', await answersTo(addresses, stage.meet.director, requests), false);
  return compare('recording', 'entries/s', TARGET, {
    ours: () => record(stage, addresses[0]),
    floor: () => record(stage, addresses[1]),
  });
}

async function record(stage: Stage, address: string): Promise<LoadResult> {
  const competitions: StaffedCompetition[] = [];
  for (let client = 0; client < CLIENTS; client += 1) competitions.push(await newCompetition(stage));
  return send({
    url: new URL(address).origin,
    // A director may record at all of them, so one token does for every client.
    headers: headersFor(stage.meet.director),
    connections: competitions.map((competition, client) => requestsOf(competition, address, client)),
    seconds: null,
    mustContain: '"standing":"ACCEPTED"',
  });
}

function newCompetition({ api, meet }: Stage): Promise<StaffedCompetition> {
  const plan = { rounds: ROUNDS, cuts: [], reorderAfter: [] };
  return staffedCompetition(api, meet, discusSheet(COMPETITORS, { plan }));
}

/** Every trial of a competition, in the order in which it is called. */
function requestsOf({ id, competitors }: StaffedCompetition, address: string, seed: number): LoadRequest[] {
  const { pathname: path } = new URL(address);
  return plannedTrials(COMPETITORS, ROUNDS, seed).map(({ bib, round, cell }) => {
    const trial = { competitorId: competitors[bib], round, ...attemptOf(cell) };
    const input = { competitionId: id, entryId: randomUUID(), ...trial };
    return { method: 'POST', path, body: JSON.stringify({ query: RECORD, variables: { input } }) };
  });
}
