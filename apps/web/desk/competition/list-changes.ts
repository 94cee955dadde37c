import { isAboutList } from '#rules';
import { idOf, keyOf } from '../../offline/object-ids.js';
import type { CallLine, CompetitionHead } from './head.js';
import type { Body } from './request.js';

/** The start list as entries that the server has not answered yet make it. The same head when none is about it. */
export function headWith(head: CompetitionHead, bodies: readonly Body[]): CompetitionHead {
  const changes = bodies.filter(({ kind }) => isAboutList(kind));
  if (changes.length === 0) return head;
  return { ...head, callList: changes.reduce(listAfter, head.callList) };
}

function listAfter(list: readonly CallLine[], body: Body): readonly CallLine[] {
  switch (body.kind) {
    case 'late-entry':
      return list.some((line) => isOf(line, body.competitor)) ? list : [...list, newLine(list, body)];
    case 'bibs': {
      const bibs = new Map(body.bibs.map(({ competitor, bib }) => [competitor, bib]));
      return list.map((line) => withCompetitor(line, { bib: bibs.get(keyOf(line.competitor.id)) }));
    }
    case 'flight':
      return inFlight(list, body.competitor, body.flight);
    default:
      return list;
  }
}

function isOf({ competitor }: CallLine, key: string): boolean {
  return keyOf(competitor.id) === key;
}

function withCompetitor(line: CallLine, change: { readonly bib?: string | undefined }): CallLine {
  const { bib = line.competitor.bib } = change;
  return { ...line, competitor: { ...line.competitor, bib } };
}

/** As the server will have it: last of all, in the last flight where none is named. */
function newLine(
  list: readonly CallLine[],
  { competitor: key, bib, flight, listedName, listedClub }: Extract<Body, { kind: 'late-entry' }>,
): CallLine {
  const flights = list.flatMap(({ competitor }) => competitor.flight ?? []);
  const competitor = {
    id: idOf('Competitor', key),
    bib: list.some((line) => line.competitor.bib === bib) ? `${bib}/2` : bib,
    displayName: listedName,
    club: listedClub,
    flight: flights.find((one) => one === flight) ?? flights.at(-1) ?? null,
    isGuest: false,
    implementGrams: null,
  };
  return { name: listedName, handedness: null, isUnmatched: true, alsoEntered: [], competitor };
}

/** Last of the flight. */
function inFlight(list: readonly CallLine[], key: string, flight: string): readonly CallLine[] {
  const line = list.find((one) => isOf(one, key));
  if (!line) return list;
  const others = list.filter((one) => one !== line);
  const after = 1 + others.findLastIndex(({ competitor }) => competitor.flight === flight);
  const moved = { ...line, competitor: { ...line.competitor, flight } };
  return [...others.slice(0, after), moved, ...others.slice(after)];
}
