import { line, type DemoCompetition } from './competition.js';
import { HAMMER_A, HAMMER_B, HAMMER_FINAL } from './hammer.js';
import { HEPTATHLON_SHOT } from './heptathlon.js';
import { JAVELIN_VETERANS } from './javelin-group.js';

/**
 * The demonstration meet. Cells are those of a field card; `X RIM` is a failure with its reason. Of a high jump they
 * stand below its heights.
 */
export const MEET = {
  name: 'Heron Field Throws and Jumps',
  venue: 'Heron Field',
  startsOn: '2026-05-16',
  endsOn: '2026-05-17',
  timeZone: 'Europe/London',
  rules: 'WA',
} as const;

export const SHOT: DemoCompetition = {
  title: 'Shot, girls U14, 3 kg',
  input: {
    event: 'SHOT',
    categorySex: 'W',
    categoryAge: 'U14',
    implementGrams: 3000,
    startsAt: '2026-05-16T10:00:00Z',
    plan: { rounds: 4, cuts: [], reorderAfter: [] },
  },
  lines: [
    line('Wenna Oakfold', '7.42', '7.80', 'X BOARD', '7.61'),
    line('Isolde Marrick', '8.05', '7.66', '8.31', '7.90'),
    line('Petra Lindqvale', 'X RELEASE', 'X EXIT', 'X EXIT', 'X EARLY'),
    line('Noor Hazelby', '7.61', '-', '7.42', '7.80'),
    { who: 'Tamsin Brackwater', cells: [], didNotStart: true },
    line('Juno Ferrowhill', '6.95', '7.20', 'X TIME', '7.33'),
  ],
  signedOff: true,
};

export const DISCUS: DemoCompetition = {
  title: 'Discus, women',
  input: {
    event: 'DISCUS',
    categorySex: 'W',
    implementGrams: 1000,
    startsAt: '2026-05-16T13:30:00Z',
  },
  lines: [
    line('Hedda Marlowick', '31.84', 'X SECTOR', '33.20', '34.02'),
    line('Maren Thistlewood', '47.90', '48.62', 'X RIM'),
    line('Coralie Dunmere', 'X SECTOR', '29.75', 'X EXIT'),
    line('Odile Carrowbridge', '46.11', 'X EARLY', '48.62'),
    line('Beatrix Holmquarry', '38.40', '39.02', '37.66', '38.91'),
    line('Linnea Stoneacre', '41.25', 'X TIME', 'r'),
    line('Sunniva Peverell-Ash', '44.08', '45.37', '43.90'),
    line('Yara Winterbeck', '35.12', 'X RIM', '36.48', '36.02'),
    line('Anouk Fellgate', '40.33', '-', '42.17', 'X EXIT'),
  ],
};

export const LONG_JUMP: DemoCompetition = {
  title: 'Long jump, men U20',
  input: { event: 'LONG_JUMP', categorySex: 'M', categoryAge: 'U20', startsAt: '2026-05-16T11:15:00Z' },
  lines: [
    line('Tobin Ashgrove', '6.48 +1.1', 'X PLANE', '6.71 +2.4', '6.55 +0.3', '6.60 +1.8', 'X PLANE'),
    line('Emeka Larkfield', '6.62 -0.4', '6.58 +0.9', 'X SIDE', '6.66 +1.6', '-', '6.59 +0.0'),
    line('Rafe Underholm', '6.12 +0.2', '6.30 +1.3', '6.28 NWI', 'X PITEXIT', '6.34 +2.0', '6.25 +1.0'),
    line('Stellan Brightmoor', 'X PLANE', '5.94 +0.7', '6.03 +1.9', '5.88 -1.2', 'X LANDSIDE', '6.01'),
    line(
      'Kit Wexcombe',
      '6.30 +0.8',
      '6.12 -0.1',
      '6.28 +1.4',
      '6.34 +0.6',
      '6.25 +2.1',
      'X GROUND 6.64 +0.8',
    ),
  ],
};

export const JAVELIN: DemoCompetition = {
  title: 'Javelin, boys U18, 700 g',
  input: {
    event: 'JAVELIN',
    categorySex: 'M',
    categoryAge: 'U18',
    implementGrams: 700,
    startsAt: '2026-05-16T15:30:00Z',
  },
  lines: [
    { who: 'Milo Grantley-Fen', cells: [], flight: 'A' },
    { who: 'Oskar Redmire', cells: [], flight: 'A' },
    { who: 'Leif Cobblestow', cells: [], flight: 'B' },
    { who: 'Idris Farrowdale', cells: [], flight: 'B' },
  ],
};

export const HIGH_JUMP: DemoCompetition = {
  title: 'High jump, women U20',
  input: { event: 'HIGH_JUMP', categorySex: 'W', categoryAge: 'U20', startsAt: '2026-05-16T14:00:00Z' },
  heights: ['1.40', '1.45', '1.50', '1.54', '1.57', '1.60', '1.62'],
  lines: [
    { ...line('Liv Heronsgate', '-', 'O', 'O', 'XO', 'O', 'XXX'), jumpOff: ['X', 'X'] },
    line('Greta Pellowick', 'XO', 'O', 'XXX'),
    { ...line('Marit Cinderfold', 'O', 'O', 'XO', 'O', 'O', 'XXX'), jumpOff: ['X', 'O'] },
    line('Elowen Saltbeck', 'O', 'XO', 'O', 'XO', 'O', 'X-', 'XX'),
    line('Runa Ashenbury', 'XXX'),
    line('Ines Harrowmere', '-', 'O', 'O', 'O', 'XO', 'XXX'),
  ],
};

export const COMPETITIONS = [
  SHOT,
  DISCUS,
  LONG_JUMP,
  JAVELIN,
  HIGH_JUMP,
  HAMMER_A,
  HAMMER_B,
  HAMMER_FINAL,
  HEPTATHLON_SHOT,
  JAVELIN_VETERANS,
] as const;
