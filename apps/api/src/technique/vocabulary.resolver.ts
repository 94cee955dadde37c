import type { EventCode } from '#rules';
import {
  definitionOf,
  isActive,
  isArmOrShoulder,
  isTechniqueEvent,
  phaseOrder,
  phasesOf,
  readAs,
  STYLES,
  VARIANTS,
  type FaultDefinition,
  type TechniqueEvent,
  type Vocabulary,
} from '#technique';
import { Args, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { EventEnum } from '../platform/objects/words.js';
import { FaultChangeInput, FaultDefineInput, FaultSplitInput } from './vocabulary.inputs.js';
import { VocabularyService, type FaultsChanged } from './vocabulary.service.js';
import { FaultPayload, FaultVocabulary, type FaultDefinitionView } from './vocabulary.types.js';

/** The words that faults are noted with. */
@Resolver()
export class VocabularyResolver {
  constructor(private readonly service: VocabularyService) {}

  @Query(() => FaultVocabulary, {
    nullable: true,
    description: 'What a coach may note of an event. Null: the event has no vocabulary.',
  })
  @Needs('coach', 'athlete', 'guardian')
  async faultVocabulary(
    @Args('event', { type: () => EventEnum }) event: EventCode,
    @Viewer() viewer: Identity,
  ): Promise<FaultVocabulary | null> {
    if (!isTechniqueEvent(event)) return null;
    const { vocabulary, version } = await this.service.current(viewer.organisationId);
    return { ...viewOf(vocabulary, event), version };
  }

  @Mutation(() => FaultPayload, {
    description: 'Codes: WRONG_EVENT, PHASE_NOT_OF_EVENT, NAME_MISSING, NAME_TAKEN, ID_REUSED.',
  })
  @Needs('coach')
  async faultDefine(
    @Args('input') input: FaultDefineInput,
    @Viewer() viewer: Identity,
  ): Promise<FaultPayload> {
    return payloadOf(await this.service.define(input, viewer));
  }

  @Mutation(() => FaultPayload, {
    description:
      'What was noted stays, whatever is done to a fault. Codes: FIELD_MISSING, UNKNOWN_CODE, BUILT_IN, NOT_BUILT_IN, NOT_ACTIVE, OTHER_EVENT, NAME_MISSING, NAME_TAKEN, INTO_ITSELF, ID_REUSED.',
  })
  @Needs('coach')
  async faultChange(
    @Args('input') input: FaultChangeInput,
    @Viewer() viewer: Identity,
  ): Promise<FaultPayload> {
    return payloadOf(await this.service.changeOne(input, viewer));
  }

  @Mutation(() => FaultPayload, {
    description:
      'Codes: WRONG_EVENT, UNKNOWN_CODE, BUILT_IN, NOT_ACTIVE, OTHER_EVENT, PHASE_NOT_OF_EVENT, NAME_TAKEN, ID_REUSED.',
  })
  @Needs('coach')
  async faultSplit(@Args('input') input: FaultSplitInput, @Viewer() viewer: Identity): Promise<FaultPayload> {
    return payloadOf(await this.service.split(input, viewer));
  }
}

function payloadOf(changed: FaultsChanged): FaultPayload {
  if ('refusal' in changed) return { codes: [], isReplay: false, userErrors: [changed.refusal] };
  return { codes: changed.codes, isReplay: changed.replayed, userErrors: [] };
}

function viewOf(vocabulary: Vocabulary, event: TechniqueEvent): Omit<FaultVocabulary, 'version'> {
  const all = [...vocabulary.builtIn, ...vocabulary.own].filter((one) => one.event === event);
  const inOrder = all.sort(
    (a, b) => phaseOrder(event, a.phase) - phaseOrder(event, b.phase) || (a.code < b.code ? -1 : 1),
  );
  return {
    edition: vocabulary.edition,
    variants: VARIANTS[event],
    styles: STYLES[event],
    phases: phasesOf(event).map(({ code, name }) => ({ code, name })),
    faults: inOrder.map((definition) => definitionView(definition, vocabulary)),
  };
}

function definitionView(definition: FaultDefinition, vocabulary: Vocabulary): FaultDefinitionView {
  const { code, name, looksLike, mayGoWith, point, phase, segment, view, relevantFrom, nearFouls } =
    definition;
  const read = readAs(vocabulary, code);
  return {
    ...{ code, name, looksLike, mayGoWith, point, phase, segment, view, relevantFrom, nearFouls },
    variants: definition.variants ?? null,
    opposite: definition.opposite ?? null,
    caution: definition.caution,
    isArmOrShoulder: isArmOrShoulder(definition),
    isOwn: definition.owner === 'own',
    isActive: isActive(vocabulary, code),
    isHidden: vocabulary.hidden.includes(code),
    readAs: definitionOf(vocabulary, read) ? read : code,
  };
}
