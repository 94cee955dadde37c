export const CLUBS = ['Tarnwick Harriers', 'Saltmarsh AC', 'Elder Vale AC', 'Quarry Lane Striders'] as const;
export type ClubName = (typeof CLUBS)[number];

/** An invented person. Names are the key: there are no two alike. */
export interface Person {
  readonly given: string;
  readonly family: string;
  readonly sex: 'W' | 'M';
  readonly born: string;
  readonly club: ClubName | null;
}

const person = (name: string, sex: Person['sex'], born: string, club: ClubName | null): [string, Person] => {
  const [given = '', family = ''] = name.split(' ');
  return [name, { given, family, sex, born, club }];
};

const [TARNWICK, SALTMARSH, ELDER_VALE, QUARRY_LANE] = CLUBS;

export const PEOPLE: Readonly<Record<string, Person>> = Object.fromEntries([
  // Children.
  person('Wenna Oakfold', 'W', '2013-02-11', TARNWICK),
  person('Isolde Marrick', 'W', '2013-07-30', SALTMARSH),
  person('Petra Lindqvale', 'W', '2014-01-05', ELDER_VALE),
  person('Noor Hazelby', 'W', '2013-11-19', QUARRY_LANE),
  person('Tamsin Brackwater', 'W', '2014-04-23', TARNWICK),
  person('Juno Ferrowhill', 'W', '2013-09-02', SALTMARSH),
  // Juniors and seniors of the discus.
  person('Maren Thistlewood', 'W', '1994-03-17', TARNWICK),
  person('Odile Carrowbridge', 'W', '1998-12-08', SALTMARSH),
  person('Sunniva Peverell-Ash', 'W', '2001-06-21', ELDER_VALE),
  person('Beatrix Holmquarry', 'W', '2008-05-14', QUARRY_LANE),
  person('Yara Winterbeck', 'W', '2007-10-03', TARNWICK),
  person('Linnea Stoneacre', 'W', '1989-08-27', ELDER_VALE),
  person('Coralie Dunmere', 'W', '2008-02-29', SALTMARSH),
  person('Anouk Fellgate', 'W', '1996-01-12', null),
  person('Hedda Marlowick', 'W', '2009-04-06', QUARRY_LANE),
  // Long jumpers.
  person('Tobin Ashgrove', 'M', '2008-09-09', TARNWICK),
  person('Emeka Larkfield', 'M', '2007-03-28', ELDER_VALE),
  person('Rafe Underholm', 'M', '2008-12-01', SALTMARSH),
  person('Stellan Brightmoor', 'M', '2009-02-17', QUARRY_LANE),
  person('Kit Wexcombe', 'M', '2007-07-07', ELDER_VALE),
  // Javelin throwers.
  person('Milo Grantley-Fen', 'M', '2009-10-15', SALTMARSH),
  person('Oskar Redmire', 'M', '2010-03-03', TARNWICK),
  person('Leif Cobblestow', 'M', '2009-06-26', ELDER_VALE),
  person('Idris Farrowdale', 'M', '2010-08-18', QUARRY_LANE),
  person('Aldous Fernhollow', 'M', '1964-02-19', TARNWICK),
  person('Bertram Coldwick', 'M', '1961-09-05', SALTMARSH),
  // Hammer throwers.
  person('Corwin Hallowdene', 'M', '1997-02-24', TARNWICK),
  person('Piers Oxgate', 'M', '1993-10-11', SALTMARSH),
  person('Dunstan Merrowby', 'M', '2001-01-30', ELDER_VALE),
  person('Lorcan Thrushfield', 'M', '1999-06-18', QUARRY_LANE),
  person('Jory Pennycross', 'M', '2003-12-05', TARNWICK),
  person('Matthias Greywold', 'M', '1990-04-27', ELDER_VALE),
  person('Sorley Winterdale', 'M', '2000-08-09', SALTMARSH),
  person('Alban Quillhurst', 'M', '2002-11-16', null),
  // Of the heptathlon.
  person('Freya Lockmere', 'W', '2000-03-14', TARNWICK),
  person('Signe Oxbrow', 'W', '1997-09-28', SALTMARSH),
  person('Tilde Harrowgate', 'W', '2004-05-07', ELDER_VALE),
  person('Mabyn Quillfeather', 'W', '2007-12-30', QUARRY_LANE),
  person('Astrid Fenwhistle', 'W', '2002-07-19', TARNWICK),
  // High jumpers.
  person('Liv Heronsgate', 'W', '2007-05-09', TARNWICK),
  person('Marit Cinderfold', 'W', '2008-01-24', ELDER_VALE),
  person('Elowen Saltbeck', 'W', '2007-11-30', SALTMARSH),
  person('Ines Harrowmere', 'W', '2008-08-12', QUARRY_LANE),
  person('Greta Pellowick', 'W', '2009-03-20', SALTMARSH),
  person('Runa Ashenbury', 'W', '2009-06-02', null),
]);
