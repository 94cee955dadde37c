import type { Cut, PublicCompetition, Row, Trial } from '../formats/competition.js';
import type { Wording } from '../words/wording.js';
import { linked, type Shown } from './shown.js';
import { cell, nameCell, rowOf } from './table.js';
import { cellText, needTexts, statusText, whyText } from './sentences.js';
import { h, heard, seen, type Part, type Tree } from './tree.js';

/** The lines of a table, and the cut between them where somebody has to beat a mark. */
export function rowViews(competition: PublicCompetition, shown: Shown): Tree[] {
  const cut = cutShown(competition);
  const last =
    cut === null ? -1 : competition.rows.findLastIndex(({ competitor }) => cut.through.includes(competitor));
  return competition.rows.flatMap((row, at) => {
    const line = rowView(row, competition, shown);
    return cut !== null && at === last ? [line, cutView(cut, shown.wording)] : [line];
  });
}

/** The next cut, else the last one that was made; nothing before anybody has a mark. */
function cutShown({ cuts, round, state }: PublicCompetition): Cut | null {
  if (state === 'scheduled') return null;
  const cut = cuts.find(({ afterRound }) => round !== null && round <= afterRound) ?? cuts.at(-1);
  return cut !== undefined && cut.line !== null ? cut : null;
}

function cutView({ afterRound, line }: Cut, { say, decimal }: Wording): Tree {
  const text = say('cut.line', { n: afterRound, mark: decimal(line ?? '') });
  return h(
    'tr',
    { role: 'row', class: 'cut', 'data-key': 'cut' },
    h('td', { role: 'cell', colspan: 4 }, h('span', {}, text)),
  );
}

function rowView(row: Row, competition: PublicCompetition, shown: Shown): Tree {
  const { wording, addresses } = shown;
  const { say, place } = wording;
  const isUp = competition.calls[0]?.competitor === row.competitor;
  return rowOf(
    row.competitor,
    isUp,
    cell('place', row.place === null ? seen('–') : [place(row.place), row.isEqual && seen(' =')]),
    nameCell(
      h(
        'span',
        { class: 'name' },
        linked(row.athlete === null ? undefined : addresses?.('athlete', row.athlete), row.name),
        row.qualified !== null && h('abbr', { class: 'qualified', title: say('qualified') }, row.qualified),
        isUp && h('span', { class: 'up' }, say('up')),
      ),
      h('span', { class: 'club' }, row.club ?? ' '),
    ),
    cell(
      'trials',
      competition.kind === 'bar' ? tries(row, wording) : series(row, competition.rounds ?? 0, wording),
      more(row, competition, wording),
    ),
    cell('best', best(row, wording)),
  );
}

function best(row: Row, wording: Wording): Part {
  const status = statusText(row, wording);
  return [
    row.mark !== null && h('strong', { class: 'mark' }, wording.decimal(row.mark)),
    status !== null && h('span', { class: 'status-word' }, status),
    row.wind !== null && h('span', { class: 'wind' }, windView(row.wind, row.isWindLegal === false, wording)),
  ];
}

function windView(wind: string, isOver: boolean, { say, decimal }: Wording): Part {
  return [
    heard(say('wind', { wind: decimal(wind) })),
    seen(decimal(wind)),
    isOver && h('abbr', { title: say('wind.over') }, 'w'),
  ];
}

/** Every round has its place from the beginning, so that nothing moves when a mark comes in. */
function series({ trials }: Row, rounds: number, wording: Wording): Tree {
  const byRound = new Map(trials.map((trial) => [trial.round, trial]));
  const cells = Array.from({ length: rounds }, (_, at) => trialView(byRound.get(at + 1), at + 1, wording));
  return h('ol', { class: 'series', 'data-rounds': rounds }, cells);
}

function trialView(trial: Trial | undefined, round: number, wording: Wording): Tree {
  const { say, decimal } = wording;
  const number = seen(String(round), 'number');
  if (!trial) return h('li', {}, number, seen('·', 'cell'));
  const { cell, wind, protested } = trial;
  const isMark = cell.length > 1;
  return h(
    'li',
    { class: trial.isBest && 'is-best' },
    number,
    isMark
      ? h('span', { class: 'cell' }, decimal(cell))
      : [heard(cellText(cell, wording)), seen(cell === '-' ? '–' : cell, 'cell')],
    wind !== null && h('span', { class: 'wind' }, decimal(wind)),
    trial.isWindPending && h('abbr', { class: 'wind', title: say('wind.pending') }, '…'),
    protested !== null &&
      h('span', { class: 'protested' }, `${say('state.under protest')}: ${decimal(protested)}`),
  );
}

function tries({ heights, jumpOff }: Row, wording: Wording): Tree {
  const tryView = (height: string, text: string | null): Tree =>
    h(
      'li',
      { class: text?.endsWith('O') && 'is-cleared' },
      h('span', { class: 'number' }, wording.decimal(height)),
      text === null
        ? seen('·', 'cell')
        : [heard(spelled(text, wording)), seen(text.replaceAll('-', '–'), 'cell')],
    );
  return h(
    'ol',
    { class: 'series tries' },
    heights.map((one) => tryView(one.height, one.cell)),
    jumpOff.map((one) => tryView(one.height, one.cell)),
  );
}

/** `XXO`: failure, failure, cleared. */
function spelled(cells: string, { say, sayCode }: Wording): string {
  return [...cells].map((cell) => (cell === 'O' ? say('cell.cleared') : sayCode('cell', cell))).join(', ');
}

/** What is needed, and why the place is what it is: a line that is there as long as the competition goes on. */
function more(row: Row, { state }: PublicCompetition, wording: Wording): Part {
  const { say, place } = wording;
  const needs = row.needs === null ? [] : needTexts(row.needs, wording);
  const why = whyText(row, wording);
  if (needs.length === 0 && why === null && state !== 'running') return null;
  return h(
    'div',
    { class: 'more' },
    needs.length > 0 &&
      h(
        'span',
        { class: 'needs' },
        h('span', { class: 'needs-word' }, say('needs')),
        needs.map(({ text, isFar }) => h('span', { class: isFar ? 'need far' : 'need' }, ` ${text}`)),
      ),
    why !== null &&
      row.place !== null &&
      h(
        'details',
        { class: 'why' },
        h('summary', {}, say('why', { place: place(row.place) })),
        h('span', { class: 'because' }, why, row.rule !== null && ` (${row.rule})`),
      ),
  );
}
