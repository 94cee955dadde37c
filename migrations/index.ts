import { Vocabulary1795612700000 } from './1795612700000-vocabulary.js';
import { ClubsAndAthletes1795612800000 } from './1795612800000-clubs-and-athletes.js';
import { MeetsAndCompetitions1795612800001 } from './1795612800001-meets-and-competitions.js';
import { Journal1795612800002 } from './1795612800002-journal.js';
import { OfficialResults1795612800003 } from './1795612800003-official-results.js';
import { ApplicationRole1795612800004 } from './1795612800004-application-role.js';
import { MeetScoring1795612900000 } from './1795612900000-meet-scoring.js';
import { EnteredResults1795612900001 } from './1795612900001-entered-results.js';
import { CombinedEvents1795613000000 } from './1795613000000-combined-events.js';
import { CombinedJournal1795613000001 } from './1795613000001-combined-journal.js';
import { Qualifications1795613000100 } from './1795613000100-qualifications.js';
import { Draws1795613000101 } from './1795613000101-draws.js';
import { Implements1795613000200 } from './1795613000200-implements.js';
import { CheckIns1795613000201 } from './1795613000201-check-ins.js';
import { Records1795613000300 } from './1795613000300-records.js';
import { CallingGroups1795613000400 } from './1795613000400-calling-groups.js';
import { Categories1795613000401 } from './1795613000401-categories.js';
import { ClubTies1795613000500 } from './1795613000500-club-ties.js';
import { People1795613000600 } from './1795613000600-people.js';
import { Sessions1795613000601 } from './1795613000601-sessions.js';
import { DeviceLinks1795613000602 } from './1795613000602-device-links.js';
import { SecondPerson1795613000603 } from './1795613000603-second-person.js';
import { Safety1795613000700 } from './1795613000700-safety.js';
import { ImplementsInTheJournal1795613000720 } from './1795613000720-implements-in-the-journal.js';
import { Timetables1795613000800 } from './1795613000800-timetables.js';
import { AtTheCircle1795613001000 } from './1795613001000-at-the-circle.js';
import { Notebook1795613001200 } from './1795613001200-notebook.js';
import { EntriesAndTables1795613001300 } from './1795613001300-entries-and-tables.js';
import { Protests1795613001310 } from './1795613001310-protests.js';
import { Privacy1795613001500 } from './1795613001500-privacy.js';
import { CombinedSecondPerson1795613001710 } from './1795613001710-combined-second-person.js';

/** In the order in which they run. One that has been merged is never edited. */
import { TrialsInBrief1795613000900 } from './1795613000900-trials-in-brief.js';
import { WindDevices1795613001600 } from './1795613001600-wind-devices.js';
export const MIGRATIONS = [
  Vocabulary1795612700000,
  ClubsAndAthletes1795612800000,
  MeetsAndCompetitions1795612800001,
  Journal1795612800002,
  OfficialResults1795612800003,
  ApplicationRole1795612800004,
  MeetScoring1795612900000,
  EnteredResults1795612900001,
  CombinedEvents1795613000000,
  CombinedJournal1795613000001,
  Qualifications1795613000100,
  Draws1795613000101,
  Implements1795613000200,
  CheckIns1795613000201,
  Records1795613000300,
  CallingGroups1795613000400,
  Categories1795613000401,
  ClubTies1795613000500,
  People1795613000600,
  Sessions1795613000601,
  DeviceLinks1795613000602,
  SecondPerson1795613000603,
  Safety1795613000700,
  ImplementsInTheJournal1795613000720,
  Timetables1795613000800,
  TrialsInBrief1795613000900,
  AtTheCircle1795613001000,
  Notebook1795613001200,
  EntriesAndTables1795613001300,
  Protests1795613001310,
  Privacy1795613001500,
  WindDevices1795613001600,
  CombinedSecondPerson1795613001710,
];
