import type { WaitingEntry } from './database.js';
import { handOver, readHandOver } from './hand-over.js';

const ENTRY: WaitingEntry = {
  entryId: '0190f3c2-7d51-7c3e-8b61-3f1a2b4c5d6e',
  competitionId: 'Q29tcGV0aXRpb246MQ',
  body: { kind: 'reversal', entry: '0190f3c2-7d51-7c3e-8b61-3f1a2b4c5d6f', reason: 'Typed wrongly' },
  madeAtMs: 1_780_000_000_000,
  basedOn: 7,
  state: 'refused',
  refusal: { code: 'X', message: '', rule: null, remedy: null },
};

describe('a file for another device', () => {
  it('brings entries there as they were made, to be sent', () => {
    expect(readHandOver(handOver([ENTRY]))).toEqual([{ ...ENTRY, state: 'waiting', refusal: null }]);
  });

  it.each([
    '',
    '{}',
    'null',
    '{"format":"sectorline-handover/1"}',
    '{"format":"sectorline-handover/2","entries":[]}',
    '{"format":"sectorline-handover/1","entries":[null]}',
    '{"format":"sectorline-handover/1","entries":[{"entryId":"a"}]}',
  ])('is not made of %s', (text) => {
    expect(readHandOver(text)).toBeNull();
  });
});
