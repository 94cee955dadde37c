import type { AthleteRow, NotebookEntryRow, VideoBody } from '#persistence';
import type { Identity } from '../platform/identity/identity.js';
import { globalId } from '../platform/inputs/global-id.js';
import { ageOn, isChild, isGrowing, today } from './age.js';
import { newest, standing } from './notebook.service.js';
import type {
  AthleteStage,
  Checklist,
  Consent,
  Focus,
  NotebookAthlete,
  NotebookRelease,
  VideoReference,
} from './notebook.types.js';

export function notebookAthlete(row: AthleteRow, viewer: Identity, day = today()): NotebookAthlete {
  return {
    row,
    athleteId: globalId('Athlete', row.id),
    name: `${row.givenName} ${row.familyName}`,
    age: ageOn(row.birthDate, day),
    isChild: isChild(row.birthDate, day),
    isGrowing: isGrowing(row.birthDate, day),
    isCoach: viewer.coaches(row.id),
  };
}

type Entries = readonly NotebookEntryRow[];

export function checklistsOf(entries: Entries): Checklist[] {
  const latest = newest(entries, 'checklist', ({ event, name }) => `${event} ${name}`);
  return latest
    .filter(({ body }) => body.codes.length > 0)
    .map(({ id, body: { event, name, version, codes } }) => ({ id, event, name, version, codes }));
}

/** Of each event the one that holds on the day. */
export function stagesOf(entries: Entries, day = today()): AthleteStage[] {
  const begun = standing(entries, 'stage').filter(({ body }) => body.from <= day);
  const latest = new Map<string, AthleteStage>();
  for (const { body } of begun) {
    const known = latest.get(body.event);
    if (!known || known.from <= body.from) latest.set(body.event, body);
  }
  return [...latest.values()].map(({ event, stage, from }) => ({ event, stage, from }));
}

export function focusesOf(entries: Entries): Focus[] {
  return standing(entries, 'focus').map(({ id, body: { event, code, how, what, from, to } }) => ({
    ...{ id, event, code, how, what, from, to },
  }));
}

export function releasesOf(entries: Entries): NotebookRelease[] {
  return newest(entries, 'release', ({ what }) => what).map(({ body: { what, isOpen } }) => ({
    what,
    isOpen,
  }));
}

export function consentsOf(entries: Entries): Consent[] {
  return newest(entries, 'consent', ({ purpose }) => purpose).map(
    ({ body: { purpose, isGiven, by, name, on, form } }) => ({ purpose, isGiven, by, name, on, form }),
  );
}

export function videosOf(entries: Entries): VideoReference[] {
  return standing(entries, 'video').map(({ id, body: { throw: of, address, view, instants } }) => ({
    ...{ id, address, view, instants },
    throwId: typeof of === 'string' ? of : null,
    trial: typeof of === 'string' ? null : trialOf(of),
  }));
}

function trialOf({
  competition,
  competitor,
  round,
}: Exclude<VideoBody['throw'], string>): VideoReference['trial'] {
  return {
    competitionId: globalId('Competition', competition),
    competitorId: globalId('Competitor', competitor),
    round,
  };
}
