import type { Client } from './client.js';
import { line, type DemoCompetition } from './competition.js';
import { idOf } from './ids.js';

/*
 * A heptathlon after its first day: the shot is counted from a competition of the meet, times and heights are entered.
 * One fell over the hurdles and went on, one gave up before the 200 m, whose wind was over the limit in the first heat.
 */

const TITLE = 'Heptathlon, women';
/** The bibs of the shot, by which its competitors would be found if they were not on record. */
const FIRST_BIB = 901;

export const HEPTATHLON_SHOT: DemoCompetition = {
  title: 'Shot, heptathlon',
  input: {
    event: 'SHOT',
    categorySex: 'W',
    implementGrams: 4000,
    startsAt: '2026-05-16T13:00:00Z',
    plan: { rounds: 3, cuts: [], reorderAfter: [] },
  },
  lines: [
    line('Freya Lockmere', '11.82', 'X BOARD', '12.04'),
    line('Signe Oxbrow', '13.10', '12.88', '13.27'),
    line('Tilde Harrowgate', '10.95', '11.20', '11.16'),
    line('Mabyn Quillfeather', '12.31', '12.31', 'X RIM'),
    line('Astrid Fenwhistle', 'X TIME', '11.58', '11.43'),
  ],
  signedOff: true,
};

/** In the order of the shot: hurdles, high jump, 200 m; times with the wind of their heat. */
const FIRST_DAY = [
  ['14.12 +1.1', '1.72', '25.31 +2.3'],
  ['14.58 +1.1', '1.63', '26.02 +2.3'],
  ['14.36 -0.4', '1.75', '25.64 +0.8'],
  ['15.02 -0.4', '1.57', null],
  ['DNF', '1.66', '25.9 +0.8'],
] as const;

/** Enters the heptathlon and its first day. `official` is the one of the shot, who so keeps the heptathlon as well. */
export async function runHeptathlon(
  director: Client,
  official: Client,
  meetId: string,
  athletes: ReadonlyMap<string, string>,
  shotId: string,
): Promise<void> {
  const id = idOf(TITLE);
  const input = { id, meetId, title: TITLE, programme: 'HEPTATHLON', categorySex: 'W' };
  const made = await director.call<{ combinedEvent: { id: string } }>(
    'combinedEventCreate',
    input,
    'combinedEvent { id }',
  );
  const combinedEventId = made.combinedEvent.id;
  const entrants: string[] = [];
  for (const [at, { who }] of HEPTATHLON_SHOT.lines.entries()) {
    const entrant = {
      ...{ id: idOf(`${TITLE}: ${who}`), combinedEventId, athleteId: athletes.get(who) },
      bib: String(FIRST_BIB + at),
    };
    const { entrantId } = await director.call<{ entrantId: string }>(
      'combinedEntrantEnter',
      entrant,
      'entrantId',
    );
    entrants.push(entrantId);
  }
  const link = { combinedEventId, event: 'SHOT', competitionId: shotId };
  await director.call('combinedComponentLink', link, 'combinedEvent { version }');
  await enterFirstDay(official, combinedEventId, entrants);
}

async function enterFirstDay(
  official: Client,
  combinedEventId: string,
  entrants: readonly string[],
): Promise<void> {
  for (const [at, event] of ['HURDLES_100', 'HIGH_JUMP', 'RUN_200'].entries()) {
    for (const [index, entrantId] of entrants.entries()) {
      const written = FIRST_DAY[index]?.[at] ?? null;
      const entryId = idOf(`${TITLE}: ${index}, ${event}`);
      const head = { combinedEventId, entryId, entrantId };
      if (written === null) {
        const out = { ...head, status: 'DNF', fromEvent: event };
        await official.call('combinedStartSet', out, 'entry { standing }');
      } else if (event === 'HIGH_JUMP') {
        const mark = { ...head, event, outcome: 'VALID', mark: written };
        await official.call('combinedMarkRecord', mark, 'entry { standing }');
      } else {
        await official.call(
          'combinedTimeRecord',
          { ...head, event, ...timeOf(written) },
          'entry { standing }',
        );
      }
    }
  }
}

/** `14.12 +1.1` or `DNF` as the input of a time. */
function timeOf(written: string): object {
  const [time, wind] = written.split(' ');
  return wind === undefined ? { outcome: written } : { outcome: 'FINISHED', time, wind };
}
