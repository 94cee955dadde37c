import { setTimeout as delay } from 'node:timers/promises';
import { ApiProcess } from '../support/api-process.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet, staffedMeet, type StaffedMeet } from '../support/circle.js';
import type { ApiClient } from '../support/client.js';
import { numbersFrom, plannedTrials, type PlannedTrial } from '../support/planned-trials.js';
import type { MortalServer } from './databases.js';
import { newStory, sendAll, type Habits, type Story } from './devices.js';

export type Victim = 'api' | 'database' | 'both';

export interface RunOptions {
  readonly server: MortalServer;
  readonly dataDirectory: string;
  /** In order; each is killed when its share of the entries is acknowledged. */
  readonly victims: readonly Victim[];
  /** Of all competitions together, without the control. */
  readonly entries: number;
  readonly resentShare: number;
  readonly seed: number;
}

/** A competition, what was sent there, and what its devices were told. */
export interface Recorded {
  readonly circle: Circle;
  readonly trials: readonly PlannedTrial[];
  readonly story: Story;
}

export interface Outcome {
  readonly competitions: readonly Recorded[];
  /** Recorded at the same time by devices that make a new id for every send. */
  readonly control: Recorded;
  /** Kills of the database alone that the API lived through in the same process. */
  readonly survived: number;
  /** Left running. */
  readonly api: ApiProcess;
}

const COMPETITIONS = 4;
const DEVICES_EACH = 4;
const ROUNDS = 6;
const RECOVERY_MS = 60_000;

/** A meet whose devices send all their trials while something is killed again and again. */
export async function killWhileRecording(options: RunOptions): Promise<Outcome> {
  const { server, dataDirectory, entries, seed, resentShare } = options;
  const api = await ApiProcess.start({ databaseUrl: server.databaseUrl, dataDirectory });
  const client = await api.client(await server.storeUrl());
  const meet = await staffedMeet(client);
  const field = entries / COMPETITIONS / ROUNDS;
  const all: Recorded[] = [];
  for (let at = 0; at <= COMPETITIONS; at += 1) all.push(await competitionOf(client, meet, field, seed + at));
  const [control, ...competitions] = all as [Recorded, ...Recorded[]];
  const sending = [
    ...competitions.map((one) => record(one, { keepsId: true, resentShare, seed })),
    record(control, { keepsId: false, resentShare, seed }),
  ];
  const acknowledged = (): number =>
    competitions.reduce((sum, { story }) => sum + story.acknowledged.length, 0);
  const [survived] = await Promise.all([killAtShares(options, api, acknowledged), ...sending]);
  return { competitions, control, survived, api };
}

async function competitionOf(
  client: ApiClient,
  meet: StaffedMeet,
  field: number,
  seed: number,
): Promise<Recorded> {
  const sheet = discusSheet(field, { plan: { rounds: ROUNDS, cuts: [], reorderAfter: [] } });
  const circle = await Circle.open(client, sheet, meet);
  return { circle, trials: plannedTrials(field, ROUNDS, seed), story: newStory() };
}

/** Several devices share the field of one competition, each with competitors of its own. */
async function record({ circle, trials, story }: Recorded, habits: Habits): Promise<void> {
  const devices = Array.from({ length: DEVICES_EACH }, (_, device) => {
    const own = trials.filter(({ bib }) => Number(bib) % DEVICES_EACH === device);
    return sendAll(circle, own, story, { ...habits, seed: habits.seed + device });
  });
  await Promise.all(devices);
}

/** Resolves to the number of kills of the database alone, after each of which the same process answered again. */
async function killAtShares(
  { victims, server, entries, seed }: RunOptions,
  api: ApiProcess,
  acknowledged: () => number,
): Promise<number> {
  const next = numbersFrom(seed);
  let survived = 0;
  for (const [at, victim] of victims.entries()) {
    while (acknowledged() < (entries * (at + 1)) / (victims.length + 1)) await delay(5);
    await delay(next() * 20);
    const { pid } = api;
    await Promise.all([
      ...(victim === 'database' ? [] : [api.kill()]),
      ...(victim === 'api' ? [] : [server.kill()]),
    ]);
    if (victim !== 'api') await server.revive();
    if (victim !== 'database') await api.launch();
    else if (await api.answersWithin(RECOVERY_MS)) survived += Number(api.pid === pid && api.isRunning);
  }
  return survived;
}
