/*
 * Who goes on from the groups of a qualification, counted by hand from sheets: for everybody, how many are better. No
 * list is sorted and no place is needed. It follows the text of the sheet format and shares nothing with the program.
 */

export interface GroupSheet {
  readonly event: string;
  readonly heights?: readonly string[];
  readonly qualifying: { readonly standard: string };
  readonly competitors: readonly GroupLine[];
  readonly admitted?: readonly { readonly bib: string; readonly by: string }[];
}

export interface GroupLine {
  readonly bib: string;
  readonly status?: string;
  readonly guest?: boolean;
  readonly series?: readonly string[];
}

/** One competitor among all, as the reference sees him. */
export interface Counted {
  readonly group: number;
  readonly bib: string;
  readonly place: number | null;
  readonly qualified: string | null;
  /** Shares the last place that goes on, so that more do than were wanted. */
  readonly isLevelForLast: boolean;
}

interface Candidate {
  readonly group: number;
  readonly line: GroupLine;
  /** Null: has no place. */
  readonly result: Result | null;
}

interface Result {
  /** In hundredths; 0: valid and never measured. */
  readonly best: number;
  /** Compared one after the other; a greater number is better, and where one has no more, he is behind. */
  readonly keys: readonly number[];
  /** Next best marks cannot decide where a trial was not measured. */
  readonly hasUnmeasured: boolean;
}

/** Everybody of all groups, group by group in the order of the sheets. */
export function countGroups(sheets: readonly GroupSheet[], fill: number): Counted[] {
  const all = sheets.flatMap((sheet, group) =>
    sheet.competitors.map((line): Candidate => ({ group, line, result: resultOf(sheet, line) })),
  );
  const standard = hundredths(sheets[0]!.qualifying.standard);
  const betterThan = (one: Candidate): number => all.filter((other) => isBetter(all, other, one)).length;
  const letters = all.map((one) => letterOf(sheets, one, standard, betterThan(one) < fill));
  const going = letters.filter((letter) => letter === 'Q' || letter === 'q').length;
  const mostAhead = Math.max(-1, ...all.map((one, at) => (letters[at] === 'q' ? betterThan(one) : -1)));
  return all.map((one, at) => ({
    group: one.group,
    bib: one.line.bib,
    place: one.result && betterThan(one) + 1,
    qualified: letters[at]!,
    isLevelForLast: going > fill && letters[at] === 'q' && betterThan(one) === mostAhead,
  }));
}

function letterOf(
  sheets: readonly GroupSheet[],
  { group, line, result }: Candidate,
  standard: number,
  isAmongFill: boolean,
): string | null {
  if (result && result.best >= standard) return 'Q';
  if (result && isAmongFill) return 'q';
  const admission = sheets[group]!.admitted?.find(({ bib }) => bib === line.bib);
  return admission ? `q${admission.by}` : null;
}

function isBetter(all: readonly Candidate[], { result: a }: Candidate, { result: b }: Candidate): boolean {
  if (!a || !b) return false;
  if (a.best !== b.best) return a.best > b.best;
  if (all.some(({ result }) => result?.best === a.best && result.hasUnmeasured)) return false;
  for (let at = 0; at < Math.max(a.keys.length, b.keys.length); at++) {
    const [own, other] = [a.keys[at] ?? -Infinity, b.keys[at] ?? -Infinity];
    if (own !== other) return own > other;
  }
  return false;
}

function resultOf({ heights }: GroupSheet, { status, guest, series = [] }: GroupLine): Result | null {
  if (status !== undefined || guest) return null;
  return heights ? overTheBar(heights, series) : measured(series);
}

function measured(series: readonly string[]): Result | null {
  const marks = series.filter((cell) => /^\d/.test(cell)).map(hundredths);
  const hasUnmeasured = series.includes('O');
  if (marks.length === 0) return hasUnmeasured ? { best: 0, keys: [], hasUnmeasured } : null;
  // By how often each mark was made, from the greatest down: the same as mark after mark.
  const keys = [...Array(Math.max(...marks) + 1).keys()]
    .reverse()
    .flatMap((mark) => marks.filter((one) => one === mark));
  return { best: keys[0]!, keys, hasUnmeasured };
}

function overTheBar(heights: readonly string[], series: readonly string[]): Result | null {
  const last = series.map((cell) => cell.includes('O')).lastIndexOf(true);
  if (last < 0) return null;
  const failures = (cell: string): number => [...cell].filter((letter) => letter === 'X').length;
  const upTo = series.slice(0, last + 1).reduce((sum, cell) => sum + failures(cell), 0);
  return {
    best: hundredths(heights[last]!),
    keys: [-failures(series[last]!), -upTo],
    hasUnmeasured: false,
  };
}

function hundredths(mark: string): number {
  return Number(mark.replace('.', ''));
}
