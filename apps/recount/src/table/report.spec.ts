import { recount } from '#rules';
import { reportOf, titleOf } from './report.js';

function reportOn(sheet: unknown): string {
  const bytes = new TextEncoder().encode(JSON.stringify(sheet));
  return reportOf({ bytes }, recount(bytes));
}

/** The text between two empty lines that has the title. */
function sectionOf(report: string, title: string): string[] {
  const found = report.split('\n\n').find((section) => section.startsWith(title));
  return (
    found
      ?.trimEnd()
      .split('\n')
      .slice(1)
      .map((line) => line.trim()) ?? []
  );
}

const THROWERS = [
  { bib: '7', name: 'Ina Odewald', club: 'Northmoor AC', series: ['58.10', 'X', '57.02', '-', 'X', '55.00'] },
  { bib: '12', name: 'Zoë Brandt', club: 'Hollin Vale', series: ['57.44', '58.10', 'X', 'X', '56.20', '-'] },
  { bib: '3', name: 'Ruth Tamm', series: ['X', 'X', 'X'] },
];
const DISCUS = {
  format: 'sectorline-sheet/1',
  rules: 'WA',
  edition: '2024-01',
  event: 'discus',
  category: { sex: 'W', age: 'U20' },
  implementGrams: 1000,
  competitors: THROWERS,
};

describe('the table for people', () => {
  it('shows a throw as the card does, with places and the reason of a tie', () => {
    expect(reportOn(DISCUS)).toBe(`Discus, women U20, 1000 g, final, WA 2024-01

Place  Bib  Name         Club              1      2      3  4      5      6   Best
─────  ───  ───────────  ────────────  ─────  ─────  ─────  ─  ─────  ─────  ─────
   1   12   Zoë Brandt   Hollin Vale   57.44  58.10      X  X  56.20      -  58.10
   2   7    Ina Odewald  Northmoor AC  58.10      X  57.02  -      X  55.00  58.10
   NM  3    Ruth Tamm                      X      X      X

Why, by WA TR25.22
  7 Ina Odewald, 2nd: equal best 58.10; second best 57.02 against 57.44

Through the cuts, best first
  After round 3: 12, 7, 3

Order of competition
  From round 1: 7, 12, 3
  From round 4: 3, 7, 12
`);
  });

  it('makes a shared place visible', () => {
    const level = THROWERS.map((thrower) => ({ ...thrower, series: ['50.00'] }));
    const report = reportOn({ ...DISCUS, competitors: level });
    expect(report.match(/^ +1= {2}\d+/gm)?.length).toBe(3);
    expect(sectionOf(report, 'Why')[0]).toMatch(/^12 Zoë Brandt, 1st, shared: equal best 50\.00/);
  });

  it('says where the card differs, and why', () => {
    const written = { place: 1, mark: '58.10' };
    const report = reportOn({ ...DISCUS, competitors: [{ ...THROWERS[0], written }, ...THROWERS.slice(1)] });
    expect(sectionOf(report, 'The card differs')).toEqual([
      expect.stringMatching(
        /^7: the card says 1st, counted 2nd because equal best 58\.10; second best 57\.02 against 57\.44/,
      ),
    ]);
  });

  it('says so when the card is right', () => {
    const written = { place: 2, mark: '58.10' };
    const report = reportOn({ ...DISCUS, competitors: [{ ...THROWERS[0], written }, ...THROWERS.slice(1)] });
    expect(report).toContain('All that is written on the card agrees with the count.');
  });

  it('shows winds, and the best with a legal one where it is another', () => {
    const competitors = [
      { bib: 'A', series: ['7.10 +2.1', '7.02 +0.4'] },
      { bib: 'B', series: ['6.90 +2.4', 'X -1.0'] },
      { bib: 'C', series: ['6.80 -0.3'] },
    ];
    const lines = reportOn({ ...DISCUS, event: 'long-jump', implementGrams: 1000, competitors }).split('\n');
    expect(lines.find((line) => line.includes(' A '))).toMatch(/7\.10 \+2\.1 +7\.02$/);
    expect(lines.find((line) => line.includes(' B '))).toMatch(/6\.90 \+2\.4 +–$/);
    expect(lines.find((line) => line.includes(' C '))).toMatch(/6\.80 -0\.3$/);
  });

  it('tells several files apart by their names', () => {
    expect(titleOf('山.json')).toBe('山.json\n═══════\n');
    expect(titleOf('-')).toBe('Standard input\n══════════════\n');
  });

  it('lists every problem with where it is', () => {
    const report = reportOn({ ...DISCUS, competitors: [{ bib: '7', series: ['58.1'] }, { bib: '7' }] });
    expect(report).toContain('Not counted: 2 problems');
    expect(report).toMatch(/^CELL {2}\/competitors\/0\/series\/0\n {4}\S/m);
    expect(report).toMatch(/^DUPLICATE {2}\/competitors\/1\/bib\n {4}\S/m);
  });

  it('lets nothing in a file speak to the terminal', () => {
    const name = '\u001b[2J\u202Egone';
    const report = reportOn({
      ...DISCUS,
      competitors: [{ ...THROWERS[0], name, club: 'a\nb' }, THROWERS[1]],
    });
    expect(report).toContain('<U+001B>[2J<U+202E>gone');
    expect(report.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202E]/u);
    expect(report).toContain('a<U+000A>b');
  });
});

describe('other kinds of sheet', () => {
  it('a high jump has heights, and a jump-off of its own', () => {
    const report = reportOn({
      format: 'sectorline-sheet/1',
      rules: 'WA',
      event: 'high-jump',
      heights: ['1.80', '1.85'],
      competitors: [
        { bib: 'A', series: ['O', 'XXX'] },
        { bib: 'B', series: ['O', 'XXX'] },
      ],
      jumpOff: [
        { height: '1.85', tries: { A: 'X', B: 'X' } },
        { height: '1.83', tries: { A: 'X', B: 'O' } },
      ],
    });
    expect(report).toMatch(/Place {2}Bib {2}1\.80 {2}1\.85 {2}jump-off 1\.85 {2}jump-off 1\.83 {2}Best/);
    expect(report).toMatch(/1 {3}B +O +XXX +X +O {2}1\.83/);
    expect(report).toMatch(/A, 2nd: .*jump-off/);
  });

  it('a qualification shows who goes on', () => {
    const report = reportOn({
      ...DISCUS,
      stage: 'qualification',
      qualifying: { standard: '58.00', fill: 3 },
      competitors: [
        { bib: 'A', series: ['58.20'] },
        { bib: 'B', series: ['57.00', '57.10', 'X'] },
      ],
    });
    expect(report).toContain('qualification, standard 58.00, filled up to 3');
    expect(report).toMatch(/ A +58\.20 .* Q$/m);
    expect(report).toMatch(/ B +57\.00 .* q$/m);
  });

  it('combined events have points under marks', () => {
    const report = reportOn({
      format: 'sectorline-combined/1',
      table: 'pentathlon-indoor',
      rows: [
        {
          bib: '1',
          name: 'Ada Lind',
          marks: { '60mh': '8.50', 'high-jump': '1.80', shot: '14.00', 'long-jump': null, '800m': '2:15.00' },
        },
        {
          bib: '2',
          name: 'Mia Orr',
          marks: { '60mh': '8.60', 'high-jump': '1.75', shot: '13.00', 'long-jump': '6.00', '800m': 'DNS' },
        },
      ],
    });
    expect(report).toContain('Pentathlon indoor');
    expect(report).toMatch(/ 1 {3}1 +Ada Lind +8\.50 +1\.80 +14\.00 +– +2:15\.00 +\d+$/m);
    expect(report).toMatch(/DNF {2}2 +Mia Orr/);
  });

  it('a meet adds the clubs of all its sheets', () => {
    const { competitors, ...rest } = DISCUS;
    const report = reportOn({
      format: 'sectorline-meet/1',
      scoring: { places: [5, 3] },
      sheets: [DISCUS, { ...rest, event: 'shot', competitors: competitors.slice(0, 2) }],
    });
    expect(report.split('All sheets together')[1]).toMatch(/1 {3}Hollin Vale +10\n +2 {3}Northmoor AC +6\n/);
  });
});
