import {
  athletes,
  clubs,
  competitions,
  competitors,
  implementRegister,
  meets,
  type ImplementRow,
  type MeetRow,
  type NewImplement,
  type Page,
  type Reads,
  type Tx,
} from '#persistence';
import { isThrowEvent, type EventCode } from '#rules';
import { Injectable } from '@nestjs/common';
import type { PageArgs } from '../platform/connections/connection.js';
import { createOnce } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { isGiven } from '../platform/inputs/given.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { requireAuthority, requireCrew } from './crew.js';
import { implementViews, type Names } from './implement-view.js';
import type { ImplementRegisterInput } from './implements.inputs.js';
import type { Implement } from './implements.types.js';

export type Registered =
  | { readonly implement: Implement; readonly replayed: boolean }
  | { readonly refusal: UserError };

/** The register of the organisation's implements, as those who work at a meet see it. */
@Injectable()
export class RegisterService {
  constructor(private readonly database: Database) {}

  async register(input: ImplementRegisterInput, viewer: Identity): Promise<Registered> {
    const meet = await this.meetOf(input.meetId, viewer);
    if (!meet) return { refusal: notFound('meet', ['meetId']) };
    const authority = await this.database.read((at) => requireAuthority(at, viewer, meet));
    if (isGiven(input.clubId) && isGiven(input.competitorId)) return { refusal: OWNER_TWICE };
    const owner = await this.database.read((at) => athleteBehind(at, meet, input.competitorId ?? null));
    if (typeof owner !== 'string' && owner !== null) return { refusal: owner };
    const wanted = newImplement(input, viewer.organisationId, owner);
    const made = await createOnce<ImplementRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => implementRegister.find(tx, viewer.organisationId, id),
      insert: async (tx) => {
        if (await isUnknownClub(tx, wanted)) return notFound('club', ['clubId']);
        await implementRegister.insert(tx, { ...wanted, authority, registeredBy: viewer.holder ?? '' });
        return null;
      },
    });
    if ('refusal' in made) return made;
    const [implement] = await this.views(meet, [made.row], viewer);
    return { implement: implement!, replayed: made.replayed };
  }

  /** Null: there is no such implement, or no such meet. */
  async find(id: string, meetId: string, viewer: Identity): Promise<Implement | null> {
    const meet = await this.meetOf(meetId, viewer);
    if (!meet) return null;
    const row = await this.database.read(async (at) => {
      await requireCrew(at, viewer, meet);
      return implementRegister.find(at, viewer.organisationId, id);
    });
    const [implement = null] = row ? await this.views(meet, [row], viewer) : [];
    return implement;
  }

  /** Those that were registered or inspected at the meet, of one event or of all. */
  async ofMeet(meet: MeetRow, event: EventCode | null, viewer: Identity): Promise<Implement[]> {
    return this.database.snapshot(async (at) => {
      await requireCrew(at, viewer, meet);
      const rows = await implementRegister.ofMeet(at, meet.organisationId, meet.id);
      return implementViews(
        at,
        meet,
        rows.filter((row) => event === null || row.event === event),
        namesFor(viewer, meet),
      );
    });
  }

  /** The whole register of an event; of nothing that is thrown there is none. */
  async page(
    meetId: string,
    event: EventCode,
    { first, after }: PageArgs,
    viewer: Identity,
  ): Promise<Page<Implement>> {
    const meet = await this.meetOf(meetId, viewer);
    if (!meet || !isThrowEvent(event)) return { edges: [], hasNextPage: false };
    return this.database.snapshot(async (at) => {
      await requireCrew(at, viewer, meet);
      const page = await implementRegister.page(at, meet.organisationId, event, { first, after });
      const rows = page.edges.map(({ row }) => row);
      const views = await implementViews(at, meet, rows, namesFor(viewer, meet));
      return { ...page, edges: page.edges.map(({ cursor }, index) => ({ row: views[index]!, cursor })) };
    });
  }

  private meetOf(meetId: string, viewer: Identity): Promise<MeetRow | null> {
    return this.database.read((at) => meets.find(at, viewer.organisationId, meetId));
  }

  private views(meet: MeetRow, rows: readonly ImplementRow[], viewer: Identity): Promise<Implement[]> {
    return this.database.snapshot((at) => implementViews(at, meet, rows, namesFor(viewer, meet)));
  }
}

/** An official sees whole names in the lists of the own competition only. */
export function namesFor(viewer: Identity, { id }: MeetRow): Names {
  const ofMeet = viewer.capacityIn({ id, meetId: id, callingGroupId: null });
  return viewer.mayDirect(id) || ofMeet !== null ? 'whole' : 'shown';
}

type Wanted = Omit<NewImplement, 'authority' | 'registeredBy'>;

function newImplement(
  { id, meetId, event, grams, label, clubId }: ImplementRegisterInput,
  organisationId: string,
  athleteId: string | null,
): Wanted {
  return {
    organisationId,
    id: id ?? uuidV7(),
    meetId,
    event,
    grams,
    label,
    clubId: clubId ?? null,
    athleteId,
  };
}

/** The athlete on record behind a line of a start list of the meet; null when none is named. */
async function athleteBehind(
  at: Reads,
  meet: MeetRow,
  competitorId: string | null,
): Promise<string | null | UserError> {
  if (competitorId === null) return null;
  const competitor = await competitors.find(at, meet.organisationId, competitorId);
  const competition =
    competitor && (await competitions.find(at, meet.organisationId, competitor.competitionId));
  if (competition?.meetId !== meet.id) return notFound('competitor', ['competitorId']);
  const { athleteId } = competitor!;
  return athleteId !== null && (await athletes.find(at, meet.organisationId, athleteId))
    ? athleteId
    : OWNER_NOT_ON_RECORD;
}

async function isUnknownClub(tx: Tx, { organisationId, clubId }: Wanted): Promise<boolean> {
  return clubId !== null && (await clubs.find(tx, organisationId, clubId)) === null;
}

const OWNER_TWICE = refusal({
  code: 'OWNER_TWICE',
  path: ['competitorId'],
  message: 'An implement is a club’s or a competitor’s own, and not both.',
  remedy: 'Send one of them; or neither for the pool of the meet.',
});

const OWNER_NOT_ON_RECORD = refusal({
  code: 'OWNER_NOT_ON_RECORD',
  path: ['competitorId'],
  message: 'The start list has only a name for this competitor, and no athlete on record.',
  remedy: 'Register it for the club or for the pool of the meet; the bib may stand on the label.',
});
