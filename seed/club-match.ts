import type { Client } from './client.js';
import { idOf } from './ids.js';
import { CLUBS } from './people.js';

/*
 * What makes an afternoon of single events a match of clubs: how places count, and the relay that was run beside.
 * Its times were read off a board and entered by hand.
 */

const [TARNWICK, SALTMARSH, ELDER_VALE, QUARRY_LANE] = CLUBS;

const RELAY = [
  { bib: 'TH', club: TARNWICK, place: 1, time: '49.31' },
  { bib: 'EV', club: ELDER_VALE, place: 2, time: '49.87' },
  { bib: 'QL', club: QUARRY_LANE, place: 3, time: '51.02' },
  { bib: 'SM', club: SALTMARSH, status: 'DQ' },
];

/** Scores the meet over all events, at most three of a club in each; level clubs are parted by their places. */
export async function makeMatch(director: Client, meetId: string): Promise<void> {
  await director.call(
    'meetScoringSet',
    { meetId, preset: 'SIX_PLACES', scorersPerClub: 3, nonScorers: 'HOLD' },
    'scoring { revision }',
  );
  await director.call(
    'enteredResultSet',
    {
      id: idOf('4 x 100 m women'),
      meetId,
      title: '4 x 100 m, women',
      isRelay: true,
      categorySex: 'W',
      lines: RELAY,
    },
    'result { id }',
  );
}
