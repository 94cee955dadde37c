import type { CompetitionRow, MeetRow } from '#persistence';
import type { MeetBib } from '../../bibs/bibs.service.js';
import type { Wording } from '../labels/labels.js';
import type { PrintedDocument } from '../printed-document.js';
import { column } from './head.js';

/** What is needed to print the bibs of a meet. */
export interface PrintedBibs {
  readonly meet: MeetRow;
  readonly competitions: readonly CompetitionRow[];
  readonly bibs: readonly MeetBib[];
  readonly wording: Wording;
}

/** For each club whose bib is whose, to hand them out by. `whole`: whole names, for the crew. */
export function bibList({ meet, competitions, bibs, wording }: PrintedBibs, whole: boolean): PrintedDocument {
  const { labels } = wording;
  const clubs = [...new Set(bibs.map(({ wearer }) => wearer.club))].toSorted(byName);
  return {
    title: `${labels.bibs}: ${meet.name}`,
    lines: [`${labels.venue}: ${meet.venue === '' ? '–' : meet.venue} · ${wording.day(meet.startsOn)}`],
    isLandscape: false,
    tables: clubs.map((club) => ({
      caption: club ?? '–',
      isForWriting: false,
      columns: [
        column(labels.bib, 1, 'right'),
        column(labels.name, 4, 'left', true),
        column(labels.event, 6),
      ],
      rows: bibs
        .filter(({ wearer }) => wearer.club === club)
        .map((one) => [one.bib, nameOf(one, whole), titlesOf(one, competitions)]),
    })),
    notes: bibs.length === 0 ? [labels.nobody] : [],
    signatures: [],
    foot: meet.name,
  };
}

/** A card for each, to be worn: the name as the public sees it. */
export function bibCards({ meet, bibs, wording }: PrintedBibs): PrintedDocument {
  return {
    title: `${wording.labels.bibs}: ${meet.name}`,
    ...{ lines: [], isLandscape: true, tables: [], notes: [], signatures: [], foot: meet.name },
    cards: bibs.map((one) => {
      const [line] = one.lines;
      // Where only the bib is shown there is no name to print.
      const name = line!.displayName === `#${line!.competitor.bib}` ? null : line!.displayName;
      return { number: one.bib, lines: [name, one.wearer.club ?? meet.name].flatMap((text) => text ?? []) };
    }),
  };
}

function nameOf({ lines: [line] }: MeetBib, whole: boolean): string {
  return whole ? (line!.name ?? line!.displayName) : line!.displayName;
}

function titlesOf({ bib, lines }: MeetBib, competitions: readonly CompetitionRow[]): string {
  const own = new Set(
    lines.filter(({ competitor }) => competitor.bib === bib).map((line) => line.competitor.competitionId),
  );
  return competitions
    .filter(({ id }) => own.has(id))
    .map(({ title }) => title)
    .join(', ');
}

/** Who competes for no club comes last. */
function byName(a: string | null, b: string | null): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  return a.localeCompare(b, 'en');
}
