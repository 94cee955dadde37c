import {
  buildSchema,
  GraphQLObjectType,
  GraphQLUnionType,
  type GraphQLFieldResolver,
  type GraphQLSchema,
} from 'graphql';
import type { Why } from '#scoreboard';
import type { CompetitionMemory } from '../../platform/competition/competition-memory.js';
import { isWithheld } from '../../platform/competition/visible.js';
import { badUserInput } from '../../platform/errors/api-error.js';
import { uuidOf, type ObjectKind } from '../../platform/inputs/global-id.js';
import { meetHead } from '../heads.js';
import type { SnapshotsService } from '../snapshots.service.js';
import { PUBLIC_SDL } from './public-sdl.js';

/** A snapshot, as far as answers depend on it. */
export interface Dependence {
  /** The same object for as long as nothing has changed. */
  readonly snapshot: object | null;
  readonly read: () => Promise<object | null>;
  /** The same without waiting, where that is known: of a competition that is at hand. */
  readonly isCurrent?: () => boolean;
}

/** What an answer was made of. There is no viewer in it: everybody is told the same. */
export interface PublicContext {
  readonly snapshots: SnapshotsService;
  readonly memory: CompetitionMemory;
  readonly organisationId: string;
  readonly readings: Dependence[];
}

type Root = GraphQLFieldResolver<unknown, PublicContext, Record<string, unknown>>;

const MOST_MEETS = 50;

/** Every field below these is a field of the snapshot by the same name. */
const ROOTS: Readonly<Record<string, Root>> = {
  competition: async (_root, { id: given }, { snapshots, memory, organisationId, readings }) => {
    const id = idOf('Competition', 'id', given);
    const read = () => snapshots.competition(id);
    const snapshot = await read();
    // A newer version may have come in meanwhile.
    const loaded = memory.atHand(organisationId, id);
    const isKnown = loaded !== undefined && snapshot?.version === loaded.row.version;
    const isCurrent = () => memory.atHand(organisationId, id) === loaded && !isWithheld(loaded!.row);
    readings.push({ snapshot, read, ...(isKnown && { isCurrent }) });
    return snapshot;
  },
  meet: one('Meet', 'id', (snapshots, id) => snapshots.meet(id)),
  clubTable: one('Meet', 'meetId', (snapshots, id) => snapshots.clubTable(id)),
  club: one('Club', 'id', (snapshots, id) => snapshots.club(id)),
  athlete: one('Athlete', 'id', (snapshots, id) => snapshots.athlete(id)),
  meets: async (_root, { first }, { snapshots, readings }) => {
    if (typeof first !== 'number' || first < 1 || first > MOST_MEETS)
      throw badUserInput(`"first" must be from 1 to ${MOST_MEETS}.`);
    // Not kept: nothing says when a meet is published.
    readings.push({ snapshot: null, read: () => Promise.resolve({}) });
    return (await snapshots.latestMeets(first)).map(meetHead);
  },
};

function one(
  kind: ObjectKind,
  argument: string,
  read: (snapshots: SnapshotsService, id: string) => Promise<object | null>,
): Root {
  return async (_root, { [argument]: given }, { snapshots, readings }) => {
    const id = idOf(kind, argument, given);
    const snapshot = await read(snapshots, id);
    readings.push({ snapshot, read: () => read(snapshots, id) });
    return snapshot;
  };
}

function idOf(kind: ObjectKind, argument: string, given: unknown): string {
  const id = uuidOf(kind, given);
  if (id !== null) return id;
  throw badUserInput(`"${argument}" is not the id of a ${kind}: send it as this API gave it.`);
}

export function publicSchema(): GraphQLSchema {
  const schema = buildSchema(PUBLIC_SDL);
  const query = schema.getQueryType();
  for (const [name, field] of Object.entries(query?.getFields() ?? {})) field.resolve = ROOTS[name]!;
  const why = schema.getType('Why');
  if (!(why instanceof GraphQLUnionType) || !(query instanceof GraphQLObjectType))
    throw new Error('The public schema lacks what it is built on.');
  why.resolveType = ({ by }: Why) => (by === 'mark' ? 'MarkWhy' : 'HeightWhy');
  return schema;
}
