import { difference, marksAfter, nthBest, placesOf, type Marks } from './horizontal-ranking.js';
import { validTrials, windIsLegal, type ValidTrial } from './marks.js';
import { hasWind, isVertical, type Competitor, type Sheet } from './shapes.js';
import {
  clearanceDifference,
  clearanceOf,
  clearancePlaces,
  jumpOffGroups,
  markWithJumpOff,
  type Clearance,
} from './vertical-ranking.js';

/** The places of a competition. Everything goes by the index of the competitor in the sheet. */
export interface Standing {
  places: (number | null)[];
  /** What separates two neighbours of the result who do not share a place. */
  separatedBy(above: number, below: number): string;
  mark(index: number): string | null;
}

/** Guests, the disqualified and those who did not start are set aside before anybody is placed. */
function canBePlaced(competitor: Competitor): boolean {
  return competitor.status === undefined && competitor.guest !== true;
}

/** Among equal best marks the first that is wind-legal, else the first. */
export function bestTrial(sheet: Sheet, competitor: Competitor): ValidTrial | undefined {
  const valid = validTrials(competitor.series ?? []);
  const best = Math.max(...valid.map((trial) => trial.steps ?? 0));
  const equal = valid.filter((trial) => (trial.steps ?? 0) === best);
  return (hasWind(sheet) ? equal.find((trial) => windIsLegal(trial.wind)) : undefined) ?? equal[0];
}

function horizontalStanding(sheet: Sheet): Standing {
  const field = sheet.competitors.map((one) =>
    canBePlaced(one) ? marksAfter(one.series ?? [], Infinity) : null,
  );
  return {
    places: placesOf(field),
    separatedBy: (above, below) =>
      nthBest(difference(field[above] as Marks, field[below] as Marks, field).nth),
    mark: (index) => bestTrial(sheet, sheet.competitors[index] as Competitor)?.mark ?? null,
  };
}

/** The places by the heights alone, before a jump-off. */
export function placesAfterHeights(sheet: Sheet): (number | null)[] {
  return clearancePlaces(sheet.competitors.map((one) => (canBePlaced(one) ? clearanceOf(one) : null)));
}

/** The bibs of those who share the first place after the heights. */
export function levelForFirst(sheet: Sheet): string[] {
  const places = placesAfterHeights(sheet);
  return sheet.competitors.filter((_, index) => places[index] === 1).map((one) => one.bib);
}

function verticalStanding(sheet: Sheet): Standing {
  const rounds = sheet.jumpOff ?? [];
  const groups = jumpOffGroups(levelForFirst(sheet), rounds);
  const places = placesAfterHeights(sheet).map((place, index) => {
    if (place !== 1) return place;
    const group = groups.findIndex((bibs) => bibs.includes(sheet.competitors[index]?.bib ?? ''));
    return 1 + groups.slice(0, group).flat().length;
  });
  const clearance = (index: number) => clearanceOf(sheet.competitors[index] as Competitor);
  return {
    places,
    separatedBy: (above, below) =>
      clearanceDifference(clearance(above) as Clearance, clearance(below) as Clearance)?.by ?? 'jump-off',
    mark: (index) => {
      const cleared = sheet.heights?.[clearance(index)?.height ?? -1];
      return cleared === undefined
        ? null
        : markWithJumpOff(sheet.competitors[index]?.bib ?? '', cleared, rounds);
    },
  };
}

export function standingOf(sheet: Sheet): Standing {
  return isVertical(sheet) ? verticalStanding(sheet) : horizontalStanding(sheet);
}
