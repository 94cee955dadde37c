import {
  defineFault,
  hideFault,
  mergeFault,
  renameFault,
  retireFault,
  showFault,
  splitFault,
  type FaultDraft,
  type VocabularyResult,
} from './own-faults.js';
import {
  codesReadAs,
  definitionOf,
  isActive,
  newVocabulary,
  offered,
  readAs,
  type Vocabulary,
} from './vocabulary.js';

function draft(name: string, more: Partial<FaultDraft> = {}): FaultDraft {
  return {
    event: 'discus',
    name,
    looksLike: 'Eyes on the ground during the turn',
    mayGoWith: 'a turn that drifts',
    point: 'Look far out',
    phase: 'P2',
    segment: 'HEAD',
    plane: 'transverse',
    view: 'front',
    cue: 'gaze',
    relevantFrom: 'basics',
    nearFouls: false,
    caution: null,
    ...more,
  };
}

function after(result: VocabularyResult): Vocabulary {
  if (result.kind === 'refused') throw new Error(result.code);
  return result.vocabulary;
}

const ONE = after(defineFault(newVocabulary(), draft('Eyes down')));
const TWO = after(defineFault(ONE, draft('Rushed first turn', { phase: 'P1' })));

describe('a club’s own faults', () => {
  it('get the next code of their event', () => {
    expect(TWO.own.map(({ code }) => code)).toEqual(['DT-X01', 'DT-X02']);
    const shot = defineFault(TWO, draft('Eyes down', { event: 'shot' }));
    expect(shot).toMatchObject({ kind: 'changed', codes: ['SP-X01'] });
  });

  it('keep code and history when renamed', () => {
    const renamed = after(renameFault(TWO, 'DT-X01', '  Gaze at the ground '));
    expect(definitionOf(renamed, 'DT-X01')?.name).toBe('Gaze at the ground');
  });

  it('stay readable when retired, and their code is not used again', () => {
    const retired = after(retireFault(TWO, 'DT-X02'));
    expect(isActive(retired, 'DT-X02')).toBe(false);
    expect(definitionOf(retired, 'DT-X02')?.name).toBe('Rushed first turn');
    expect(defineFault(retired, draft('Rushed first turn'))).toMatchObject({ codes: ['DT-X03'] });
    expect(retireFault(retired, 'DT-X02')).toMatchObject({ kind: 'refused', code: 'NOT_ACTIVE' });
  });

  it('are read as another once merged into it, along a chain too', () => {
    const merged = after(mergeFault(TWO, 'DT-X01', 'DT-X02'));
    const chained = after(mergeFault(merged, 'DT-X02', 'DT-06'));
    expect([readAs(chained, 'DT-X01'), readAs(chained, 'DT-X02'), readAs(chained, 'DT-06')]).toEqual(
      Array.from({ length: 3 }, () => 'DT-06'),
    );
    expect(codesReadAs(chained, 'DT-06')).toEqual(['DT-06', 'DT-X01', 'DT-X02']);
  });

  it('keep old notes to themselves when split', () => {
    const split = after(splitFault(TWO, 'DT-X01', [draft('Eyes down'), draft('Eyes shut')]));
    expect(split.changes).toEqual([{ kind: 'split', code: 'DT-X01', into: ['DT-X03', 'DT-X04'] }]);
    expect(readAs(split, 'DT-X01')).toBe('DT-X01');
    expect([isActive(split, 'DT-X01'), isActive(split, 'DT-X03')]).toEqual([false, true]);
  });

  it.each<[string, VocabularyResult]>([
    ['UNKNOWN_CODE', retireFault(TWO, 'DT-X09')],
    ['UNKNOWN_CODE', mergeFault(TWO, 'DT-X01', 'DT-99')],
    ['BUILT_IN', renameFault(TWO, 'DT-04', 'Other')],
    ['BUILT_IN', mergeFault(TWO, 'DT-04', 'DT-X01')],
    ['NOT_BUILT_IN', hideFault(TWO, 'DT-X01')],
    ['NOT_ACTIVE', mergeFault(after(retireFault(TWO, 'DT-X02')), 'DT-X01', 'DT-X02')],
    ['OTHER_EVENT', mergeFault(TWO, 'DT-X01', 'SP-01')],
    ['OTHER_EVENT', splitFault(TWO, 'DT-X01', [draft('A'), draft('B', { event: 'shot' })])],
    ['PHASE_NOT_OF_EVENT', defineFault(TWO, draft('Late', { phase: 'CROSS' }))],
    ['NAME_MISSING', defineFault(TWO, draft('   '))],
    ['NAME_TAKEN', defineFault(TWO, draft('eyes DOWN'))],
    ['NAME_TAKEN', renameFault(TWO, 'DT-X02', 'Eyes down')],
    ['INTO_ITSELF', mergeFault(TWO, 'DT-X01', 'DT-X01')],
    ['TOO_FEW_PARTS', splitFault(TWO, 'DT-X01', [draft('A')])],
  ])('are refused a change: %s', (code, result) => {
    expect(result).toMatchObject({ kind: 'refused', code, sentence: expect.stringMatching(/\.$/) });
  });
});

describe('what a coach is offered', () => {
  const offer = { event: 'discus', variant: 'full-turn', stage: 'advanced' } as const;

  it('comes in the order of the throw, own beside built-in', () => {
    const { taught, notTaughtYet } = offered(TWO, offer);
    expect(taught.length).toBe(33);
    expect(notTaughtYet).toEqual([]);
    expect(taught.map(({ phase }) => phase)).toEqual(taught.map(({ phase }) => phase).sort());
  });

  it('is less in the first weeks, and the rest is not taught yet', () => {
    const { taught, notTaughtYet } = offered(TWO, { ...offer, stage: 'first-weeks' });
    expect(taught.map(({ code }) => code)).toEqual(['DT-01', 'DT-02', 'DT-31']);
    expect(notTaughtYet.length).toBe(30);
  });

  it('is only what a standing throw has, for a standing throw', () => {
    const { taught } = offered(TWO, { ...offer, variant: 'standing' });
    expect(new Set(taught.map(({ phase }) => phase))).toEqual(new Set(['P5', 'P6']));
  });

  it('knows glide from rotation', () => {
    const codes = (variant: 'glide' | 'rotational'): string[] =>
      offered(TWO, { event: 'shot', variant, stage: 'advanced' }).taught.map(({ code }) => code);
    expect([codes('glide').includes('SP-11'), codes('glide').includes('SP-12')]).toEqual([true, false]);
    expect([codes('rotational').includes('SP-11'), codes('rotational').includes('SP-12')]).toEqual([
      false,
      true,
    ]);
  });

  it('leaves out what is hidden until it is shown again', () => {
    const hidden = after(hideFault(TWO, 'DT-19'));
    const offers = (vocabulary: Vocabulary): boolean =>
      offered(vocabulary, offer).taught.some(({ code }) => code === 'DT-19');
    expect([offers(hidden), offers(after(showFault(hidden, 'DT-19')))]).toEqual([false, true]);
    expect(definitionOf(hidden, 'DT-19')?.name).toBe('No high point before delivery');
  });
});
