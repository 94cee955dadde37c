import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { setTimeout as delay } from 'node:timers/promises';
import { discusSheet, staffedCompetition } from '../support/circle.js';
import { plannedTrials } from '../support/planned-trials.js';
import { gather, startFloor, type Crowd } from './children.js';
import type { CrowdReport } from './crowd.js';
import { absolute, type Measure } from './measure.js';
import { SCALE } from './scale.js';
import type { Stage } from './stage.js';

const QUERY = `subscription ($id: ID!) { competitionTable(id: $id) { version table { rows { bib name place mark } } } }`;
const COMPETITORS = 40;
const RECORD = `mutation ($input: AttemptRecordInput!) {
  attemptRecord(input: $input) { entry { recordedAt } competition { version } }
}`;
const SLOWER_AT_MOST = 2;
const RSS_MB = 400;
/** Of the crowd so many stop reading in the second part. */
const STALLED_SHARE = 0.01;

/**
 * From the moment at which a trial is recorded until a subscriber has the table that shows it, for a whole crowd in a process of its own; beside
 * it the same bytes broadcast by bare `ws`. Everybody must end with the newest version, and nobody see an older one.
 */
export async function measureFanOut(stage: Stage): Promise<Measure[]> {
  const floor = await startFloor(stage.databaseUrl, 'floor-crowd.ts');
  try {
    const ours = await recordBefore(stage, 0);
    const stalled = await recordBefore(stage, Math.ceil(SCALE.crowd * STALLED_SHARE));
    const bare = await broadcastBefore(floor.url, ours.report.bytes);
    const slower = (share: 'p50' | 'p99'): number => ours.report[share] / bare[share];
    return [
      absolute('fan-out p50', 'ms', [ours.report.p50], null),
      absolute('fan-out p99', 'ms', [ours.report.p99], null),
      absolute('bare broadcast p50', 'ms', [bare.p50], null),
      absolute('bare broadcast p99', 'ms', [bare.p99], null),
      absolute('fan-out p50 to bare', 'times', [slower('p50')], SLOWER_AT_MOST),
      absolute('fan-out p99 to bare', 'times', [slower('p99')], SLOWER_AT_MOST),
      absolute('fan-out server', 'MB', [ours.rssMb], RSS_MB),
      absolute('fan-out p99 with stalled', 'ms', [stalled.report.p99], null),
      absolute('fan-out server with stalled', 'MB', [stalled.rssMb], RSS_MB),
    ];
  } finally {
    await floor.stop();
  }
}

async function recordBefore(
  stage: Stage,
  stalled: number,
): Promise<{ readonly report: CrowdReport; readonly rssMb: number }> {
  const plan = { rounds: 6, cuts: [], reorderAfter: [] };
  const { id, official, competitors } = await staffedCompetition(
    stage.api,
    stage.meet,
    discusSheet(COMPETITORS, { plan }),
  );
  const greetings = [
    { type: 'connection_init' },
    { id: 'a', type: 'subscribe', payload: { query: QUERY, variables: { id } } },
  ].map((message) => JSON.stringify(message));
  const url = stage.api.graphqlUrl.replace(/^http/, 'ws');
  const crowd = await gather({ url, subscribers: SCALE.crowd, greetings, stalled });
  let rssMb = 0;
  const trials = plannedTrials(COMPETITORS, 6, 1).slice(0, SCALE.changes);
  const report = await published(crowd, SCALE.crowd - stalled, async (at) => {
    const { bib, round, cell } = trials[at]!;
    const outcome = { X: 'FOUL', '-': 'PASS' }[cell] ?? 'VALID';
    const mark = outcome === 'VALID' ? cell : null;
    const trial = {
      competitionId: id,
      competitorId: competitors[bib],
      round,
      outcome,
      mark,
      entryId: randomUUID(),
    };
    const answer = await stage.api.data(RECORD, { input: trial }, official);
    const { entry, competition } = answer.attemptRecord;
    rssMb = Math.max(rssMb, await rssOf(stage.server.pid));
    return { version: competition.version as number, atMs: Date.parse(entry.recordedAt) };
  });
  return { report, rssMb };
}

async function broadcastBefore(url: string, bytes: number): Promise<CrowdReport> {
  const crowd = await gather({
    url: url.replace(/^http/, 'ws'),
    subscribers: SCALE.crowd,
    greetings: [],
    stalled: 0,
  });
  return published(crowd, SCALE.crowd, async (at) => {
    const atMs = performance.timeOrigin + performance.now();
    const head = `{"id":"a","type":"next","payload":{"data":{"competitionTable":{"version":${at + 1},`;
    const body = head.padEnd(bytes, 'x');
    await fetch(`${url}/publish`, { method: 'POST', headers: { 'content-type': 'text/plain' }, body });
    return { version: at + 1, atMs };
  });
}

interface Published {
  readonly version: number;
  /** Since the epoch. */
  readonly atMs: number;
}

/** Publishes one version after the other, evenly; `publish` says which it made, and when. */
async function published(
  crowd: Crowd,
  readers: number,
  publish: (at: number) => Promise<Published>,
): Promise<CrowdReport> {
  const sentAt: Record<string, number> = {};
  let newest = 0;
  for (let at = 0; at < SCALE.changes; at += 1) {
    const { version, atMs } = await publish(at);
    newest = version;
    sentAt[version] = atMs;
    await delay(SCALE.apartMs);
  }
  const report = await crowd.finish(newest, sentAt);
  if (report.newest !== readers)
    throw new Error(`${report.newest} of ${readers} subscribers have the newest version.`);
  if (report.backwards > 0) throw new Error(`${report.backwards} times somebody was sent an older version.`);
  return report;
}

/** Resident memory of a process, in megabytes. */
async function rssOf(pid: number): Promise<number> {
  const status = await readFile(`/proc/${pid}/status`, 'utf8').catch(() => '');
  return Number(/^VmRSS:\s+(\d+) kB/m.exec(status)?.[1] ?? 0) / 1024;
}
