import { competitions, crews, type CompetitionRow, type CrewRow } from '#persistence';
import { Injectable } from '@nestjs/common';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import type { CrewSetInput } from './timetable.inputs.js';

/** Who works at a competition. Their names stand on its card and are shown to nobody else. */
@Injectable()
export class CrewService {
  constructor(private readonly database: Database) {}

  async of({ organisationId, id }: CompetitionRow): Promise<CrewRow['members']> {
    return (await this.database.read((at) => crews.latest(at, organisationId, id)))?.members ?? [];
  }

  async set(
    { competitionId, members }: CrewSetInput,
    viewer: Identity,
  ): Promise<{ readonly members: CrewRow['members'] } | { readonly refusal: Refusal }> {
    const { organisationId, holder } = viewer;
    return this.database.write(async (tx) => {
      const row = await competitions.lock(tx, organisationId, competitionId);
      if (!row) return { refusal: notFound('competition', ['competitionId']) };
      viewer.requireDirector(row.meetId);
      const before = await crews.latest(tx, organisationId, competitionId);
      await crews.insert(tx, {
        organisationId,
        competitionId,
        revision: (before?.revision ?? 0) + 1,
        members: members.map(({ post, name }) => ({ post, name })),
        setBy: holder ?? '',
      });
      return { members };
    });
  }
}
