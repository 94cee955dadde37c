import type { Client } from './client.js';
import { idOf } from './ids.js';
import { LONG_JUMP } from './meet.js';

/** Whose last jump was a failure, was protested at once and measured; and how his club wrote it down. */
const WHO = 'Kit Wexcombe';

/** The protest about the last jump of the long jump, in writing; nobody has decided it yet. */
export async function protestLongJump(
  referee: Client,
  competitionId: string,
  startList: readonly { readonly id: string }[],
): Promise<void> {
  const input = {
    competitionId,
    entryId: idOf(`${LONG_JUMP.title}: protest of ${WHO}`),
    form: 'WRITTEN',
    ground: 'JUDGEMENT',
    lodgedBy: 'Team manager of his club',
    competitorId: startList[LONG_JUMP.lines.findIndex(({ who }) => who === WHO)]?.id,
    trialId: idOf(`${LONG_JUMP.title}: ${WHO}, round 6`),
    reason: 'No mark in the ground before the pit; a photograph is with the referee',
    deposit: '25 GBP',
    isDepositPaid: true,
  };
  await referee.call('protestLodge', input, 'protest { id }');
}
