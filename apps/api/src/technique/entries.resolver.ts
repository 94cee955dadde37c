import { practice, type NotebookBody, type VideoBody } from '#persistence';
import { isTechniqueEvent } from '#technique';
import { Args, Mutation, Resolver } from '@nestjs/graphql';
import { refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { isGiven } from '../platform/inputs/given.js';
import { noSuch } from './batch.js';
import { notebookAthlete } from './notebook-view.js';
import {
  ChecklistSetInput,
  ConsentRecordInput,
  FocusEndInput,
  FocusStartInput,
  ReleaseSetInput,
  StageSetInput,
  VideoAddInput,
} from './notebook.inputs.js';
import {
  codeProblem,
  endOfFocus,
  newest,
  NotebookService,
  type Noted,
  type Wanted,
} from './notebook.service.js';
import { NotebookPayload } from './notebook.types.js';
import { ObservationsService } from './observations.service.js';
import { notTaught } from './vocabulary.service.js';

/** What a coach writes about an athlete beside throws. */
@Resolver()
export class EntriesResolver {
  constructor(
    private readonly notebook: NotebookService,
    private readonly observations: ObservationsService,
  ) {}

  @Mutation(() => NotebookPayload, { description: 'Codes: NOT_FOUND, WRONG_EVENT, CODE_UNKNOWN, ID_REUSED.' })
  @Needs('coach')
  async checklistSet(
    @Args('input') input: ChecklistSetInput,
    @Viewer() viewer: Identity,
  ): Promise<NotebookPayload> {
    const { id, athleteId, event, name, codes } = input;
    const noted = await this.notebook.note(
      { id: id ?? null, athleteId },
      { event, name, codes },
      viewer,
      (_, entries, words) => {
        const before = newest(entries, 'checklist', (body) => `${body.event} ${body.name}`).find(
          ({ body }) => body.event === event && body.name === name,
        );
        const version = (before?.body.version ?? 0) + 1;
        const body = { kind: 'checklist', event, name, version, codes } as const;
        return codeProblem(words, event, codes, (at) => ['codes', String(at)]) ?? fresh(body, before?.id);
      },
    );
    return payloadOf(noted, viewer);
  }

  @Mutation(() => NotebookPayload, { description: 'Codes: NOT_FOUND, WRONG_EVENT, ID_REUSED.' })
  @Needs('coach')
  async stageSet(@Args('input') input: StageSetInput, @Viewer() viewer: Identity): Promise<NotebookPayload> {
    const { id, athleteId, event, stage, from } = input;
    const body = { kind: 'stage', event, stage, from } as const;
    const noted = await this.notebook.note({ id: id ?? null, athleteId }, body, viewer, () =>
      isTechniqueEvent(event) ? fresh(body) : notTaught(['event']),
    );
    return payloadOf(noted, viewer);
  }

  @Mutation(() => NotebookPayload, { description: 'Codes: NOT_FOUND, WRONG_EVENT, CODE_UNKNOWN, ID_REUSED.' })
  @Needs('coach')
  async focusStart(
    @Args('input') input: FocusStartInput,
    @Viewer() viewer: Identity,
  ): Promise<NotebookPayload> {
    const { id, athleteId, event, code, how, what = null, from } = input;
    const body = { kind: 'focus', event, code, how, what, from, to: null } as const;
    const noted = await this.notebook.note(
      { id: id ?? null, athleteId },
      body,
      viewer,
      (_, __, words) => codeProblem(words, event, [code], () => ['code']) ?? fresh(body),
    );
    return payloadOf(noted, viewer);
  }

  @Mutation(() => NotebookPayload, { description: 'Codes: NOT_FOUND, ALREADY_SO, WINDOW_EMPTY, ID_REUSED.' })
  @Needs('coach')
  async focusEnd(@Args('input') input: FocusEndInput, @Viewer() viewer: Identity): Promise<NotebookPayload> {
    const { id, athleteId, focusId, to } = input;
    const noted = await this.notebook.note(
      { id: id ?? null, athleteId },
      { focusId, to },
      viewer,
      (_, entries) => endOfFocus(entries, focusId, to),
    );
    return payloadOf(noted, viewer);
  }

  @Mutation(() => NotebookPayload, { description: 'Codes: NOT_FOUND, THROW_NOT_NAMED, ID_REUSED.' })
  @Needs('coach')
  async videoAdd(@Args('input') input: VideoAddInput, @Viewer() viewer: Identity): Promise<NotebookPayload> {
    const { id, athleteId, throwId, trial, address, view = null } = input;
    if (isGiven(throwId) === isGiven(trial)) return payloadOf({ refusal: THROW_NOT_NAMED }, viewer);
    const of: VideoBody['throw'] = isGiven(throwId)
      ? throwId
      : { competition: trial!.competitionId, competitor: trial!.competitorId, round: trial!.round };
    const instants = input.instants.map(({ instant, ms }) => ({ instant, ms }));
    const body = { kind: 'video', throw: of, address, view, instants } as const;
    const { organisationId } = viewer;
    const noted = await this.notebook.note({ id: id ?? null, athleteId }, body, viewer, async (tx) => {
      if (isGiven(throwId)) {
        const [thrown] = await practice.counting(tx, organisationId, [throwId]);
        return thrown?.athleteId === athleteId ? fresh(body) : noSuch('throw', ['throwId']);
      }
      const owner = await this.observations.athleteOfTrial(tx, organisationId, trial!);
      return owner === athleteId ? fresh(body) : noSuch('competitor', ['trial', 'competitorId']);
    });
    return payloadOf(noted, viewer);
  }

  @Mutation(() => NotebookPayload, {
    description:
      'Shows a part of the notebook to the athlete and the guardians, or no longer. Codes: NOT_FOUND, ID_REUSED.',
  })
  @Needs('coach')
  async releaseSet(
    @Args('input') input: ReleaseSetInput,
    @Viewer() viewer: Identity,
  ): Promise<NotebookPayload> {
    const { id, athleteId, what, isOpen } = input;
    const body = { kind: 'release', what, isOpen } as const;
    return payloadOf(
      await this.notebook.note({ id: id ?? null, athleteId }, body, viewer, () => fresh(body)),
      viewer,
    );
  }

  @Mutation(() => NotebookPayload, { description: 'Codes: NOT_FOUND, ID_REUSED.' })
  @Needs('coach')
  async consentRecord(
    @Args('input') input: ConsentRecordInput,
    @Viewer() viewer: Identity,
  ): Promise<NotebookPayload> {
    const { id, athleteId, purpose, isGiven: given, by, name, on, form = null } = input;
    const body = { kind: 'consent', purpose, isGiven: given, by, name, on, form } as const;
    return payloadOf(
      await this.notebook.note({ id: id ?? null, athleteId }, body, viewer, () => fresh(body)),
      viewer,
    );
  }
}

function fresh(body: NotebookBody, replacesId: string | null = null): Wanted {
  return { body, replacesId };
}

function payloadOf(
  noted: Noted | { readonly refusal: ReturnType<typeof refusal> },
  viewer: Identity,
): NotebookPayload {
  if ('refusal' in noted) return { id: null, athlete: null, isReplay: false, userErrors: [noted.refusal] };
  const { id, athlete, replayed } = noted;
  return { id, athlete: notebookAthlete(athlete, viewer), isReplay: replayed, userErrors: [] };
}

const THROW_NOT_NAMED = refusal({
  code: 'THROW_NOT_NAMED',
  path: ['throwId'],
  message: 'A film is of a throw of practice, or of a trial.',
  remedy: 'Send one of throwId and trial.',
});
