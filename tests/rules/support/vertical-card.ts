import {
  countVertical,
  parseJumpOffTry,
  parseMark,
  parseVerticalCell,
  ruleSet,
  type JumpOffRound,
  type VerticalCard,
  type VerticalCompetitor,
} from '#rules';

/** A high jump final in words: `{ A: 'O XO XXX' }` by bib, one word for each height, `.` for none taken. */
export function highJump(
  heights: string,
  series: Readonly<Record<string, string>>,
  parts: Partial<VerticalCard> = {},
): VerticalCard {
  return {
    rules: 'WA',
    edition: ruleSet('WA').edition,
    event: 'high-jump',
    indoor: false,
    stage: 'final',
    qualifying: null,
    unit: 'cm',
    heights: heights.split(' ').map(heightCm),
    competitors: Object.entries(series).map(([bib, cells]) => jumper(bib, cells)),
    admitted: [],
    jumpOff: [],
    ...parts,
  };
}

export function jumper(
  bib: string,
  cells: string,
  parts: Partial<VerticalCompetitor> = {},
): VerticalCompetitor {
  const series = cells.split(' ').filter(Boolean).map(parseVerticalCell);
  return { bib, name: null, club: null, flight: null, status: null, guest: false, series, ...parts };
}

/** `jumpOff('1.91 AX BO', …)`: at 1.91 A fails, B clears. */
export function jumpOff(...rounds: readonly string[]): JumpOffRound[] {
  return rounds.map((words) => {
    const [height = '', ...entries] = words.split(' ');
    const tries = entries.flatMap((entry) => {
      const trial = parseJumpOffTry(entry.slice(-1));
      return trial ? [{ bib: entry.slice(0, -1), trial }] : [];
    });
    return { height: heightCm(height), tries };
  });
}

/** The result in words, one for each competitor: place (`=` when shared), bib, mark, what decided. */
export function resultOf(card: VerticalCard): string[] {
  return countVertical(card).results.map(({ bib, place, equal, mark, status, decidedBy }) => {
    const where = place === null ? (status ?? '') : `${place}${equal ? '=' : ''}`;
    return [where, bib, mark ?? '–', decidedBy].filter(Boolean).join(' ');
  });
}

export function heightCm(text: string): number {
  const mark = parseMark(text);
  if (!mark) throw new Error(`${text} is no height.`);
  return mark.value;
}
