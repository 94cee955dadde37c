import type { Client } from './client.js';
import { idOf } from './ids.js';
import { SHOT } from './meet.js';

/** What the clubs had before, as a spreadsheet would write it. */
const CLUB_RECORDS = [
  'event,mark,wind,implement_g,sex,age,date,place,club',
  'discus,48.10,,1000,W,,1996-07-13,Saltmarsh,Tarnwick Harriers',
  'discus,49.35,,1000,W,,2003-06-21,Elder Vale,Saltmarsh AC',
  'shot,8.12,,3000,W,U14,2011-05-14,Heron Field,Saltmarsh AC',
  'long-jump,6.81,+1.4,,M,U20,2015-08-02,Quarry Lane,Elder Vale AC',
  'high-jump,1.60,,,W,U20,2009-05-30,Heron Field,Tarnwick Harriers',
].join('\n');

/** What was best at the meet in earlier years. */
const MEET_RECORDS = [
  'event,mark,wind,implement_g,sex,age,date',
  'discus,47.95,,1000,W,,2019-05-18',
  'shot,8.60,,3000,W,U14,2018-05-19',
  'long-jump,6.74,+0.8,,M,U20,2022-05-14',
].join('\n');

/** Records begin with what the clubs and the meet have on paper. */
export async function enterRecords(director: Client, meetId: string): Promise<void> {
  const lists = {
    'records of the clubs': { text: CLUB_RECORDS },
    'records of the meet': { text: MEET_RECORDS },
  };
  for (const [name, csv] of Object.entries(lists)) {
    const input = { id: idOf(name), meetId: name === 'records of the meet' ? meetId : null, csv };
    await director.call('startingMarksImport', input, 'startingMarks { line }');
  }
}

const RECORD = { who: 'Isolde Marrick', round: 3, mark: '8.31' };

/** The referee ratifies one: the shot was weighed again, and the put was measured with a steel tape. */
export async function ratifyShot(referee: Client, competitionId: string): Promise<void> {
  const input = {
    id: idOf(`${SHOT.title}: club record`),
    competitionId,
    attemptId: idOf(`${SHOT.title}: ${RECORD.who}, round ${RECORD.round}`),
    kind: 'CLUB_RECORD',
    decision: 'RATIFIED',
    mark: RECORD.mark,
    recheck: 'PASSED',
    measuring: 'STEEL_TAPE',
    reason: 'Weighed again after the put, measured twice',
  };
  await referee.call('recordRatify', input, 'decision { id }');
}
