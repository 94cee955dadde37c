import { editionsOf, openCompetition, apply, progressOf, ruleSet, type FoulCode } from '#rules';

/** One trial of a script: whose, in which round, and what the card says. */
export interface ScriptLine {
  readonly bib: string;
  readonly round: number;
  /** `48.62`, `X`, `X RIM`, `-`. */
  readonly cell: string;
}

const FIELD = 12;

/** A mark or a failure for every trial, the same in every run; some are level. */
function cellOf(bib: number, round: number): string {
  const chance = (bib * 31 + round * 17) % 11;
  if (chance === 0) return 'X';
  if (chance === 5) return 'X SECTOR';
  if (chance === 7 && round > 1) return '-';
  const cm = 3_800 + ((bib * 137 + round * 59) % 40) * 25;
  return `${Math.floor(cm / 100)}.${String(cm % 100).padStart(2, '0')}`;
}

/**
 * A discus final of twelve with its cut after the third round: every trial in the order in which the rules call it,
 * found without the desk.
 */
export function discusFinal(): readonly ScriptLine[] {
  const edition = editionsOf('WA').at(-1)!;
  let state = openCompetition({
    rules: 'WA',
    edition,
    event: 'discus',
    indoor: false,
    stage: 'final',
    qualifying: null,
    plan: ruleSet('WA', edition).plan.value,
    unit: 'cm',
    competitors: Array.from({ length: FIELD }, (_, at) => ({
      key: String(at + 1),
      bib: String(at + 1),
      name: null,
      club: null,
      flight: null,
      guest: false,
      implementGrams: null,
    })),
  });
  const lines: ScriptLine[] = [];
  for (let up = progressOf(state).up; up !== null; up = progressOf(state).up) {
    const { competitor, round } = up;
    const cell = cellOf(Number(competitor), round);
    lines.push({ bib: competitor, round, cell });
    const id = `00000000-0000-7000-8000-${String(lines.length).padStart(12, '0')}`;
    ({ state } = apply(state, {
      id,
      by: 'official',
      actor: 'script',
      kind: 'attempt',
      competitor,
      round,
      ...judged(cell),
    }));
  }
  return lines;
}

/** What the journal has to say of a cell. */
export function judged(cell: string) {
  const [word = '', foul = null] = cell.split(' ') as [string, FoulCode?];
  const shared = { wind: null, protested: null, implementGrams: null };
  if (word === 'X') return { outcome: 'foul' as const, mark: null, foul, ...shared };
  if (word === '-') return { outcome: 'pass' as const, mark: null, foul: null, ...shared };
  return { outcome: 'valid' as const, mark: Number(word.replace('.', '')), foul: null, ...shared };
}
