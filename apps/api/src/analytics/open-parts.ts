import { notebook, type ReleaseBody } from '#persistence';
import { Injectable } from '@nestjs/common';
import { Database } from '../platform/database/database.js';
import { isReleased } from '../technique/notebook.service.js';
import type { NotebookAthlete } from '../technique/notebook.types.js';

/** Coaches read everything; athletes and guardians what was released to them. */
@Injectable()
export class OpenParts {
  constructor(private readonly database: Database) {}

  async mayRead({ isCoach, row }: NotebookAthlete, what: ReleaseBody['what']): Promise<boolean> {
    if (isCoach) return true;
    const { organisationId, id } = row;
    return isReleased(await this.database.read((at) => notebook.ofAthletes(at, organisationId, [id])), what);
  }
}
