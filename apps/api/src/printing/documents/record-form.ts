import { eventOf, formatWind, isThrowEvent } from '#rules';
import type { LoadedCompetition } from '../../platform/competition/loaded.js';
import type { RecordClaim } from '../../records/records.service.js';
import type { PrintedDocument, PrintedTable } from '../printed-document.js';
import { column, footOf, gramsText, headOf, type Printed } from './head.js';

const TO_BE_WRITTEN = '';

/** Claims for which a form is signed: a record that was beaten or equalled, and that nothing stands against. */
export function claimsToSign(claims: readonly RecordClaim[]): RecordClaim[] {
  return claims.filter(
    ({ kind, relation, whyNot }) =>
      (kind === 'club-record' || kind === 'meet-record') && relation !== 'first' && whyNot === null,
  );
}

/**
 * What is known of marks that would be records, and room for what people add: the second measurement, the implement,
 * the wind, their names and signatures. A table for each mark and list.
 */
export function recordForm(
  printed: Printed,
  loaded: LoadedCompetition,
  claims: readonly RecordClaim[],
): PrintedDocument {
  const { competition, wording } = printed;
  const { labels } = wording;
  return {
    title: `${labels.recordForm}: ${competition.title}`,
    lines: headOf(printed),
    isLandscape: false,
    tables: claims.map((claim) => tableOf(printed, loaded, claim)),
    notes: [labels.recordNote, isThrowEvent(competition.event) ? labels.safety : labels.safetyAtJumps],
    signatures: [labels.measurer, labels.chiefJudge, labels.referee],
    foot: footOf(printed),
  };
}

function tableOf(
  { competition, wording }: Printed,
  loaded: LoadedCompetition,
  claim: RecordClaim,
): PrintedTable {
  const { labels, decimal } = wording;
  const line = loaded.roster.find(({ competitor }) => competitor.bib === claim.bib);
  const kind = claim.kind === 'club-record' ? labels.clubRecord : labels.meetRecord;
  const grams = claim.implementGrams;
  const isThrow = isThrowEvent(competition.event);
  return {
    caption: [kind, claim.of].filter((text) => text !== null).join(' · '),
    isForWriting: true,
    columns: [column(labels.item, 2, 'left', true), column(labels.written, 4)],
    rows: [
      [labels.name, `${claim.bib}  ${line?.name ?? claim.name}`],
      [labels.club, line?.club ?? ''],
      [labels.mark, decimal(claim.mark)],
      [labels.before, claim.before === null ? '–' : decimal(claim.before)],
      [labels.madeAt, TO_BE_WRITTEN],
      [labels.measuredAgain, TO_BE_WRITTEN],
      [labels.measuredBy, TO_BE_WRITTEN],
      ...(isThrow
        ? [
            [labels.implement, grams === null ? TO_BE_WRITTEN : gramsText(grams, wording)],
            [labels.implementFound, TO_BE_WRITTEN],
          ]
        : []),
      ...(eventOf(competition.event).hasWind(competition.indoor)
        ? [
            [labels.wind, decimal(windOf(loaded, claim.attempt))],
            [labels.windBy, TO_BE_WRITTEN],
          ]
        : []),
    ],
  };
}

function windOf(loaded: LoadedCompetition, attempt: string): string {
  const wind = loaded.kind === 'distance' ? loaded.state.attempts.get(attempt)?.judgement.wind : null;
  return wind === null || wind === undefined || wind === 'pending' ? TO_BE_WRITTEN : formatWind(wind);
}
