import { formatMark } from '#rules';
import type { CompetitionRow } from '#persistence';
import { Injectable } from '@nestjs/common';
import { MeetsService } from '../meets/meets.service.js';
import { writeCsv, type CsvExportColumn } from '../platform/csv/csv-writer.js';
import { Database } from '../platform/database/database.js';
import type { Identity } from '../platform/identity/identity.js';
import { globalId } from '../platform/inputs/global-id.js';
import { rostersOf, type RosterLine } from '../platform/roster/roster.js';
import type { ENTRY_COLUMNS } from './entries-csv.js';

interface Line {
  readonly competition: CompetitionRow;
  readonly line: RosterLine;
  /** The title says which competition of the meet it is. */
  readonly isTitleEnough: boolean;
}

/** What is read in again as it was written out; the order is that of the rows here. */
const ENTRIES: Readonly<Record<keyof typeof ENTRY_COLUMNS, Omit<CsvExportColumn<Line>, 'name'>>> = {
  competition: {
    holds: 'text',
    of: ({ competition: { id, title }, isTitleEnough }) =>
      isTitleEnough ? title : globalId('Competition', id),
  },
  bib: { holds: 'number', of: ({ line }) => line.competitor.bib },
  family_name: { holds: 'text', of: ({ line }) => line.athlete?.familyName ?? null },
  given_name: { holds: 'text', of: ({ line }) => line.athlete?.givenName ?? null },
  listed_name: { holds: 'text', of: ({ line }) => line.competitor.listedName },
  sex: { holds: 'text', of: ({ line }) => line.athlete?.sex ?? null },
  born: { holds: 'text', of: ({ line }) => line.athlete?.birthDate ?? null },
  club: { holds: 'text', of: ({ line }) => line.club },
  seed_mark: { holds: 'number', of: seedMark },
  flight: { holds: 'text', of: ({ line }) => line.competitor.flight },
  guest: { holds: 'text', of: ({ line }) => (line.competitor.guest ? 'yes' : null) },
  implement_g: { holds: 'number', of: ({ line }) => line.competitor.implementGrams },
  athlete: {
    holds: 'text',
    of: ({ line }) => line.competitor.athleteId && globalId('Athlete', line.competitor.athleteId),
  },
};

function seedMark({ competition, line }: Line): string | null {
  const { seedMark: mark } = line.competitor;
  return mark === null ? null : formatMark(mark, competition.unit);
}

/** A start list for everybody; names as they may be shown to whoever asks. */
function startListColumns(whole: boolean): CsvExportColumn<Line>[] {
  return [
    { name: 'order', holds: 'number', of: ({ line }) => line.competitor.position },
    { name: 'flight', holds: 'text', of: ({ line }) => line.competitor.flight },
    { name: 'bib', holds: 'number', of: ({ line }) => line.competitor.bib },
    {
      name: 'name',
      holds: 'text',
      of: ({ line }) => (whole ? (line.name ?? line.displayName) : line.displayName),
    },
    { name: 'club', holds: 'text', of: ({ line }) => line.club },
    ...(whole ? [{ name: 'seed_mark', holds: 'number' as const, of: seedMark }] : []),
    { name: 'guest', holds: 'text', of: ({ line }) => (line.competitor.guest ? 'yes' : null) },
    { name: 'implement_g', holds: 'number', of: ({ line }) => line.competitor.implementGrams },
  ];
}

/** Entries and start lists for spreadsheets. */
@Injectable()
export class EntriesExportService {
  constructor(
    private readonly database: Database,
    private readonly meets: MeetsService,
  ) {}

  /** All entries of a meet, to be read in again. Throws FORBIDDEN for others than its directors; null: not there. */
  async entries(meetId: string, viewer: Identity): Promise<string | null> {
    viewer.requireDirector(meetId);
    const meet = await this.meets.find(meetId, viewer);
    if (!meet) return null;
    const [competitions = []] = await this.meets.competitionsOf([meet]);
    const staged = competitions.map((competition) => ({ competition, meet }));
    const rosters = await this.database.snapshot((at) => rostersOf(at, staged));
    const titles = competitions.map(({ title }) => title);
    const lines = competitions.flatMap((competition, at) => {
      const isTitleEnough = titles.filter((title) => title === competition.title).length === 1;
      return (rosters[at] ?? []).map((line): Line => ({ competition, line, isTitleEnough }));
    });
    return writeCsv(
      Object.entries(ENTRIES).map(([name, column]) => ({ name, ...column })),
      lines,
    );
  }

  /** The start list of a competition. Null: not there, or not to be seen. */
  async startList(competitionId: string, viewer: Identity): Promise<string | null> {
    const staged = await this.meets.findCompetition(competitionId, viewer);
    if (!staged) return null;
    const { competition } = staged;
    const [roster = []] = await this.database.read((at) => rostersOf(at, [staged]));
    const whole = viewer.isAdmin || viewer.capacityIn(competition) !== null;
    const lines = roster.map((line): Line => ({ competition, line, isTitleEnough: true }));
    return writeCsv(startListColumns(whole), lines);
  }
}
