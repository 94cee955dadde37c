import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { uuidOf } from '../platform/inputs/global-id.js';
import { Club } from '../platform/objects/club.type.js';
import { Meet } from '../platform/objects/meet.type.js';
import {
  StartingMarkAddInput,
  StartingMarksImportInput,
  StartingMarkWithdrawInput,
} from './starting-marks.inputs.js';
import { StartingMarksService, type Added } from './starting-marks.service.js';
import {
  StartingMark,
  StartingMarkAddPayload,
  startingMarkObject,
  StartingMarksImportPayload,
  StartingMarkWithdrawPayload,
} from './starting-marks.types.js';

const OF_LISTS = 'Those with which the records begin. Only for directors and administrators.';

/** The marks with which lists begin: entered one by one, or a table at a time. */
@Resolver()
export class StartingMarksResolver {
  constructor(private readonly marks: StartingMarksService) {}

  @Mutation(() => StartingMarkAddPayload, {
    description:
      'Adds a mark with which lists begin, or one that replaces another; nothing is overwritten. Codes: IN_NO_LIST, IMPLEMENT_MISSING, IMPLEMENT_NOT_EXPECTED, WIND_MISSING, WIND_NOT_EXPECTED, NOT_YET, NOT_FOUND, REASON_MISSING, REASON_NOT_EXPECTED, REPLACED_ALREADY, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async startingMarkAdd(
    @Args('input') input: StartingMarkAddInput,
    @Viewer() viewer: Identity,
  ): Promise<StartingMarkAddPayload> {
    return payloadOf(await this.marks.add(input, viewer));
  }

  @Mutation(() => StartingMarkWithdrawPayload, {
    description:
      'Takes a starting mark back; it is kept and counts no more. Codes: NOT_FOUND, REPLACED_ALREADY, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async startingMarkWithdraw(
    @Args('input') input: StartingMarkWithdrawInput,
    @Viewer() viewer: Identity,
  ): Promise<StartingMarkWithdrawPayload> {
    return payloadOf(await this.marks.withdraw(input, viewer));
  }

  @Mutation(() => StartingMarksImportPayload, {
    description:
      'Adds the marks of a table, all or none. Codes: CSV_MISSING; of the table NUL, MIXED_ENCODINGS, WRONG_ENCODING, QUOTES, EMPTY, NO_LINES, TOO_LARGE, TOO_MANY_LINES, UNKNOWN_COLUMN, COLUMN_TWICE, MISSING_COLUMN, CELL_COUNT, CELL, CELL_EMPTY, MORE_PROBLEMS; of its marks CLUB_UNKNOWN, ATHLETE_UNKNOWN, ATHLETE_AMBIGUOUS, NAME_INCOMPLETE, KNOWN_ALREADY and those of startingMarkAdd.',
  })
  @Needs('admin', 'director')
  async startingMarksImport(
    @Args('input') input: StartingMarksImportInput,
    @Viewer() viewer: Identity,
  ): Promise<StartingMarksImportPayload> {
    const imported = await this.marks.import(input, viewer);
    if ('refusals' in imported) {
      return { startingMarks: [], isReplay: false, userErrors: imported.refusals };
    }
    const { rows, replayed } = imported;
    return { startingMarks: rows.map(startingMarkObject), isReplay: replayed, userErrors: [] };
  }
}

function payloadOf(added: Added): StartingMarkAddPayload {
  if ('row' in added) {
    return { startingMark: startingMarkObject(added.row), isReplay: added.replayed, userErrors: [] };
  }
  const userErrors = 'refusals' in added ? added.refusals : [added.refusal];
  return { startingMark: null, isReplay: false, userErrors };
}

/** What the records of a club begin with. */
@Resolver(() => Club)
export class ClubStartingMarksResolver {
  constructor(private readonly marks: StartingMarksService) {}

  @ResolveField(() => [StartingMark], { nullable: true, description: OF_LISTS })
  async startingMarks(@Parent() { id }: Club, @Viewer() viewer: Identity): Promise<StartingMark[]> {
    return (await this.marks.of({ clubId: uuidOf('Club', id)! }, viewer)).map(startingMarkObject);
  }
}

/** What the records of a meet begin with. */
@Resolver(() => Meet)
export class MeetStartingMarksResolver {
  constructor(private readonly marks: StartingMarksService) {}

  @ResolveField(() => [StartingMark], { nullable: true, description: OF_LISTS })
  async startingMarks(@Parent() { row }: Meet, @Viewer() viewer: Identity): Promise<StartingMark[]> {
    return (await this.marks.of({ meetId: row.id }, viewer)).map(startingMarkObject);
  }
}
