import { INJURY_CAUTION, isArmOrShoulder, SEGMENTS } from './fault-definition.js';
import { BUILT_IN_FAULTS } from './built-in.js';
import { INSTANTS, phaseOrder, phasesOf } from './phases.js';
import { STAGES } from './stage.js';
import { STYLES, TECHNIQUE_EVENT_CODES, TECHNIQUE_EVENTS, VARIANTS } from './technique-event.js';

const TEXTS = BUILT_IN_FAULTS.flatMap(({ code, name, looksLike, mayGoWith, point }) =>
  [name, looksLike, mayGoWith, point].map((text) => [code, text] as const),
);

describe('the built-in faults', () => {
  it('are as many as the trade names by event', () => {
    const counts = TECHNIQUE_EVENT_CODES.map(
      (event) => BUILT_IN_FAULTS.filter((fault) => fault.event === event).length,
    );
    expect(counts).toEqual([31, 12, 10, 10, 8, 10, 5]);
  });

  it('have one code each, counted through by event', () => {
    for (const event of TECHNIQUE_EVENT_CODES) {
      const codes = BUILT_IN_FAULTS.filter((fault) => fault.event === event).map(({ code }) => code);
      const expected = codes.map((_, at) => `${TECHNIQUE_EVENTS[event]}-${String(at + 1).padStart(2, '0')}`);
      expect([...codes].sort()).toEqual(expected);
    }
  });

  it('lie in a phase of their event, in at least one of its variants', () => {
    const lost = BUILT_IN_FAULTS.filter(({ event, phase, variants = VARIANTS[event] }) =>
      variants.every((variant) => phasesOf(event, variant).every(({ code }) => code !== phase)),
    );
    expect(lost.map(({ code }) => code)).toEqual([]);
  });

  it('use only known segments, instants and stages', () => {
    for (const { segment, instant, relevantFrom } of BUILT_IN_FAULTS) {
      expect(SEGMENTS).toContain(segment);
      expect(STAGES).toContain(relevantFrom);
      if (instant !== undefined) expect(INSTANTS).toHaveProperty(instant);
    }
  });

  it('name their opposite, which names them', () => {
    const pairs = BUILT_IN_FAULTS.flatMap(({ code, opposite }) =>
      opposite === undefined ? [] : [[code, opposite]],
    );
    expect(pairs).toEqual([
      ['DT-29', 'DT-30'],
      ['DT-30', 'DT-29'],
    ]);
  });

  it('carry the caution where an arm is at risk, in the fixed words', () => {
    const cautioned = BUILT_IN_FAULTS.filter(({ caution }) => caution !== null);
    expect(cautioned.map(({ code }) => code)).toEqual(['DT-21', 'SP-02', 'JT-01']);
    expect(cautioned.every(({ caution }) => caution === INJURY_CAUTION)).toBe(true);
    expect(cautioned.every(isArmOrShoulder)).toBe(true);
  });

  it('say near which of them fouls are plausible', () => {
    const near = BUILT_IN_FAULTS.filter(({ nearFouls }) => nearFouls).map(({ code }) => code);
    expect([...near].sort()).toEqual(
      ['DT-03', 'DT-07', 'DT-09', 'DT-12', 'DT-23', 'DT-26', 'DT-27', 'DT-28', 'DT-31']
        .concat(['HT-08', 'HT-10', 'JT-10', 'LJ-02', 'SP-01', 'SP-10', 'SP-12', 'TJ-02'])
        .sort(),
    );
  });
});

describe('stored words', () => {
  it('know no left and right', () => {
    expect(TEXTS.filter(([, text]) => /\b(left|right)\b/i.test(text))).toEqual([]);
    expect(Object.values(INSTANTS).filter((text) => /\b(left|right)\b/i.test(text))).toEqual([]);
  });

  it('use no other placeholder than the two sides', () => {
    expect(TEXTS.filter(([, text]) => /[{}]/.test(text.replace(/\{(throw|block)\}/g, '')))).toEqual([]);
  });

  it('say what goes with a fault, not what it brings about', () => {
    const causal =
      /\b(cause[sd]?|because|costs?|leads? to|results? in|due to|makes?|therefore|loses|reduces)\b/i;
    expect(BUILT_IN_FAULTS.filter(({ mayGoWith }) => causal.test(mayGoWith)).map(({ code }) => code)).toEqual(
      [],
    );
  });

  it('tell children what to do, not what is wrong', () => {
    const negative = /\b(don't|do not|never|no|not|wrong|bad|fault|error|mistake|stop (doing|turning))\b/i;
    expect(BUILT_IN_FAULTS.filter(({ point }) => negative.test(point)).map(({ code }) => code)).toEqual([]);
  });

  it('hold no style for a fault', () => {
    const styles = Object.values(STYLES).flat() as readonly string[];
    const named = BUILT_IN_FAULTS.filter(({ name }) => styles.includes(name.toLowerCase()));
    expect(named).toEqual([]);
  });
});

describe('phases', () => {
  it('of a discus throw join at their instants', () => {
    const phases = phasesOf('discus', 'full-turn');
    phases.slice(1).forEach((phase, at) => expect(phase.from).toBe(phases[at]?.to));
    expect(phases.map(({ code }) => code)).toEqual(['P0', 'P1', 'P2', 'P3', 'P4', 'P5', 'P6']);
  });

  it('of a standing throw are delivery and recovery', () => {
    for (const variant of ['standing', 'step-in', 'half-turn'] as const) {
      expect(phasesOf('discus', variant).map(({ code }) => code)).toEqual(['P5', 'P6']);
    }
    expect(phasesOf('javelin', 'standing').map(({ code }) => code)).toEqual(['DELIVERY', 'RECOVERY']);
  });

  it('of the glide lack the single support at the back', () => {
    expect(phasesOf('shot', 'glide').map(({ code }) => code)).not.toContain('P2');
    expect(phaseOrder('shot', 'P2')).toBe(2);
    expect(phaseOrder('shot', 'nowhere')).toBe(-1);
  });
});
