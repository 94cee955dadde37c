import type { Client } from './client.js';
import { idOf } from './ids.js';
import type { DemoCompetition, Line } from './competition.js';

/** A competition that is being recorded. */
export interface Place {
  readonly official: Client;
  readonly competitionId: string;
  readonly competition: DemoCompetition;
  /** By the competitor's id. */
  readonly lines: ReadonlyMap<string, Line>;
  /** Of implements, by the name of who throws them. */
  readonly implementIds: ReadonlyMap<string, string>;
}

interface Up {
  readonly competitor: string;
  readonly round: number;
}

/** Whoever is called throws or jumps, until the card says no more. */
export async function runInRounds({
  official,
  competitionId,
  competition,
  lines,
  implementIds,
}: Place): Promise<void> {
  for (;;) {
    const up = await whoIsUp(official, competitionId);
    const line = up && lines.get(up.competitor);
    const cell = line?.cells[up!.round - 1];
    if (!up || !line || cell === undefined) return;
    const input = {
      competitionId,
      entryId: idOf(`${competition.title}: ${line.who}, round ${up.round}`),
      competitorId: up.competitor,
      round: up.round,
      ...attemptOf(cell),
      implementId: cell === '-' || cell === 'r' ? null : implementIds.get(line.who),
    };
    await official.call('attemptRecord', input, 'entry { standing }');
  }
}

async function whoIsUp(official: Client, id: string): Promise<Up | null> {
  const query = `query ($id: ID!) { competition(id: $id) { progress { up { competitor round } } } }`;
  const { progress } = await official.send<{ progress: { up: Up | null } }>(query, 'competition', { id });
  return progress.up;
}

const OUTCOMES: Readonly<Record<string, string>> = { X: 'FOUL', '-': 'PASS', r: 'RETIRED', O: 'UNMEASURED' };

/** `58.10`, `6.48 +1.1`, `X RIM`, `X GROUND 6.64 +0.8` (measured under protest), `-`, `r` as the input of an attempt. */
function attemptOf(cell: string): object {
  const [written = '', detail, protestedMark = null, wind = null] = cell.split(' ');
  const outcome = OUTCOMES[written] ?? 'VALID';
  if (outcome === 'VALID') return { outcome, mark: written, wind: detail ?? null };
  return { outcome, foul: detail ?? null, protestedMark, wind };
}
