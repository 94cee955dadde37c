import type { Citation } from '#rules';
import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { globalId } from '../platform/inputs/global-id.js';
import { Competition } from '../platform/objects/competition.type.js';
import { expectedIn, type Expected } from './expected.js';
import { ImplementSpecification } from './specification.types.js';

/** The limits on the screen of whoever stands at the scale. */
@Resolver(() => Competition)
export class SpecificationResolver {
  constructor(private readonly memory: CompetitionMemory) {}

  @ResolveField(() => [ImplementSpecification], {
    complexity: 3,
    description:
      'What the implements of the competition must weigh and measure, by its rules on the first day of the meet: one for each mass that is thrown. Empty in jumps, and where neither meet nor table says.',
  })
  async implementSpecifications(@Parent() { row }: Competition): Promise<ImplementSpecification[]> {
    const loaded = await this.memory.current(row.organisationId, row.id);
    if (!loaded) return [];
    return expectedIn(loaded.row, loaded.roster, loaded.meet).map(specificationView);
  }
}

const CAUTION = 'The referee and the rule book in force decide.';

function specificationView({ implement, tableGrams, lines }: Expected): ImplementSpecification {
  const { grams, cite, limits } = implement;
  return {
    grams,
    ...cited(cite),
    tableGrams,
    limits: (limits?.value ?? []).map((limit) => ({ ...limit, ...cited(limits!.cite) })),
    competitors: lines.map(({ competitor }) => globalId('Competitor', competitor.id)),
    caution: [CAUTION, cite.note, limits?.cite.note].filter((note) => note !== undefined).join(' '),
  };
}

function cited({ rule, basis }: Citation): { readonly rule: string; readonly isConfirmed: boolean } {
  return { rule, isConfirmed: basis === 'read' || basis === 'read in part' };
}
