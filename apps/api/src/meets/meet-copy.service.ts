import {
  callingGroups,
  combinedEvents,
  competitions,
  crews,
  entryTerms,
  meets,
  meetScorings,
  qualifications,
  timetables,
  type CompetitionRow,
  type MeetRow,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { MeetCopyInput } from './meet-copy.inputs.js';
import { daysBetween, movedDay, movedInstant } from './moved-days.js';

/** From which meet to which, and what became of what. */
interface Copy {
  readonly tx: Tx;
  readonly from: MeetRow;
  readonly to: MeetRow;
  readonly viewer: Identity;
  /** The copy of each competition. */
  readonly ids: ReadonlyMap<string, string>;
  readonly moved: (at: string | null) => string | null;
}

/** Last year's meet once more: what is held and how, and nobody who competes. */
@Injectable()
export class MeetCopyService {
  constructor(private readonly database: Database) {}

  /**
   * Competitions with their plans, heights and scoring, calling groups, qualifications, combined events, timetable,
   * terms of entry and, if wanted, crews: all in one transaction, as a draft that is not published. No entries, no
   * results, no draws, no roles.
   */
  async copy(input: MeetCopyInput, viewer: Identity): Promise<Created<MeetRow>> {
    viewer.requireAdmin();
    const { organisationId } = viewer;
    const from = await this.database.read((at) => meets.find(at, organisationId, input.meetId));
    if (!from) return { refusal: notFound('meet', ['meetId']) };
    const days = daysBetween(from.startsOn, input.startsOn);
    const { publishedAt: _, ...told } = from;
    const { name, startsOn } = input;
    const wanted = { ...told, id: input.id ?? uuidV7(), name, startsOn, endsOn: movedDay(from.endsOn, days) };
    return createOnce<MeetRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => meets.find(tx, organisationId, id),
      insert: async (tx) => {
        const to = { ...wanted, publishedAt: null };
        await meets.insert(tx, to);
        const moved = (at: string | null): string | null =>
          at === null ? null : new Date(movedInstant(Date.parse(at), days, from.timeZone)).toISOString();
        const rows = await competitions.ofMeet(tx, organisationId, from.id);
        const ids = new Map(rows.map(({ id }) => [id, uuidV7()]));
        const copy: Copy = { tx, from, to, viewer, ids, moved };
        for (const row of rows) await copyCompetition(copy, row);
        await copyGroups(copy, rows);
        await copyStages(copy);
        await copyTimetable(copy);
        await copyTerms(copy);
        if (input.isWithCrew) await copyCrews(copy);
        return null;
      },
    });
  }
}

async function copyCompetition({ tx, to, ids, moved }: Copy, row: CompetitionRow): Promise<void> {
  const {
    status: _,
    version: __,
    lastSequence: ___,
    callingGroupId: ____,
    callingPosition: _____,
    ...told
  } = row;
  const startsAt = moved(row.startsAt);
  await competitions.insert(tx, { ...told, id: ids.get(row.id)!, meetId: to.id, startsAt });
}

async function copyGroups(
  { tx, from, to, ids, moved }: Copy,
  rows: readonly CompetitionRow[],
): Promise<void> {
  const { organisationId } = from;
  for (const group of await callingGroups.ofMeets(tx, organisationId, [from.id])) {
    const { version: _, startOrder: __, ...told } = group;
    const id = uuidV7();
    await callingGroups.insert(tx, { ...told, id, meetId: to.id, startsAt: moved(group.startsAt) });
    const members = rows
      .filter(({ callingGroupId }) => callingGroupId === group.id)
      .toSorted((a, b) => a.callingPosition! - b.callingPosition!);
    const copies = members.map((row) => ids.get(row.id)!);
    await competitions.setCallingGroup(tx, organisationId, id, copies);
  }
}

/** Qualifications, and from which competitions combined events are counted. */
async function copyStages({ tx, from, to, ids, viewer }: Copy): Promise<void> {
  const { organisationId } = from;
  for (const row of await qualifications.ofMeets(tx, organisationId, [from.id])) {
    const finalId = row.finalId === null ? null : ids.get(row.finalId)!;
    const groupIds = row.groupIds.map((id) => ids.get(id)!);
    await qualifications.insert(tx, { ...row, id: uuidV7(), meetId: to.id, finalId, groupIds });
  }
  const events = await combinedEvents.ofMeets(tx, organisationId, [from.id]);
  const links = await combinedEvents.linksOf(
    tx,
    organisationId,
    events.map(({ id }) => id),
  );
  for (const { status: _, version: __, lastSequence: ___, ...event } of events) {
    const id = uuidV7();
    await combinedEvents.insert(tx, { ...event, id, meetId: to.id });
    for (const link of links.filter(({ combinedEventId }) => combinedEventId === event.id)) {
      await combinedEvents.link(tx, {
        ...{ organisationId, combinedEventId: id, event: link.event, linkedBy: viewer.holder ?? '' },
        competitionId: ids.get(link.competitionId) ?? null,
      });
    }
  }
}

async function copyTimetable({ tx, from, to, ids, moved, viewer }: Copy): Promise<void> {
  const before = await timetables.latest(tx, from.organisationId, from.id);
  if (!before) return;
  const { setAt: _, ...told } = before;
  await timetables.insert(tx, {
    ...{ ...told, meetId: to.id, revision: 1, reason: null, setBy: viewer.holder ?? '' },
    slots: before.slots.map((slot) => ({
      ...slot,
      competitions: slot.competitions.map((id) => ids.get(id)!),
      startsAt: Date.parse(moved(new Date(slot.startsAt).toISOString())!),
    })),
  });
}

/** How clubs are scored, and who may be entered until when. */
async function copyTerms({ tx, from, to, ids, moved, viewer }: Copy): Promise<void> {
  const setBy = viewer.holder ?? '';
  const scoring = await meetScorings.latest(tx, from.organisationId, from.id);
  if (scoring) {
    const { revision: _, setAt: __, ...told } = scoring;
    await meetScorings.add(tx, { ...told, meetId: to.id, setBy });
  }
  const terms = await entryTerms.latest(tx, from.organisationId, from.id);
  if (!terms) return;
  const { setAt: _, ...told } = terms;
  await entryTerms.insert(tx, {
    ...{ ...told, meetId: to.id, revision: 1, closesAt: moved(terms.closesAt), setBy },
    competitionLimits: terms.competitionLimits.map((limit) => ({
      ...limit,
      competitionId: ids.get(limit.competitionId)!,
    })),
  });
}

async function copyCrews({ tx, from, ids, viewer }: Copy): Promise<void> {
  for (const [before, competitionId] of ids) {
    const crew = await crews.latest(tx, from.organisationId, before);
    if (!crew) continue;
    const { setAt: _, ...told } = crew;
    await crews.insert(tx, { ...told, competitionId, revision: 1, setBy: viewer.holder ?? '' });
  }
}
