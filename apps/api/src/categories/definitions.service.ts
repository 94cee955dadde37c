import {
  categoryDefinitions as store,
  meets,
  type CategoryDefinitionRow,
  type NewCategoryDefinition,
} from '#persistence';
import {
  categoryDefinitions,
  definitionProblems,
  type AgeDay,
  type CategoryDefinition,
  type RuleSetCode,
} from '#rules';
import { Injectable } from '@nestjs/common';
import { ownDefinitions } from '../platform/competition/category.js';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { AgeDayInput, CategoryDefinitionAddInput } from './categories.inputs.js';

/** Definitions in force on a day, and how many of them, from the first on, are the organisation's own. */
export interface InForce {
  readonly definitions: readonly CategoryDefinition[];
  readonly own: ReadonlySet<CategoryDefinition>;
}

/** Age categories: the built-in ones, and those that an organisation lays down itself. */
@Injectable()
export class DefinitionsService {
  constructor(private readonly database: Database) {}

  /** A definition is only added: an athlete was put into a category by it. */
  async add(
    input: CategoryDefinitionAddInput,
    viewer: Identity,
  ): Promise<Created<CategoryDefinitionRow> | { readonly refusals: Refusal[] }> {
    viewer.requireAdmin();
    const { organisationId } = viewer;
    const ageOn = ageDayOf(input.ageOn);
    if (!ageOn) return { refusals: [DAY_MISPLACED] };
    const wanted = newDefinition(input, ageOn, organisationId);
    const { validFrom: from, validUntil: until, bands } = wanted;
    const problems = definitionProblems({ valid: { from, until }, ageOn, bands });
    if (problems.length > 0) {
      const remedy = 'Change it, or leave it out.';
      return { refusals: problems.map((problem) => refusal({ ...problem, remedy })) };
    }
    return createOnce<CategoryDefinitionRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => store.find(tx, organisationId, id),
      insert: async (tx) => {
        await store.insert(tx, { ...wanted, definedBy: viewer.holder ?? '' });
        return null;
      },
    });
  }

  /** Under a rule set on a day: the organisation's own first; of several of one scheme the latest. */
  async ofRules(rules: RuleSetCode, onDate: string, viewer: Identity): Promise<InForce> {
    const own = await this.database.read((at) => ownDefinitions(at, viewer.organisationId));
    const definitions = categoryDefinitions({ rules }, onDate, own);
    return { definitions: definitions.filter(isLatest), own: new Set(own) };
  }

  /** Everything that may be named at a meet: what counts under its rule set, and all that is only named. */
  async ofMeet(meetId: string, onDate: string | null, viewer: Identity): Promise<InForce | null> {
    const { organisationId } = viewer;
    return this.database.read(async (at) => {
      const meet = await meets.find(at, organisationId, meetId);
      if (!meet || !(meet.publishedAt !== null || viewer.mayDirect(meetId) || viewer.has('referee', meetId)))
        return null;
      const own = await ownDefinitions(at, organisationId);
      const day = onDate ?? meet.startsOn;
      const named = own.filter(({ rules }) => rules === null).map(({ scheme }) => scheme);
      const definitions = [
        ...categoryDefinitions({ rules: meet.rules }, day, own),
        ...[...new Set(named)].flatMap((scheme) => categoryDefinitions({ scheme }, day, own)),
      ];
      return { definitions: definitions.filter(isLatest), own: new Set(own) };
    });
  }
}

function isLatest({ scheme }: CategoryDefinition, at: number, all: readonly CategoryDefinition[]): boolean {
  return all.findIndex((one) => one.scheme === scheme) === at;
}

/** Null: a month and a day where none belong, or none where they do. */
function ageDayOf({ kind, month, day }: AgeDayInput): AgeDay | null {
  const isGiven = typeof month === 'number' && typeof day === 'number';
  if (kind === 'next') return isGiven ? { kind, month, day } : null;
  return typeof month === 'number' || typeof day === 'number' ? null : { kind };
}

const DAY_MISPLACED = refusal({
  code: 'DAY',
  path: ['ageOn'],
  message: 'A month and a day belong to NEXT, both of them, and to nothing else.',
  remedy: 'Send month and day with NEXT, and neither with the others.',
});

type Wanted = Omit<NewCategoryDefinition, 'definedBy'>;

function newDefinition(
  { id, scheme, rules, validFrom, validUntil, bands, source }: CategoryDefinitionAddInput,
  ageOn: AgeDay,
  organisationId: string,
): Wanted {
  return {
    ...{ organisationId, id: id ?? uuidV7(), scheme, rules: rules ?? null, ageOn, source },
    validFrom: validFrom ?? null,
    validUntil: validUntil ?? null,
    bands: bands.map(({ code, minAge, maxAge }) => ({
      code,
      minAge: minAge ?? null,
      maxAge: maxAge ?? null,
    })),
  };
}
