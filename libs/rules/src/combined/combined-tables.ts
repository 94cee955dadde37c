import type { CombinedEventCode, ScoringSex } from './scoring-table.js';

/** A combined events competition: whose formulas score it, and its events in the order in which they are held. */
export interface CombinedTable {
  readonly scoredBy: ScoringSex;
  readonly events: readonly CombinedEventCode[];
  readonly indoor: boolean;
}

export const COMBINED_TABLE_CODES = [
  'decathlon',
  'heptathlon',
  'heptathlon-indoor',
  'pentathlon-indoor',
  'decathlon-women',
] as const;
export type CombinedTableCode = (typeof COMBINED_TABLE_CODES)[number];

/** The programmes (WA TR39; decathlon and heptathlon read, the others read in part). */
export const COMBINED_TABLES: Readonly<Record<CombinedTableCode, CombinedTable>> = {
  decathlon: {
    scoredBy: 'M',
    indoor: false,
    events: [
      '100m',
      'long-jump',
      'shot',
      'high-jump',
      '400m',
      '110mh',
      'discus',
      'pole-vault',
      'javelin',
      '1500m',
    ],
  },
  heptathlon: {
    scoredBy: 'W',
    indoor: false,
    events: ['100mh', 'high-jump', 'shot', '200m', 'long-jump', 'javelin', '800m'],
  },
  'heptathlon-indoor': {
    scoredBy: 'M',
    indoor: true,
    events: ['60m', 'long-jump', 'shot', 'high-jump', '60mh', 'pole-vault', '1000m'],
  },
  'pentathlon-indoor': {
    scoredBy: 'W',
    indoor: true,
    events: ['60mh', 'high-jump', 'shot', 'long-jump', '800m'],
  },
  'decathlon-women': {
    scoredBy: 'W',
    indoor: false,
    events: [
      '100m',
      'discus',
      'pole-vault',
      'javelin',
      '400m',
      '100mh',
      'long-jump',
      'shot',
      'high-jump',
      '1500m',
    ],
  },
};

/**
 * The throws pentathlon of one sex in its order: hammer, shot, discus, javelin, weight (WMA; that it exists was read,
 * the order is from memory). Masters multiply their marks by age factors first, which the caller would have to give.
 */
export const THROWS_PENTATHLON: Readonly<Record<ScoringSex, CombinedTable>> = {
  M: throwsPentathlon('M'),
  W: throwsPentathlon('W'),
};

function throwsPentathlon(scoredBy: ScoringSex): CombinedTable {
  return { scoredBy, indoor: false, events: ['hammer', 'shot', 'discus', 'javelin', 'weight'] };
}
