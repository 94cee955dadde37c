import type { AgeBand, AgeDay, CategoryDefinition } from './category-definition.js';
import { isDate } from './calendar-date.js';

/** Something that makes no definition; `path` leads to the field, list positions from 0. */
export interface DefinitionProblem {
  readonly path: readonly string[];
  readonly code: 'DAY' | 'VALIDITY' | 'BANDS_MISSING' | 'BAND_TWICE' | 'AGES';
  readonly message: string;
}

/** Nobody is older, and nobody younger. */
const MAX_AGE = 150;

/** Everything that keeps age categories from being used. */
export function definitionProblems({
  valid,
  ageOn,
  bands,
}: Pick<CategoryDefinition, 'valid' | 'ageOn' | 'bands'>): DefinitionProblem[] {
  return [...validityProblems(valid), ...dayProblems(ageOn), ...bandsProblems(bands)];
}

function validityProblems({ from, until }: CategoryDefinition['valid']): DefinitionProblem[] {
  if (from === null || until === null || from <= until) return [];
  const message = `The categories would end on ${until}, before they begin on ${from}.`;
  return [{ path: ['validUntil'], code: 'VALIDITY', message }];
}

/** A day that is not in every year would be missing in some. */
function dayProblems(ageOn: AgeDay): DefinitionProblem[] {
  if (ageOn.kind !== 'next') return [];
  const text = [2001, ageOn.month, ageOn.day].map((part) => String(part).padStart(2, '0')).join('-');
  if (isDate(text)) return [];
  const message = `No year has a day ${ageOn.day} in month ${ageOn.month}, or not every year has.`;
  return [{ path: ['ageOn', 'day'], code: 'DAY', message }];
}

function bandsProblems(bands: readonly AgeBand[]): DefinitionProblem[] {
  if (bands.length === 0) {
    return [{ path: ['bands'], code: 'BANDS_MISSING', message: 'There is no category in it.' }];
  }
  return bands.flatMap(({ code, minAge, maxAge }, at): DefinitionProblem[] => {
    const path = ['bands', String(at)];
    if (bands.findIndex((one) => one.code === code) !== at) {
      const message = `Two categories are called "${code}".`;
      return [{ path: [...path, 'code'], code: 'BAND_TWICE', message }];
    }
    const [least, most] = [minAge ?? 0, maxAge ?? MAX_AGE];
    const isRange = [least, most].every((age) => Number.isInteger(age) && age >= 0 && age <= MAX_AGE);
    if (isRange && least <= most) return [];
    const message = `Nobody is from ${least} to ${most} years old.`;
    return [{ path: [...path, 'maxAge'], code: 'AGES', message }];
  });
}
