import type { Client } from '../client.js';
import { idOf } from '../ids.js';
import { NamedChance } from './chance.js';
import { nameOf, scopeOf, type Member } from './members.js';
import { dayOf, metres, throwOnce } from './model.js';

/** Sessions of two seasons, a fortnight apart. */
export const SESSIONS: readonly string[] = ['2025', '2026'].flatMap((year) =>
  [
    '03-04',
    '03-18',
    '04-01',
    '04-15',
    '04-29',
    '05-13',
    '05-27',
    '06-10',
    '06-24',
    '07-08',
    '07-22',
    '08-05',
  ].map((day) => `${year}-${day}`),
);

const THROWS = 10;
/** What a device may send at once. */
const AT_ONCE = 40;

export interface InSquad {
  readonly member: Member;
  /** As the API shows it. */
  readonly athleteId: string;
}

/** One session: every athlete’s throws, each looked at before the mark is called. */
export async function practise(
  coach: Client,
  onDate: string,
  at: number,
  squad: readonly InSquad[],
): Promise<void> {
  const id = idOf(`practice ${onDate}`);
  const session = { id, onDate, place: 'Heron Field' };
  await coach.call('practiceSessionCreate', session, 'session { id }');
  const throws = squad.flatMap(({ member, athleteId }) => seriesOf(member, athleteId, onDate, at));
  for (let from = 0; from < throws.length; from += AT_ONCE) {
    const batch = throws.slice(from, from + AT_ONCE);
    await coach.call(
      'throwsLog',
      { sessionId: id, device: 'Coach’s phone', throws: batch },
      'results { status }',
    );
  }
}

function seriesOf(member: Member, athleteId: string, onDate: string, at: number): object[] {
  const name = `${nameOf(member)} at practice ${onDate}`;
  const chance = new NamedChance(name);
  const day = dayOf(member, chance);
  return Array.from({ length: THROWS }, (_, index) => {
    const { present, isFoul, markCm } = throwOnce(member, at, day, chance);
    const id = idOf(`${name}, throw ${index + 1}`);
    return {
      ...{ id, athleteId, event: 'DISCUS', variant: 'FULL_TURN', implementGrams: member.grams },
      ...{ round: index + 1, effortPercent: 95, outcome: isFoul ? 'FOUL' : 'VALID' },
      ...(isFoul ? { foul: 'RIM' } : { mark: metres(markCm) }),
      observation: noteOf(`${name}, look ${index + 1}`, `${onDate}T16:00:00Z`, member, present),
    };
  });
}

export function noteOf(name: string, observedAt: string, member: Member, present: readonly string[]): object {
  return {
    ...{ id: idOf(name), observedAt, method: 'LIVE', markKnown: false, view: 'SIDE' },
    scope: scopeOf(member),
    marks: present.map((code) => ({ code, severity: 2 })),
  };
}
