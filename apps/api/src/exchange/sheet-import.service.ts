import { Injectable } from '@nestjs/common';
import { violationOf, type CombinedEventRow } from '#persistence';
import type { Problem } from '#rules';
import { CombinedImportService } from '../combined/combined-import.service.js';
import { Database } from '../platform/database/database.js';
import { refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { SheetImportInput } from './sheet-import.inputs.js';
import { SheetProblem } from './sheet-import.types.js';
import { readingOf } from './sheet-reading.js';
import { storeMeetSheet } from './store-meet-sheet.js';
import { storeSheet, type Imported } from './store-sheet.js';

export type SheetImported = Imported | { readonly combined: CombinedEventRow; readonly replayed: boolean };

/** Makes competitions of paper cards: their start lists, and every trial as an entry of the journal. */
@Injectable()
export class SheetImportService {
  constructor(
    private readonly database: Database,
    private readonly combined: CombinedImportService,
  ) {}

  /** All of the sheet, or nothing and every problem of it. Throws UNAUTHENTICATED or FORBIDDEN for others than directors. */
  async import(input: SheetImportInput, viewer: Identity): Promise<SheetImported> {
    viewer.requireDirector(input.meetId);
    const reading = readingOf(input);
    if ('problems' in reading) return { userErrors: reading.problems.map(problemError) };
    const { content } = reading;
    const { organisationId } = viewer;
    const place = { organisationId, id: input.id ?? uuidV7(), meetId: input.meetId, title: input.title };
    try {
      return await this.database.write(async (tx): Promise<SheetImported> => {
        if (content.kind === 'meet') return storeMeetSheet(tx, content, place, viewer);
        if (content.kind !== 'combined') return storeSheet(tx, content, place, viewer);
        const stored = await this.combined.store(tx, content.card, place, viewer);
        return 'refusal' in stored ? { userErrors: [stored.refusal] } : stored;
      });
    } catch (error) {
      const violation = violationOf(error);
      if (violation?.kind === 'check' || violation?.kind === 'data') return { userErrors: [TOO_LONG] };
      throw error;
    }
  }
}

const TOO_LONG = refusal({
  code: 'TOO_LONG',
  path: ['sheet'],
  message: 'A bib, flight, age or what is written is longer than can be kept.',
  remedy: 'Shorten it: bibs and flights to 64 characters, names and clubs to 200.',
});

function problemError({ path: pointer, code, message, rule }: Problem): SheetProblem {
  const path = pointer === '' ? [] : pointer.split('/').slice(1).map(unescaped);
  const error = refusal({
    code,
    message,
    rule,
    path: ['sheet', ...path],
    remedy: 'Correct the sheet and import it again.',
  });
  return Object.assign(new SheetProblem(), error, { pointer });
}

/** RFC 6901 section 4. */
function unescaped(part: string): string {
  return part.replaceAll('~1', '/').replaceAll('~0', '~');
}
