import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Viewer } from '../platform/identity/rights.js';
import { Meet } from '../platform/objects/meet.type.js';
import { Json } from '../platform/scalars/json.js';
import { MeetSheetService } from './meet-sheet.service.js';

const ONLY =
  'Null for others than its directors and referees, and where a sheet cannot say how the meet is scored: not at all, by the teams in the match, by divisions, with tied clubs left tied, or with combined events or entered results.';

/** Whole meets as portable documents. All their competitions are read for it, which only those who run a meet may ask. */
@Resolver(() => Meet)
export class MeetExchangeResolver {
  constructor(private readonly sheets: MeetSheetService) {}

  @ResolveField(() => Json, {
    nullable: true,
    description: `The meet as a sheet (\`sectorline-meet/1\`), as it stands. ${ONLY}`,
  })
  async sheet(@Parent() { row }: Meet, @Viewer() viewer: Identity): Promise<unknown> {
    return this.sheets.sheetOf(row, viewer);
  }

  @ResolveField(() => Json, {
    nullable: true,
    description: `What it counts to (\`sectorline-meet-result/1\`), as it stands; a qualification counts like a final. ${ONLY}`,
  })
  async result(@Parent() { row }: Meet, @Viewer() viewer: Identity): Promise<unknown> {
    return this.sheets.resultOf(row, viewer);
  }
}
