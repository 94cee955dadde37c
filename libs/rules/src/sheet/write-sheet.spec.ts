import { ruleSet } from '../rule-sets/index.js';
import type { Plan, PlanOverrides } from '../plan.js';
import { planToWrite } from './plan-to-write.js';
import { readSheetSource } from './read-sheet.js';
import { writeSheet } from './write-sheet.js';

function writtenAgain(source: unknown): string {
  const reading = readSheetSource(typeof source === 'string' ? source : JSON.stringify(source));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return JSON.stringify(writeSheet(reading.content));
}

describe('a sheet', () => {
  it('of a throw is written as it was read, key by key', () => {
    const sheet = {
      format: 'sectorline-sheet/1',
      rules: 'NFHS',
      edition: ruleSet('NFHS').edition,
      event: 'javelin',
      category: { sex: 'W', age: 'U18' },
      implementGrams: 500,
      indoor: true,
      plan: { rounds: 4, cuts: [{ after: 2, through: 1 }], cutTies: 'mark' },
      competitors: [
        {
          bib: '1',
          name: 'A. Person',
          club: 'Northmoor AC',
          flight: 'B',
          status: 'DQ',
          guest: true,
          implementGrams: 600,
          series: ['98-02.25', 'O', null].slice(0, 2),
          written: { place: 1, mark: '98-02.25' },
        },
        { bib: '2', series: ['X', '-', 'r'] },
      ],
      admitted: [{ bib: '2', after: 2, by: 'D' }],
      scoring: { places: [5, 2.5, 0.125], scorersPerClub: null, nonScorers: 'hold' },
    };
    expect(writtenAgain(sheet)).toBe(JSON.stringify(sheet));
  });

  it('of a vertical jump is written as it was read, key by key', () => {
    const sheet = {
      format: 'sectorline-sheet/1',
      rules: 'WA',
      event: 'pole-vault',
      heights: ['4.00', '4.10'],
      competitors: [
        { bib: 'b', series: ['XO', 'XXX'] },
        { bib: 'a', series: ['XO', 'X-', null].slice(0, 2) },
        { bib: 'c', series: ['XXr'] },
      ],
    };
    const decided = {
      ...sheet,
      competitors: [...sheet.competitors.slice(0, 1), { bib: 'a', series: ['XO', '-'] }],
    };
    const jumpOff = [{ height: '4.10', tries: { b: 'X', a: 'O' } }];
    expect(writtenAgain(sheet)).toBe(JSON.stringify(sheet));
    expect(writtenAgain({ ...decided, jumpOff })).toBe(JSON.stringify({ ...decided, jumpOff }));
  });

  it('keeps a bib called __proto__', () => {
    const text = JSON.stringify({
      format: 'sectorline-sheet/1',
      rules: 'WA',
      event: 'high-jump',
      heights: ['1.60'],
      competitors: ['a', 'PROTO'].map((bib) => ({ bib, series: ['O'] })),
      jumpOff: [{ height: '1.60', tries: { a: 'X', PROTO: 'O' } }],
    }).replaceAll('PROTO', '__proto__');
    expect(writtenAgain(text)).toBe(text);
  });

  it('of combined events is written as it was read, times by hand with as few decimals as they need', () => {
    const marks = { '60mh': '8.5', 'high-jump': '1.70', shot: null, 'long-jump': 'DNS', '800m': '2:09.35' };
    const sheet = {
      format: 'sectorline-combined/1',
      table: 'pentathlon-indoor',
      timing: 'hand',
      rows: [{ bib: '1', name: 'A', club: 'B', marks }],
    };
    expect(writtenAgain(sheet)).toBe(JSON.stringify(sheet));
    expect(writtenAgain({ ...sheet, rows: [{ bib: '1', marks: { ...marks, '60mh': '8.50' } }] })).toContain(
      '"8.5"',
    );
  });
});

describe('the plan in a sheet', () => {
  const own = ruleSet('WA').plan.value;
  const written = (plan: Plan, named: PlanOverrides): unknown =>
    planToWrite({ rules: 'WA', edition: ruleSet('WA').edition, stage: 'final', plan }, named);

  it('names what was named', () => {
    expect(written(own, {})).toBeUndefined();
    expect(written(own, { rounds: 6 })).toEqual({ rounds: 6 });
    expect(written({ ...own, cuts: [] }, { cuts: [], reorder: 'reverse' })).toEqual({
      cuts: [],
      reorder: 'reverse',
    });
  });

  it('names where it differs from the rule set, when it does not follow from what was named', () => {
    const plan: Plan = { ...own, cutTies: 'mark', reorderAfter: [3, 5] };
    expect(written(plan, {})).toEqual({ cutTies: 'mark', reorderAfter: [3, 5] });
    expect(written(plan, { cuts: [] })).toEqual({ cutTies: 'mark', reorderAfter: [3, 5] });
  });

  it('does not name cuts and new orders that fall away with fewer rounds', () => {
    expect(written({ ...own, rounds: 3, cuts: [], reorderAfter: [] }, {})).toEqual({ rounds: 3 });
    expect(written({ ...own, rounds: 4, cuts: [] }, {})).toEqual({ rounds: 4, cuts: [] });
  });
});
