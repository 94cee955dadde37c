import { uuidV7 } from '../../offline/uuid-v7.js';
import type { PracticeDay, Thrown } from '../keeping/database.js';
import { dayOf, type Notebook } from '../notebook.js';
import type { AthleteNotes } from '../shapes.js';

/** The day of practice of this device; a new one where none was begun today. */
export function practiceToday({ store, nowMs }: Notebook): PracticeDay {
  const day = dayOf(nowMs.value);
  const { practice } = store.kept.value;
  return practice?.day === day ? practice : { day, sessionId: idOfDay(day), rounds: {} };
}

/** One id a day until it is kept, so that asking twice makes one. */
const ids = new Map<string, string>();

function idOfDay(day: string): string {
  const id = ids.get(day) ?? uuidV7();
  ids.set(day, id);
  return id;
}

/** Where an athlete throws something for the first time. */
const FIRST_VARIANT: Readonly<Record<string, string>> = {
  DISCUS: 'FULL_TURN',
  SHOT: 'GLIDE',
  HAMMER: 'TURNS',
  JAVELIN: 'FULL_APPROACH',
};

export function firstVariant(event: string): string {
  return FIRST_VARIANT[event] ?? 'FULL_APPROACH';
}

/** What the athlete throws: as it was chosen last on this device, else by the notes. */
export function thrownBy(
  { store }: Notebook,
  { athleteId, checklists, focuses, stages }: AthleteNotes,
): Thrown {
  const known = store.kept.value.thrown[athleteId];
  if (known) return known;
  const event = [...checklists, ...focuses, ...stages].at(0)?.event ?? 'DISCUS';
  return { event, variant: firstVariant(event), implementGrams: null, effortPercent: null };
}

/** The newest of the event. */
export function checklistOf({ checklists }: AthleteNotes, event: string) {
  return checklists.filter((one) => one.event === event && one.codes.length > 0).at(-1) ?? null;
}
