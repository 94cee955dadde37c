import { randomUUID } from 'node:crypto';
import { setTimeout as delay } from 'node:timers/promises';
import type { Circle } from '../support/at-the-circle.js';
import { attemptOf } from '../support/circle.js';
import { numbersFrom, type PlannedTrial } from '../support/planned-trials.js';

/** What a device was told about one trial. */
export interface Acknowledged {
  readonly entryId: string;
  readonly sequence: number;
  readonly trial: PlannedTrial;
}

/** What the devices of one competition went through. */
export interface Story {
  readonly acknowledged: Acknowledged[];
  /** Sends that got no answer: the server was killed, or not there. */
  unanswered: number;
  /** Answers that the database cannot be reached just now. */
  unavailable: number;
  /** Answers that the entry had been recorded before. */
  replays: number;
  /** Anything else: there must be nothing else. */
  readonly unexpected: string[];
}

export function newStory(): Story {
  return { acknowledged: [], unanswered: 0, unavailable: 0, replays: 0, unexpected: [] };
}

export interface Habits {
  /** Whether a trial keeps its id when it is sent again; without it the server cannot tell. */
  readonly keepsId: boolean;
  /** Share of acknowledged trials that are sent again all the same. */
  readonly resentShare: number;
  readonly seed: number;
}

const RECORD = `mutation ($input: AttemptRecordInput!) { attemptRecord(input: $input) {
  entry { id sequence standing } isReplay userErrors { code }
} }`;

/** Sends its trials one after the other, each until it is acknowledged. */
export async function sendAll(
  circle: Circle,
  trials: readonly PlannedTrial[],
  story: Story,
  { keepsId, resentShare, seed }: Habits,
): Promise<void> {
  const next = numbersFrom(seed);
  for (const trial of trials) {
    let entryId: string = randomUUID();
    let answer = await send(circle, trial, entryId, story);
    while (answer === null) {
      await delay(20 + next() * 60);
      if (!keepsId) entryId = randomUUID();
      answer = await send(circle, trial, entryId, story);
    }
    story.acknowledged.push({ entryId: answer.entry.id, sequence: answer.entry.sequence, trial });
    if (next() < resentShare) await send(circle, trial, keepsId ? entryId : randomUUID(), story);
  }
}

/** The payload, or `null` when there was none and the trial has to be sent again. */
async function send(circle: Circle, trial: PlannedTrial, entryId: string, story: Story): Promise<any> {
  const input = {
    competitionId: circle.competition.id,
    competitorId: circle.competitorOf(Number(trial.bib)),
    entryId,
    round: trial.round,
    ...attemptOf(trial.cell),
  };
  const answer = await circle.api.send(RECORD, { input }, circle.official).catch(() => null);
  if (answer === null) {
    story.unanswered += 1;
    return null;
  }
  const payload = answer.data?.attemptRecord;
  if (payload?.entry) {
    if (payload.isReplay) story.replays += 1;
    return payload;
  }
  if (answer.errors?.[0]?.extensions.code === 'UNAVAILABLE') story.unavailable += 1;
  else story.unexpected.push(JSON.stringify(answer));
  return null;
}
