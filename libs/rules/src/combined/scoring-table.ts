/** Whose scoring formulas: the tables for men and for women differ in every constant. */
export type ScoringSex = 'M' | 'W';

/** An event that the combined-events formulas score. */
export type CombinedEventCode = TrackEventCode | CombinedFieldEventCode;
export type TrackEventCode =
  | '60m'
  | '100m'
  | '200m'
  | '400m'
  | '800m'
  | '1000m'
  | '1500m'
  | '60mh'
  | '100mh'
  | '110mh';
export type CombinedFieldEventCode =
  | 'high-jump'
  | 'pole-vault'
  | 'long-jump'
  | 'shot'
  | 'discus'
  | 'hammer'
  | 'javelin'
  | 'weight';

/**
 * The formula of one event, points = ⌊a·x^c⌋, exact. The constants stand as decimals, as they are published.
 * `x`: for a race b − seconds, for a jump centimetres − b, for a throw metres − b.
 */
export interface Formula {
  readonly a: string;
  readonly b: string;
  readonly c: string;
}

/** In which unit of the performance an event's formula counts. */
export type FormulaUnit = 'seconds' | 'centimetres' | 'metres';

type Formulas = Readonly<Partial<Record<CombinedEventCode, Formula>>>;

/**
 * The scoring tables for combined events in force since 1985, as two public tables of the coefficients give them
 * (read; those tables agree, one of them states the women's jumps in metres).
 */
export const FORMULAS: Readonly<Record<ScoringSex, Formulas>> = {
  M: {
    '60m': { a: '58.0150', b: '11.5', c: '1.81' },
    '100m': { a: '25.4347', b: '18', c: '1.81' },
    '200m': { a: '5.8425', b: '38', c: '1.81' },
    '400m': { a: '1.53775', b: '82', c: '1.81' },
    '1000m': { a: '0.08713', b: '305.5', c: '1.85' },
    '1500m': { a: '0.03768', b: '480', c: '1.85' },
    '60mh': { a: '20.5173', b: '15.5', c: '1.92' },
    '110mh': { a: '5.74352', b: '28.5', c: '1.92' },
    'high-jump': { a: '0.8465', b: '75', c: '1.42' },
    'pole-vault': { a: '0.2797', b: '100', c: '1.35' },
    'long-jump': { a: '0.14354', b: '220', c: '1.40' },
    shot: { a: '51.39', b: '1.5', c: '1.05' },
    discus: { a: '12.91', b: '4', c: '1.10' },
    hammer: { a: '13.0449', b: '7', c: '1.05' },
    javelin: { a: '10.14', b: '7', c: '1.08' },
    weight: { a: '47.8338', b: '1.5', c: '1.05' },
  },
  W: {
    '60m': { a: '46.0849', b: '13.0', c: '1.81' },
    '100m': { a: '17.8570', b: '21', c: '1.81' },
    '200m': { a: '4.99087', b: '42.5', c: '1.81' },
    '400m': { a: '1.34285', b: '91.7', c: '1.81' },
    '800m': { a: '0.11193', b: '254', c: '1.88' },
    '1000m': { a: '0.07068', b: '337', c: '1.88' },
    '1500m': { a: '0.02883', b: '535', c: '1.88' },
    '60mh': { a: '20.0479', b: '17.0', c: '1.835' },
    '100mh': { a: '9.23076', b: '26.7', c: '1.835' },
    'high-jump': { a: '1.84523', b: '75', c: '1.348' },
    'pole-vault': { a: '0.44125', b: '100', c: '1.35' },
    'long-jump': { a: '0.188807', b: '210', c: '1.41' },
    shot: { a: '56.0211', b: '1.5', c: '1.05' },
    discus: { a: '12.3311', b: '3', c: '1.10' },
    hammer: { a: '17.5458', b: '6', c: '1.05' },
    javelin: { a: '15.9803', b: '3.8', c: '1.04' },
    weight: { a: '52.1403', b: '1.5', c: '1.05' },
  },
};

const JUMPS: readonly CombinedEventCode[] = ['high-jump', 'pole-vault', 'long-jump'];
const THROWS: readonly CombinedEventCode[] = ['shot', 'discus', 'hammer', 'javelin', 'weight'];

export function formulaUnit(event: CombinedEventCode): FormulaUnit {
  if (JUMPS.includes(event)) return 'centimetres';
  return THROWS.includes(event) ? 'metres' : 'seconds';
}

/** Whether the event is a race, whose mark is a time. */
export function isTrackEvent(event: CombinedEventCode): event is TrackEventCode {
  return formulaUnit(event) === 'seconds';
}
