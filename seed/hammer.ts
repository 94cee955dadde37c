import type { Client } from './client.js';
import { idOf } from './ids.js';
import { line, type DemoCompetition } from './competition.js';

/*
 * A qualification in two groups: two reach the standard, and of the places to fill up the last is shared by two who
 * have the same marks. The final is drawn and has not begun.
 */

const HAMMER = { event: 'HAMMER', categorySex: 'M', implementGrams: 7260 } as const;
const QUALIFICATION = {
  ...HAMMER,
  stage: 'QUALIFICATION',
  qualifying: { standard: '52.00', fill: 4 },
} as const;

export const HAMMER_A: DemoCompetition = {
  title: 'Hammer, men, qualification, group A',
  input: { ...QUALIFICATION, startsAt: '2026-05-16T09:00:00Z' },
  lines: [
    line('Corwin Hallowdene', '48.20', 'X SECTOR', '49.15'),
    line('Piers Oxgate', '52.40'),
    line('Dunstan Merrowby', 'X EXIT', '44.90', '45.62'),
    line('Lorcan Thrushfield', '47.30', '-', '46.88'),
  ],
  signedOff: true,
};

export const HAMMER_B: DemoCompetition = {
  title: 'Hammer, men, qualification, group B',
  input: { ...QUALIFICATION, startsAt: '2026-05-16T09:40:00Z' },
  lines: [
    line('Jory Pennycross', '45.10', '46.02', 'X SECTOR'),
    line('Matthias Greywold', '51.10', 'X RIM', '52.05'),
    line('Sorley Winterdale', '46.88', '47.30', 'X TIME'),
    line('Alban Quillhurst', 'X RIM', 'X SECTOR', 'X EXIT'),
  ],
  signedOff: true,
};

export const HAMMER_FINAL: DemoCompetition = {
  title: 'Hammer, men, final',
  input: { ...HAMMER, startsAt: '2026-05-16T16:30:00Z' },
  lines: [],
};

const TITLE = 'Hammer, men';

/** Makes one qualification of the groups, and the start list of the final by lot of those who go on. */
export async function drawHammerFinal(
  director: Client,
  meetId: string,
  ids: ReadonlyMap<string, string>,
): Promise<void> {
  await director.call(
    'qualificationCreate',
    {
      id: idOf(`${TITLE}: qualification`),
      meetId,
      title: TITLE,
      competitionIds: [HAMMER_A, HAMMER_B].map(({ title }) => ids.get(title)),
      finalId: ids.get(HAMMER_FINAL.title),
    },
    'qualification { id }',
  );
  await director.call(
    'qualificationFinalDraw',
    {
      id: idOf(`${TITLE}: final drawn`),
      qualificationId: idOf(`${TITLE}: qualification`),
      seed: 'Heron Field Throws and Jumps 2026, hammer men final, 08 17 23 31 40',
    },
    'draw { id }',
  );
}
