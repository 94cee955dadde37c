import type { Client } from './client.js';
import { idOf } from './ids.js';
import type { Line } from './competition.js';
import type { Place } from './run-in-rounds.js';

interface Up {
  readonly competitor: string;
  /** The trial at the height; in the jump-off its round. */
  readonly round: number;
  readonly height: string;
  readonly isJumpOff: boolean;
}

/** Whoever is called jumps, height by height and then in the jump-off, until the card says no more. */
export async function runAtBar(
  { official, competitionId, competition, lines }: Place,
  heights: readonly string[],
): Promise<void> {
  for (;;) {
    const up = await whoIsUp(official, competitionId);
    const line = up && lines.get(up.competitor);
    const letter = up && line ? letterOf(line, up, heights) : undefined;
    if (!up || !line || letter === undefined) return;
    const { competitor: competitorId, round, height, isJumpOff } = up;
    const turn = `${isJumpOff ? 'jump-off' : height}, ${round}`;
    const input = {
      competitionId,
      entryId: idOf(`${competition.title}: ${line.who}, ${turn}`),
      competitorId,
      height,
      ...(isJumpOff ? { round } : { trial: round }),
      ...judgementOf(letter),
    };
    await official.call(isJumpOff ? 'jumpOffRecord' : 'jumpRecord', input, 'entry { standing }');
  }
}

function letterOf(
  { cells, jumpOff }: Line,
  { round, height, isJumpOff }: Up,
  heights: readonly string[],
): string | undefined {
  return isJumpOff ? jumpOff?.[round - 1] : cells[heights.indexOf(height)]?.[round - 1];
}

async function whoIsUp(official: Client, id: string): Promise<Up | null> {
  const query = `query ($id: ID!) { competition(id: $id) { progress { up { competitor round height isJumpOff } } } }`;
  const { progress } = await official.send<{ progress: { up: Up | null } }>(query, 'competition', { id });
  return progress.up;
}

const OUTCOMES: Readonly<Record<string, string>> = { O: 'CLEARED', X: 'FAILED', '-': 'PASS', r: 'RETIRED' };

/** One letter of a field card as the input of a jump. */
function judgementOf(letter: string): object {
  return { outcome: OUTCOMES[letter], foul: letter === 'X' ? 'BAR' : null };
}
