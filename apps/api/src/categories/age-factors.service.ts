import { ageFactors, type AgeFactorsRow, type CompetitionRow } from '#persistence';
import { ageFactorProblems, ageGradedList, formatMark, gradedAge, isByYears, parseMark } from '#rules';
import { Injectable } from '@nestjs/common';
import { categoryOfCompetition, ownDefinitions } from '../platform/competition/category.js';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { resultDocumentOf } from '../platform/competition/documents.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { AgeFactorsSetInput } from './categories.inputs.js';
import type { AgeGradedList, AgeGradedRow } from './categories.types.js';

/** Age factors of meets, and the lists that are made with them. */
@Injectable()
export class AgeFactorsService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
  ) {}

  /** From now on the event's list at the meet is made with these; what was in force before is kept. */
  async set(
    { meetId, event, source, factors: given }: AgeFactorsSetInput,
    viewer: Identity,
  ): Promise<{ readonly row: AgeFactorsRow } | { readonly refusals: Refusal[] }> {
    viewer.requireDirector(meetId);
    const factors = given.flatMap(({ sex, age, factor }) => (sex === 'X' ? [] : [{ sex, age, factor }]));
    const refusals = [
      ...given.flatMap(({ sex }, at) => (sex === 'X' ? [sexUndecided(at)] : [])),
      ...(factors.length === given.length ? ageFactorProblems({ source, factors }).map(problemOf) : []),
    ];
    if (refusals.length > 0) return { refusals };
    const { organisationId, holder } = viewer;
    const added = { organisationId, meetId, event, source, factors, setBy: holder ?? '' };
    const row = await this.database.write((tx) => ageFactors.add(tx, added));
    return row ? { row } : { refusals: [notFound('meet', ['meetId'])] };
  }

  /** Null: the meet has no factors for the event, or they would tell the viewer how old somebody is. */
  async listOf(row: CompetitionRow, viewer: Identity): Promise<AgeGradedList | null> {
    const { organisationId, meetId, event } = row;
    const { table, own } = await this.database.read(async (at) => ({
      table: await ageFactors.latest(at, organisationId, meetId, event),
      own: await ownDefinitions(at, organisationId),
    }));
    if (!table || table.factors.length === 0) return null;
    const isCrew = viewer.mayDirect(meetId) || viewer.capacityIn(row) !== null;
    if (isByYears(table) && !isCrew) return null;
    const loaded = await this.memory.current(organisationId, row.id);
    if (!loaded) return null;
    const ages = agesOf(loaded, table, own);
    return { source: table.source, remark: REMARK, rows: rowsOf(loaded, table, ages, isCrew) };
  }
}

const REMARK = 'Beside the result: it decides no place of the competition.';

type Ages = ReadonlyMap<string, ReturnType<typeof gradedAge>>;

/** By bib. */
function agesOf(
  { row, meet, roster }: LoadedCompetition,
  table: AgeFactorsRow,
  own: Awaited<ReturnType<typeof ownDefinitions>>,
): Ages {
  const category = categoryOfCompetition(row, meet);
  return new Map(
    roster.map(({ competitor, athlete }) => {
      const entrant = { birthDate: athlete?.birthDate ?? null, sex: athlete?.sex ?? null };
      return [competitor.bib, gradedAge(entrant, category, table, own)];
    }),
  );
}

/** Only those who have a factor: nobody else is shown to be young, or of no known age. */
function rowsOf(
  loaded: LoadedCompetition,
  table: AgeFactorsRow,
  ages: Ages,
  isCrew: boolean,
): AgeGradedRow[] {
  const { unit } = loaded.row;
  const lines = new Map(loaded.roster.map((line) => [line.competitor.bib, line]));
  const results = new Map((resultDocumentOf(loaded).results ?? []).map((result) => [result.bib, result]));
  const entries = [...results.values()].flatMap(({ bib, mark }) => {
    const age = ages.get(bib);
    const value = mark === null ? null : (parseMark(mark)?.value ?? null);
    return age ? [{ key: bib, ...age, mark: value }] : [];
  });
  return ageGradedList(entries, table).map(({ key: bib, graded, place, equal }) => {
    const line = lines.get(bib)!;
    return {
      competitor: globalId('Competitor', line.competitor.id),
      bib,
      name: isCrew ? (line.name ?? line.displayName) : line.displayName,
      category: ages.get(bib)?.age ?? null,
      mark: results.get(bib)?.mark ?? null,
      graded: graded === null ? null : formatMark(graded, unit),
      place,
      isEqual: equal,
    };
  });
}

function problemOf({ index, field, code, message }: ReturnType<typeof ageFactorProblems>[number]): Refusal {
  const path = index === null ? [field] : ['factors', String(index), field];
  return refusal({ code, path, message, remedy: 'Change it, or leave it out.' });
}

function sexUndecided(at: number): Refusal {
  return refusal({
    code: 'SEX',
    path: ['factors', String(at), 'sex'],
    message: 'The tables have factors for women and for men.',
    remedy: 'Send W or M.',
  });
}
