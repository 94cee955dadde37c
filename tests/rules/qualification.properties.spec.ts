import fc from 'fast-check';
import {
  countCard,
  countVertical,
  qualifyingTable,
  readSheetSource,
  verticalQualifyingTable,
  type Card,
  type QualifyingOutcome,
  type QualifyingTable,
  type ResultRow,
  type Trial,
  type VerticalCard,
} from '#rules';
import { readCases } from '../cases/read-cases.js';
import { anyCard } from './support/any-card.js';
import { highJump } from './support/vertical-card.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

function tableOf(outcome: QualifyingOutcome): QualifyingTable {
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join(' '));
  return outcome.table;
}

/** The card as two groups, the first of so many. */
function split<P, C extends { readonly competitors: readonly P[] }>(card: C, first: number): [C, C] {
  const { competitors } = card;
  return [
    { ...card, competitors: competitors.slice(0, first) },
    { ...card, competitors: competitors.slice(first) },
  ];
}

function rowsOf(rows: readonly ResultRow[]): string {
  return JSON.stringify(rows);
}

const anyQualification = fc
  .tuple(anyCard, fc.nat({ max: 7 }), fc.nat({ max: 7 }))
  .map(([card, first, fill]) => ({
    card: { ...card, stage: 'qualification' as const, qualifying: { standard: 1003, fill } },
    first,
    fill,
  }));

const HEIGHTS = '1.50 1.55 1.60 1.65';
const cell = fc.constantFrom('O', 'XO', 'XXO', '-', 'X-', 'XX-', 'XXX', '.');
const jumps = fc.array(cell, { maxLength: 4 }).map((cells) => cells.join(' '));
const anyHighJump = fc
  .array(jumps, { maxLength: 7 })
  .map((all) => highJump(HEIGHTS, Object.fromEntries(all.map((cells, at) => [`B${at}`, cells]))));

describe('a qualification in groups', () => {
  it('gives the rows of one card that holds all of them', () => {
    fc.assert(
      fc.property(anyQualification, ({ card, first, fill }) => {
        const { rows } = tableOf(qualifyingTable(split(card, first), fill));
        return rowsOf(rows.map(({ row }) => row)) === rowsOf(countCard(card).results);
      }),
      { numRuns: PROPERTY_RUNS },
    );
  });

  it('takes on whom a count by hand takes on', () => {
    fc.assert(
      fc.property(anyQualification, ({ card, first, fill }) => {
        const measured: Card = { ...card, competitors: card.competitors.map(withoutUnmeasured) };
        const { finalists } = tableOf(qualifyingTable(split(measured, first), fill));
        const counted = finalists.map(({ row }) => `${row.bib}${row.qualified}`);
        return counted.toSorted().join() === byHand(measured, fill).toSorted().join();
      }),
      { numRuns: PROPERTY_RUNS },
    );
  });

  it('over a bar gives the rows of one card that holds all of them', () => {
    fc.assert(
      fc.property(anyHighJump, fc.nat({ max: 6 }), fc.nat({ max: 6 }), (card, first, fill) => {
        const qualifying = { standard: card.heights.at(-1)!, fill };
        const whole: VerticalCard = { ...card, stage: 'qualification', qualifying, jumpOff: [] };
        const { rows } = tableOf(verticalQualifyingTable(split(whole, first), fill));
        return rowsOf(rows.map(({ row }) => row)) === rowsOf(countVertical(whole).results);
      }),
      { numRuns: PROPERTY_RUNS },
    );
  });
});

type Competitor = Card['competitors'][number];

/** Next to an unmeasured trial the next best marks decide nothing, which the count by hand does not know. */
function withoutUnmeasured(competitor: Competitor): Competitor {
  const foul: Trial = { outcome: 'foul', mark: null, wind: null };
  return {
    ...competitor,
    series: competitor.series.map((trial) => (trial?.outcome === 'unmeasured' ? foul : trial)),
  };
}

/** Lists of marks, one taken on after the other: first all with the standard, then the best until there are enough. */
function byHand(card: Card, fill: number): string[] {
  const field = card.competitors
    .filter(({ status, guest }) => status === null && !guest)
    .map(({ bib, series }) => ({
      bib,
      marks: series.flatMap((trial) => trial?.mark ?? []).toSorted((a, b) => b - a),
    }))
    .filter(({ marks }) => marks.length > 0);
  const taken = field
    .filter(({ marks }) => marks[0]! >= card.qualifying!.standard)
    .map(({ bib }) => `${bib}Q`);
  const others = field
    .filter(({ marks }) => marks[0]! < card.qualifying!.standard)
    .map(({ bib, marks }) => ({ bib, text: marks.map((mark) => String(mark).padStart(5, '0')).join(' ') }));
  while (taken.length < fill && others.length > 0) {
    const best = others
      .map(({ text }) => text)
      .sort()
      .at(-1);
    for (const { bib } of others.filter(({ text }) => text === best)) taken.push(`${bib}q`);
    others.splice(0, others.length, ...others.filter(({ text }) => text !== best));
  }
  return taken;
}

/** High jump of girls, World Youth Championships 2011: two groups, and a final of twelve (the cases beside name the source). */
describe('a qualification that was held', () => {
  function cardOf(name: string): VerticalCard {
    const [, found] = readCases().find(([path]) => path.endsWith(`${name}.json`))!;
    const reading = readSheetSource(JSON.stringify(found.sheet));
    if (!('content' in reading) || reading.content.kind !== 'vertical')
      throw new Error(`${name} is no high jump.`);
    return { ...reading.content.card, stage: 'qualification', qualifying: { standard: 190, fill: 12 } };
  }

  it('takes on twelve: all at 1.75, both level at the top of 1.72 and one with a failure before', () => {
    const groups = ['A', 'B'].map((letter) => cardOf(`worldyouth-2011-qualification-${letter}`));
    const table = tableOf(verticalQualifyingTable(groups, 12));
    expect(
      table.finalists.map(({ group, row }) => `${'AB'[group]}${row.bib} ${row.place} ${row.mark}`),
    ).toEqual([
      'AB 1 1.75',
      'AA 1 1.75',
      'AC 3 1.75',
      'AD 4 1.75',
      'AE 4 1.75',
      'BA 6 1.75',
      'AF 7 1.75',
      'BB 7 1.75',
      'BC 9 1.75',
      'AH 10 1.72',
      'AG 10 1.72',
      'BD 12 1.72',
    ]);
    expect(cardOf('worldyouth-2011-final-jumpoff').competitors).toHaveLength(table.finalists.length);
  });
});
