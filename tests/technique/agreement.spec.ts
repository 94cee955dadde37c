import { krippendorffAlpha, observerAgreement, type DoubleNote, type Severity } from '#technique';
import { cohenKappa, presenceAgreement } from '../../libs/technique/src/faults/kappa.js';

// Computed with Python 3.11; kappa and its error by the formulas of Fleiss, Cohen and Everitt (1969).
describe('kappa', () => {
  it('of two answers', () => {
    const found = cohenKappa([
      [14, 4],
      [5, 27],
    ]);
    expect(found.observed).toBeCloseTo(0.82, 12);
    expect(found.expected).toBeCloseTo(0.5336, 12);
    expect(found.kappa).toBeCloseTo(0.61406518, 8);
    expect(found.standardError).toBeCloseTo(0.11568082, 8);
  });

  it('of four severities', () => {
    const table = [
      [40, 6, 1, 0],
      [5, 12, 4, 0],
      [1, 3, 9, 2],
      [0, 0, 2, 5],
    ];
    expect(cohenKappa(table).kappa).toBeCloseTo(0.58525346, 8);
    expect(cohenKappa(table, 'linear').kappa).toBeCloseTo(0.71622605, 8);
    expect(cohenKappa(table, 'linear').standardError).toBeCloseTo(0.05416073, 8);
    expect(cohenKappa(table, 'quadratic').kappa).toBeCloseTo(0.82718894, 8);
  });

  it('is low for a rare fault on which nearly all agree, so it never stands alone', () => {
    const table = [
      [2, 3],
      [3, 92],
    ];
    expect(cohenKappa(table)).toMatchObject({
      observed: expect.closeTo(0.94, 12),
      kappa: expect.closeTo(0.36842105, 8),
    });
    const { ac1, onPresent, onAbsent } = presenceAgreement(table);
    expect(ac1).toBeCloseTo(0.93370166, 8);
    expect(onPresent).toBeCloseTo(0.4, 12);
    expect(onAbsent).toBeCloseTo(184 / 190, 12);
  });

  it('is undefined when both gave one answer, and 0 when one of them did', () => {
    expect(
      cohenKappa([
        [25, 0],
        [0, 0],
      ]),
    ).toMatchObject({ kappa: null, standardError: null });
    expect(
      cohenKappa([
        [20, 5],
        [0, 0],
      ]),
    ).toMatchObject({ kappa: 0, oneIsConstant: true });
    expect(
      presenceAgreement([
        [0, 0],
        [0, 30],
      ]),
    ).toMatchObject({ onPresent: null, onAbsent: 1 });
  });
});

describe('alpha of Krippendorff', () => {
  // The example of Krippendorff's own text: published as .743, .815 and .849.
  const read = (line: string): (number | null)[] =>
    line.split(' ').map((cell) => (cell === '.' ? null : Number(cell)));
  const answers = [
    '1 2 3 3 2 1 4 1 2 . . .',
    '1 2 3 3 2 2 4 1 2 5 . 3',
    '. 3 3 3 2 3 4 2 2 5 1 .',
    '1 2 3 3 2 4 4 1 2 5 1 .',
  ].map(read);

  it.each([
    ['nominal', 0.743421],
    ['ordinal', 0.815388],
    ['interval', 0.849107],
  ] as const)('%s', (metric, alpha) => {
    expect(krippendorffAlpha(answers, metric)).toBeCloseTo(alpha, 6);
  });

  it('is undefined where nothing varies or nobody was two', () => {
    expect(
      krippendorffAlpha(
        [
          [1, 1],
          [1, 1],
        ],
        'nominal',
      ),
    ).toBeNull();
    expect(
      krippendorffAlpha(
        [
          [1, null],
          [null, 2],
        ],
        'nominal',
      ),
    ).toBeNull();
    expect(krippendorffAlpha([], 'nominal')).toBeNull();
  });
});

describe('two observers of the same throws', () => {
  function notes(times: readonly (readonly [Severity, Severity, number])[]): DoubleNote[] {
    return times.flatMap(([first, second, count]) =>
      Array.from({ length: count }, () => ({ first, second })),
    );
  }

  it('are compared on presence and on severity', () => {
    const found = observerAgreement(
      notes([
        [2, 3, 7],
        [3, 2, 7],
        [2, 0, 4],
        [0, 2, 5],
        [1, 0, 20],
        [0, 0, 7],
      ]),
    );
    // Present from 2 on, this is the table [[14, 4], [5, 27]].
    expect(found).toMatchObject({ throws: 50, presence: { kappa: expect.closeTo(0.61406518, 8) } });
    expect(found.kind === 'answer' && found.severity.kappa).toBeLessThan(0.61);
  });

  it('need twenty throws', () => {
    expect(observerAgreement(notes([[2, 2, 13]]))).toMatchObject({
      code: 'LT_DOUBLE_LOGGED',
      missingThrows: 7,
    });
  });
});
