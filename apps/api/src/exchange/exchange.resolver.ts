import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { resultDocumentOf, sheetOf } from '../platform/competition/documents.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { combinedEventObject } from '../platform/objects/combined-event.type.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { Json } from '../platform/scalars/json.js';
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
      'Makes a competition, or a combined event, of a paper card. Codes: those of the sheet format, NOT_YET, NOT_FOUND, TOO_LONG, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async sheetImport(
    @Args('input') input: SheetImportInput,
    @Viewer() viewer: Identity,
  ): Promise<SheetImportPayload> {
    const imported = await this.imports.import(input, viewer);
    if ('userErrors' in imported) {
      return {
        competition: null,
        combinedEvent: null,
        isReplay: false,
        userErrors: [...imported.userErrors],
      };
    }
    const isCombined = 'combined' in imported;
    return {
      competition: isCombined ? null : competitionObject(imported.row),
      combinedEvent: isCombined ? combinedEventObject(imported.combined) : null,
      isReplay: imported.replayed,
      userErrors: [],
    };
  }

  @ResolveField(() => Json, {
    description: 'The competition as a sheet (`sectorline-sheet/1`), as it stands.',
  })
  async sheet(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<unknown> {
    const isCrew = viewer.mayDirect(row.meetId) || viewer.capacityIn(row) !== null;
    const nameOf = isCrew ? crewName : publicName;
    return sheetOf(await this.loaded(row), { nameOf, isArchive: false });
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

type Line = LoadedCompetition['roster'][number];

function crewName(line: Line): string | null {
  return line.name;
}

/** Where only the bib is shown there is no name to give. */
function publicName({ displayName, competitor }: Line): string | null {
  return displayName === `#${competitor.bib}` ? null : displayName;
}
