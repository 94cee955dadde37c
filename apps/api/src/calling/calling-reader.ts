import { callingGroups, type CompetitionRow, type MeetRow } from '#persistence';
import { Injectable } from '@nestjs/common';
import { isKeptBack, maySee } from '../platform/competition/visible.js';
import { Database } from '../platform/database/database.js';
import type { Identity } from '../platform/identity/identity.js';
import { GroupLoader, type LoadedGroup } from './loaded-group.js';

/** Calling groups as they are read: each with its competitions at one moment. */
@Injectable()
export class CallingReader {
  constructor(
    private readonly database: Database,
    private readonly loader: GroupLoader,
  ) {}

  /** Null: not there, or not published and not the viewer's. */
  async find(id: string, viewer: Identity): Promise<LoadedGroup | null> {
    const [group] = await this.load(viewer.organisationId, () => Promise.resolve([id]));
    return group && maySeeGroup(group, viewer) ? group : null;
  }

  /** For each of these meets its groups, by time. Who may see a meet may see its groups. */
  async ofMeets(of: readonly MeetRow[]): Promise<LoadedGroup[][]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const order: string[] = [];
    const groups = await this.load(organisationId, async (at) => {
      const rows = await callingGroups.ofMeets(
        at,
        organisationId,
        of.map(({ id }) => id),
      );
      order.push(...rows.map(({ id }) => id));
      return order;
    });
    const inOrder = groups.sort((a, b) => order.indexOf(a.row.id) - order.indexOf(b.row.id));
    return of.map(({ id }) => inOrder.filter(({ row }) => row.meetId === id));
  }

  /** For each of these competitions the group that it is called in. */
  async ofCompetitions(of: readonly CompetitionRow[]): Promise<(LoadedGroup | null)[]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const ids = [...new Set(of.flatMap(({ callingGroupId }) => callingGroupId ?? []))];
    const groups = await this.load(organisationId, () => Promise.resolve(ids));
    return of.map(({ callingGroupId }) => groups.find(({ row }) => row.id === callingGroupId) ?? null);
  }

  private async load(
    organisationId: string,
    which: (at: Parameters<GroupLoader['load']>[0]) => Promise<readonly string[]>,
  ): Promise<LoadedGroup[]> {
    const groups = await this.database.snapshot(async (at) =>
      this.loader.load(at, organisationId, await which(at)),
    );
    this.loader.remember(groups);
    return groups;
  }
}

/** The order in which a group is called says how its competitions stand. */
export function isGroupKeptBack(
  { competitions }: Pick<LoadedGroup, 'competitions'>,
  viewer: Identity,
): boolean {
  return competitions.some(({ row }) => isKeptBack(row, viewer));
}

function maySeeGroup({ row, meet, competitions }: LoadedGroup, viewer: Identity): boolean {
  if (isGroupKeptBack({ competitions }, viewer)) return false;
  return (
    maySee(meet, null, viewer) ||
    viewer.mayCall(row.id) ||
    competitions.some((one) => viewer.mayOfficiate(one.row))
  );
}
