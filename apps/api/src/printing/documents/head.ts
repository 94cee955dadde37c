import type { CompetitionRow, MeetRow } from '#persistence';
import type { Wording } from '../labels/labels.js';
import type { PrintedColumn } from '../printed-document.js';

/** A competition with the meet that it belongs to, and the words to print it in. */
export interface Printed {
  readonly meet: MeetRow;
  readonly competition: CompetitionRow;
  readonly wording: Wording;
}

/** Event, category, place and time, rules: what stands on every paper of a competition. */
export function headOf({ meet, competition, wording }: Printed): string[] {
  const { labels } = wording;
  const at =
    competition.startsAt === null
      ? wording.day(meet.startsOn)
      : wording.moment(new Date(competition.startsAt));
  const grams = competition.implementGrams;
  const implement = grams === null ? '' : ` · ${labels.implement} ${gramsText(grams, wording)}`;
  return [
    `${meet.name} · ${labels.venue}: ${meet.venue === '' ? '–' : meet.venue} · ${at}`,
    `${labels.rules}: ${competition.rules} ${competition.edition}${implement}`,
  ];
}

export function gramsText(grams: number, { decimal }: Wording): string {
  if (grams < 1000) return `${grams} g`;
  return `${decimal((grams / 1000).toFixed(3).replace(/0{1,2}$/, ''))} kg`;
}

export function footOf({ meet, competition }: Printed): string {
  return `${meet.name} · ${competition.title}`;
}

export function column(
  title: string,
  share: number,
  align: PrintedColumn['align'] = 'left',
  isHeader = false,
): PrintedColumn {
  return isHeader ? { title, share, align, isHeader } : { title, share, align };
}
