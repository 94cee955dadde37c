import { ordinal, type ClubRow, type CutResult, type Difference, type Problem } from '#rules';
import { grid } from './grid.js';
import { placeCell } from './place.js';
import { printable } from './text.js';

/** `3, 7, 12`: bibs in a line of text. */
function list(bibs: readonly string[]): string {
  return bibs.length === 0 ? 'nobody' : bibs.map(printable).join(', ');
}

/** Who went through each cut, in ranking order. */
export function cutLines(cuts: readonly CutResult[]): string[] {
  return cuts.map(({ after, through }) => `After round ${after}: ${list(through)}`);
}

function sameOrder(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((bib, index) => bib === b[index]);
}

/** The order of the rounds, each order once: from the first round on it stands until another one is told. */
export function orderLines(order: Readonly<Record<string, readonly string[]>>): string[] {
  const rounds = Object.entries(order);
  const told = rounds.filter(([, bibs], index) => !sameOrder(bibs, rounds[index - 1]?.[1] ?? []));
  return told.map(([round, bibs]) => `From round ${round}: ${list(bibs)}`);
}

/** Clubs in a team scoring, best first. */
export function clubTable(clubs: readonly ClubRow[]): string[] {
  const shared = new Map<number, number>();
  for (const { place } of clubs) shared.set(place, (shared.get(place) ?? 0) + 1);
  return grid(
    [
      { title: 'Place', align: 'right' },
      { title: 'Club', align: 'left' },
      { title: 'Points', align: 'right' },
    ],
    clubs.map(({ club, points, place }) => {
      const equal = (shared.get(place) ?? 0) > 1;
      return [placeCell({ place, equal, status: null }), club, points];
    }),
  );
}

function shown(key: Difference['key'], value: number | string | null): string {
  if (value === null) return key === 'place' ? 'not placed' : 'no mark';
  return typeof value === 'number' ? ordinal(value) : printable(value);
}

/** What the card says otherwise, and why it was counted so. The place with which each reason begins is said already. */
export function differenceLines(differences: readonly Difference[]): string[] {
  return differences.map(({ bib, key, written, counted, because }) => {
    const reason = printable(because.replace(/^[^:]*: /, ''));
    return `${printable(bib)}: the card says ${shown(key, written)}, counted ${shown(key, counted)} because ${reason}`;
  });
}

/** Where and why a file is not valid, each with what the rule says. */
export function problemLines(problems: readonly Problem[]): string[] {
  return problems.flatMap(({ path, code, message, rule }) => [
    `${code}  ${path === '' ? 'the whole file' : printable(path)}`,
    `    ${printable(message)}${rule === null ? '' : ` (${rule})`}`,
  ]);
}
