import type { Client } from './client.js';
import { HAMMER_FINAL } from './hammer.js';
import { DISCUS, HIGH_JUMP, JAVELIN, LONG_JUMP } from './meet.js';

const FACILITIES = [
  { key: 'cage', name: 'Cage' },
  { key: 'javelin', name: 'Javelin runway, north' },
  { key: 'pit', name: 'Long jump pit' },
  { key: 'high-jump', name: 'High jump mat' },
];

const EVENTS = [
  { competition: LONG_JUMP, facility: 'pit', minutes: 75 },
  { competition: DISCUS, facility: 'cage', minutes: 90 },
  { competition: HIGH_JUMP, facility: 'high-jump', minutes: 75 },
  { competition: JAVELIN, facility: 'javelin', minutes: 50 },
  { competition: HAMMER_FINAL, facility: 'cage', minutes: 60 },
] as const;

/** When and where the afternoon takes place: once, for a timetable that is there is not planned anew. */
export async function planDay(
  director: Client,
  meetId: string,
  ids: ReadonlyMap<string, string>,
  calledWith: ReadonlyMap<string, readonly string[]>,
): Promise<void> {
  const query = `query ($id: ID!) { meet(id: $id) { timetable { revision } } }`;
  const { timetable } = await director.send<{ timetable: object | null }>(query, 'meet', { id: meetId });
  if (timetable) return;
  const slots = EVENTS.map(({ competition: { title, input }, facility, minutes }) => ({
    competitionIds: [ids.get(title), ...(calledWith.get(title) ?? [])],
    ...{ facility, startsAt: input['startsAt'], minutes, reportMinutes: 40 },
  }));
  await director.call(
    'timetableSet',
    { meetId, expectedRevision: 0, facilities: FACILITIES, slots },
    'timetable { revision }',
  );
}
