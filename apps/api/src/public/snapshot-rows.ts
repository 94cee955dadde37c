import { reasonsOf, verticalReasonsOf, type Reason, type VerticalReason } from '#rules';
import type { Needs, Row, Trial, Why } from '#scoreboard';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { globalId } from '../platform/inputs/global-id.js';
import { hasPublicResults } from '../platform/roster/display-name.js';
import type { NeededNow, PubliclyShown, TableRow } from '../results/results.service.js';

/** The rows of a table as everybody may see them. What is not named here does not get out. */
export function rowsOf({ loaded, table, needed }: PubliclyShown): Row[] {
  const reasons = reasonsIn(loaded);
  const lines = new Map(loaded.roster.map((line) => [line.competitor.bib, line]));
  const needs = new Map(needed.map((one) => [one.bib, one]));
  return table.rows.map((row, at) => {
    const line = lines.get(row.bib)!;
    const { athlete } = line;
    return {
      competitor: row.competitor,
      athlete: athlete && hasPublicResults(line, loaded.meet) ? globalId('Athlete', athlete.id) : null,
      bib: row.bib,
      name: row.name,
      club: row.club,
      isGuest: line.competitor.guest,
      place: row.place,
      isEqual: row.isEqual,
      mark: row.mark,
      wind: row.wind,
      isWindLegal: row.isWindLegal,
      status: row.status,
      qualified: row.qualified,
      reason: row.reason,
      rule: row.reasonRule,
      why: whyOf(reasons[at]),
      trials: trialsOf(row),
      heights: (row.vertical?.heights ?? []).map(({ height, cell }) => ({ height, cell })),
      jumpOff: (row.vertical?.jumpOff ?? []).map(({ height, cell }) => ({ height, cell })),
      needs: needsOf(needs.get(row.bib)),
    };
  });
}

/** In the order of the table. */
function reasonsIn(loaded: LoadedCompetition): readonly (Reason | VerticalReason)[] {
  return loaded.kind === 'vertical' ? verticalReasonsOf(loaded.state.card) : reasonsOf(loaded.state.card);
}

function whyOf(reason: Reason | VerticalReason | undefined): Why | null {
  if (reason === undefined || reason.place === null) return null;
  if ('jumpedOff' in reason) {
    const { decidedBy, own, other, jumpedOff } = reason;
    return { by: 'height', decidedBy, own, other, isJumpedOff: jumpedOff };
  }
  const { decidedBy, level, own, other, undecidable } = reason;
  const nth = decidedBy === 'equal' ? null : decidedBy === 'first' ? 0 : decidedBy;
  return { by: 'mark', nth, level, own, other, isUndecidable: undecidable };
}

function trialsOf({ series, mark }: TableRow): Trial[] {
  const best = series.findIndex(({ cell }) => cell === mark);
  return series.map(({ round, cell, wind, isWindPending, protestedMark }, at) => ({
    round,
    cell,
    wind,
    isWindPending,
    protested: protestedMark,
    isBest: mark !== null && at === best,
  }));
}

/** Nothing when no trial is to come, or none that would change anything. */
function needsOf(needed: NeededNow | undefined): Needs | null {
  if (!needed || needed.barrier !== null || needed.round === null) return null;
  const { places, cut, fill, standard } = needed;
  const pass = cut ?? fill;
  return {
    places: places.map(({ place, mark, trial, isShared }) => ({ place, mark, trial, isShared })),
    cut: pass && {
      afterRound: pass.afterRound,
      isIn: pass.isIn,
      mark: pass.mark,
      isEqualEnough: pass.isEqualEnough,
    },
    standard,
  };
}
