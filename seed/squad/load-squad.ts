import { Client } from '../client.js';
import { idOf } from '../ids.js';
import { CLUBS } from '../people.js';
import { EVENINGS, throwAtEvening } from './meets.js';
import { nameOf, scopeOf, SQUAD } from './members.js';
import { practise, SESSIONS, type InSquad } from './practice.js';

/** UUIDs of the squad's athletes. */
export const SQUAD_IDS: readonly string[] = SQUAD.map((member) => idOf(nameOf(member)));

/** Puts the squad on record, so that somebody can coach it. What is there already stays. */
export async function enterSquad(baseUrl: string, adminToken: string): Promise<readonly InSquad[]> {
  const admin = new Client(baseUrl, adminToken);
  const { club } = await admin.call<{ club: { id: string } }>(
    'clubCreate',
    { id: idOf(CLUBS[0]), name: CLUBS[0] },
    'club { id }',
  );
  const squad: InSquad[] = [];
  for (const member of SQUAD) {
    const { given: givenName, family: familyName, born: birthDate, hand: handedness } = member;
    const input = {
      id: idOf(nameOf(member)),
      givenName,
      familyName,
      birthDate,
      handedness,
      sex: 'W',
    };
    const { athlete } = await admin.call<{ athlete: { id: string } }>(
      'athleteCreate',
      { ...input, clubId: club.id },
      'athlete { id }',
    );
    squad.push({ member, athleteId: athlete.id });
  }
  return squad;
}

export interface SquadDoor {
  readonly baseUrl: string;
  readonly adminToken: string;
  /** Of somebody who coaches the whole squad, and is a person. */
  readonly coachToken: string;
  /** Asked before every session; true: stop here, and the next start goes on. */
  readonly isOver?: () => boolean;
}

/**
 * Two seasons of the squad, through the API as a coach and a club would enter them. Ids are made of names, so that
 * what is there already stays, and a load that was cut short is run again.
 */
export async function loadSquad({ baseUrl, adminToken, coachToken, isOver }: SquadDoor): Promise<void> {
  const [admin, coach] = [new Client(baseUrl, adminToken), new Client(baseUrl, coachToken)];
  const squad = await enterSquad(baseUrl, adminToken);
  if (await isThere(coach)) return;
  for (const one of squad) await introduce(coach, one);
  const days = [
    ...SESSIONS.map((onDate) => ({ onDate, evening: null })),
    ...EVENINGS.map((evening) => ({ onDate: evening.onDate, evening })),
  ].sort((a, b) => (a.onDate < b.onDate ? -1 : 1));
  for (const [index, { onDate, evening }] of days.entries()) {
    if (isOver?.() === true) return;
    const at = index / (days.length - 1);
    if (evening) await throwAtEvening({ admin, coach, baseUrl }, evening, at, squad);
    else await practise(coach, onDate, at, squad);
  }
}

/** The last session is entered last. */
async function isThere(coach: Client): Promise<boolean> {
  const last = idOf(`practice ${SESSIONS.at(-1)!}`);
  const found = await coach.find(
    `query ($id: UUID!) { practiceSession(id: $id) { throws { round } } }`,
    'practiceSession',
    { id: last },
  );
  return found !== null;
}

async function introduce(coach: Client, { member, athleteId }: InSquad): Promise<void> {
  const name = nameOf(member);
  const event = 'DISCUS';
  const stage = { id: idOf(`${name}: stage`), athleteId, event, stage: member.stage, from: '2025-01-01' };
  await coach.call('stageSet', stage, 'id');
  const codes = scopeOf(member).slice(0, 3);
  const list = { id: idOf(`${name}: three for today`), athleteId, event, name: 'three for today', codes };
  await coach.call('checklistSet', list, 'id');
  const focus = {
    id: idOf(`${name}: focus`),
    athleteId,
    event,
    code: codes[0],
    how: 'DRILL',
    from: '2026-03-01',
  };
  await coach.call('focusStart', { ...focus, what: 'Half turns with a low, quick front foot' }, 'id');
  const consent = { purpose: 'NOTES', isGiven: true, by: member.born > '2008' ? 'GUARDIAN' : 'ATHLETE' };
  const form = { id: idOf(`${name}: consent`), athleteId, ...consent, name: `For ${name}`, on: '2025-01-10' };
  await coach.call('consentRecord', form, 'id');
}
