import { randomUUID } from 'node:crypto';
import { call, signedInPerson } from '../../support/accounts.js';
import type { ApiClient } from '../../support/client.js';
import { throwOf } from '../../support/notebook.js';

/** A coach with two discus throwers: one of seventeen with a history, one of twelve of whom nothing is known yet. */
export interface CoachedSquad {
  readonly coach: string;
  readonly grown: string;
  readonly child: string;
  /** Sends a mutation as the coach; throws what is refused. */
  readonly write: (name: string, input: object, selection?: string) => Promise<any>;
}

/** What the coach looks for. */
export const LOOKED_FOR = ['DT-04', 'DT-14', 'DT-25'] as const;

/** Marks and faults of practice: throws with DT-14 are shorter in every series; DT-25 was hardly ever there. */
const SERIES: readonly (readonly (readonly [mark: string, ...codes: string[]])[])[] = [
  [['31.20'], ['30.10', 'DT-14'], ['31.40'], ['30.40', 'DT-14'], ['31.05', 'DT-04'], ['30.20', 'DT-14']],
  [['31.80'], ['30.60', 'DT-14'], ['32.00', 'DT-04'], ['30.90', 'DT-14'], ['31.95'], ['30.75', 'DT-14']],
  [['32.40', 'DT-04'], ['31.10', 'DT-14'], ['32.10'], ['31.20', 'DT-14'], ['32.55'], ['31.40', 'DT-14']],
  [
    ['32.90'],
    ['31.70', 'DT-14'],
    ['33.20'],
    ['31.90', 'DT-14'],
    ['33.05', 'DT-04', 'DT-25'],
    ['31.80', 'DT-14'],
  ],
];

const DAY_MS = 86_400_000;

/** `YYYY-MM-DD`, so many days ago: the pages show what is recent. */
export function daysAgo(days: number): string {
  return new Date(Date.now() - days * DAY_MS).toISOString().slice(0, 10);
}

export async function coachedSquad(api: ApiClient): Promise<CoachedSquad> {
  const [grown, child] = await Promise.all([
    athleteOf(api, 'Ada', 'Quillon', 17),
    athleteOf(api, 'Wren', 'Ashdown', 12),
  ]);
  const roles = [grown, child].map((on) => ({ role: 'COACH', on }));
  const { accessToken: coach } = await signedInPerson(api, roles);
  const write: CoachedSquad['write'] = async (name, input, selection = '') => {
    const done = await call(api, name, input, `${selection} userErrors { code path message }`, coach);
    if (done.userErrors.length > 0) throw new Error(`${name}: ${JSON.stringify(done.userErrors)}`);
    return done;
  };
  const list = { event: 'DISCUS', name: 'Today', codes: LOOKED_FOR };
  for (const athleteId of [grown, child]) await write('checklistSet', { athleteId, ...list });
  await write('stageSet', { athleteId: grown, event: 'DISCUS', stage: 'ADVANCED', from: daysAgo(300) });
  for (const [at, throws] of SERIES.entries()) await practise(write, grown, daysAgo(70 - 14 * at), throws);
  const focus = { event: 'DISCUS', code: 'DT-14', how: 'DRILL', what: 'Step turns along the line' };
  await write('focusStart', { athleteId: grown, ...focus, from: daysAgo(35) });
  return { coach, grown, child, write };
}

async function athleteOf(
  api: ApiClient,
  givenName: string,
  familyName: string,
  age: number,
): Promise<string> {
  const birthDate = daysAgo(age * 365.25 + 100);
  const input = { givenName, familyName, sex: 'W', birthDate };
  return (await call(api, 'athleteCreate', input, 'athlete { id }', api.adminToken)).athlete.id;
}

async function practise(
  write: CoachedSquad['write'],
  athleteId: string,
  onDate: string,
  throws: (typeof SERIES)[number],
): Promise<void> {
  const { session } = await write('practiceSessionCreate', { onDate }, 'session { id }');
  const rows = throws.map(([mark, ...codes], at) =>
    throwOf(athleteId, {
      ...{ round: at + 1, mark, effortPercent: 95 },
      observation: {
        ...{ id: randomUUID(), observedAt: `${onDate}T10:0${at}:00Z`, method: 'LIVE', markKnown: false },
        scope: LOOKED_FOR,
        marks: codes.map((code) => ({ code, severity: 2 })),
      },
    }),
  );
  await write('throwsLog', { sessionId: session.id, throws: rows });
}
