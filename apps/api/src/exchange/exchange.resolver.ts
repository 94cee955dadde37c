import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { resultDocumentOf, sheetOf } from '../platform/competition/documents.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { combinedEventObject } from '../platform/objects/combined-event.type.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { Json } from '../platform/scalars/json.js';
import { namesFor } from '../platform/competition/names-in-sheets.js';
import { SheetImportInput } from './sheet-import.inputs.js';
import { SheetImportService } from './sheet-import.service.js';
import { SheetImportPayload } from './sheet-import.types.js';

/** Competitions as portable documents, in and out. */
@Resolver(() => Competition)
export class ExchangeResolver {
  constructor(
    private readonly imports: SheetImportService,
    private readonly memory: CompetitionMemory,
  ) {}

  @Mutation(() => SheetImportPayload, {
    description:
      'Makes a competition or a combined event of a paper card, or the competitions of a meet and its scoring. Codes: those of the sheet format, NOT_FOUND, TOO_LONG, ID_REUSED, MEET_NOT_EMPTY.',
  })
  @Needs('admin', 'director')
  async sheetImport(
    @Args('input') input: SheetImportInput,
    @Viewer() viewer: Identity,
  ): Promise<SheetImportPayload> {
    const imported = await this.imports.import(input, viewer);
    const nothing = { competition: null, combinedEvent: null, competitions: [] };
    if ('userErrors' in imported) {
      return { ...nothing, isReplay: false, userErrors: [...imported.userErrors] };
    }
    const outcome = { ...nothing, isReplay: imported.replayed, userErrors: [] };
    if ('combined' in imported) return { ...outcome, combinedEvent: combinedEventObject(imported.combined) };
    const competitions = imported.rows.map(competitionObject);
    return { ...outcome, competitions, competition: imported.isMeet ? null : (competitions[0] ?? null) };
  }

  @ResolveField(() => Json, {
    description: 'The competition as a sheet (`sectorline-sheet/1`), as it stands.',
  })
  async sheet(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<unknown> {
    const isCrew = viewer.mayDirect(row.meetId) || viewer.capacityIn(row) !== null;
    return sheetOf(await this.loaded(row), { nameOf: namesFor(isCrew), isArchive: false });
  }

  @ResolveField(() => Json, { description: 'What it counts to (`sectorline-result/1`), as it stands.' })
  async result(@Parent() { row }: Competition): Promise<unknown> {
    return resultDocumentOf(await this.loaded(row));
  }

  private async loaded(row: Competition['row']): Promise<LoadedCompetition> {
    const loaded = await this.memory.current(row.organisationId, row.id);
    if (!loaded) throw new Error(`Competition ${row.id} went away while it was read.`);
    return loaded;
  }
}
