/** Younger than this an athlete is shown progress and one point, and no number that compares. A choice of ours. */
export const CHILD_BELOW = 14;
/** Convention on the Rights of the Child, article 1: until then the body may still be growing. */
export const GROWING_BELOW = 18;

/** Completed years on a day, both `YYYY-MM-DD`; null where the date of birth is not known. */
export function ageOn(birthDate: string | null, day: string): number | null {
  if (birthDate === null) return null;
  const years = Number(day.slice(0, 4)) - Number(birthDate.slice(0, 4));
  return day.slice(5) < birthDate.slice(5) ? years - 1 : years;
}

/** Whoever's age is not known is taken for a child. */
export function isChild(birthDate: string | null, day: string): boolean {
  return (ageOn(birthDate, day) ?? 0) < CHILD_BELOW;
}

export function isGrowing(birthDate: string | null, day: string): boolean {
  return (ageOn(birthDate, day) ?? 0) < GROWING_BELOW;
}

export function today(): string {
  return new Date().toISOString().slice(0, 10);
}
