import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { SharedBody } from '#rules';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import type { EntryInput } from './entry.inputs.js';
import type { ListDetails } from './entry-request.js';
import {
  BibsSetInput,
  CompetitorAddInput,
  CompetitorFlightSetInput,
  CompetitorMatchInput,
} from './list.inputs.js';
import { payloadOf } from './payload.js';
import { RecordingService } from './recording.service.js';
import {
  BibsSetPayload,
  CompetitorAddPayload,
  CompetitorFlightSetPayload,
  CompetitorMatchPayload,
  type EntryPayload,
} from './recording.types.js';
import { requestOf } from './request-of.js';

/** Changes of a start list that is in use: entries of the journal, so that they come in their order with the trials. */
@Resolver()
export class ListResolver {
  constructor(private readonly recording: RecordingService) {}

  @Mutation(() => CompetitorAddPayload, {
    description:
      'Enters somebody nobody knows yet, last in the order. Trials count like everybody’s; the result is signed when competitorMatch has said who it is. Codes beside those of every entry: LIST_FULL.',
  })
  @Needs('official', 'referee', 'director')
  competitorAdd(
    @Args('input') input: CompetitorAddInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorAddPayload> {
    const { entryId: competitor, bib, flight, listedName, listedClub } = input;
    const body: SharedBody = { kind: 'late-entry', competitor, bib, flight: flight ?? null };
    return this.enter(viewer, input, body, { listedName, listedClub: listedClub ?? null });
  }

  @Mutation(() => CompetitorMatchPayload, {
    description:
      'Says who it is that was entered by name. Codes beside those of every entry: NOT_FOUND, ALREADY_MATCHED, ALREADY_ENTERED.',
  })
  @Needs('referee', 'director')
  competitorMatch(
    @Args('input') input: CompetitorMatchInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorMatchPayload> {
    const { competitorId: competitor, athleteId } = input;
    return this.enter(viewer, input, { kind: 'match', competitor }, { athleteId: athleteId ?? null });
  }

  @Mutation(() => BibsSetPayload, {
    description:
      'Puts bibs right, at any time: trials belong to competitors, not to bibs. For trials that were entered on a wrong line use attemptsMove.',
  })
  @Needs('official', 'referee', 'director')
  bibsSet(@Args('input') input: BibsSetInput, @Viewer() viewer: Identity): Promise<BibsSetPayload> {
    const bibs = input.bibs.map(({ competitorId: competitor, bib }) => ({ competitor, bib }));
    return this.enter(viewer, input, { kind: 'bibs', bibs, reason: input.reason });
  }

  @Mutation(() => CompetitorFlightSetPayload, {
    description: 'Moves a competitor to another flight, before the competitor’s first trial.',
  })
  @Needs('official', 'referee', 'director')
  competitorFlightSet(
    @Args('input') input: CompetitorFlightSetInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorFlightSetPayload> {
    const { competitorId: competitor, flight, reason } = input;
    return this.enter(viewer, input, { kind: 'flight', competitor, flight, reason });
  }

  private async enter(
    viewer: Identity,
    input: EntryInput,
    body: SharedBody,
    details: ListDetails = {},
  ): Promise<EntryPayload> {
    const request = { ...requestOf(input, body), details };
    return payloadOf(await this.recording.record(viewer, request));
  }
}
