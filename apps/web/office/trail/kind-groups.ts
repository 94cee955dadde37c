/** What somebody looks for, as the kinds of entries that it may be. */
export const KIND_GROUPS: Readonly<Record<string, readonly string[]>> = {
  corrections: [
    ...['correction', 'jump-correction', 'move', 'jump-move', 'wind', 'reversal', 'replacement'],
    ...['combined-correction', 'combined-reversal', 'entered-result'],
  ],
  rulings: [
    ...['ruling', 'disqualification', 'reinstatement', 'admission', 'record-decision', 'combined-ruling'],
  ],
  protests: [
    ...['protest', 'protest-decision', 'protest-appeal', 'protest-appeal-decision', 'protest-withdrawal'],
  ],
  signatures: [
    ...['sign-off', 'reopening', 'asked-sign-off', 'confirmed-sign-off', 'asked-reopening'],
    ...['confirmed-reopening', 'result-posting', 'combined-sign-off', 'combined-reopening'],
  ],
  trials: ['attempt', 'jump', 'jump-off', 'combined-result'],
  safety: ['interruption', 'all-clear'],
  people: ['crew', 'role', 'role-taken', 'device-link', 'device-link-ended'],
  plans: ['timetable', 'draw', 'draw-amendment', 'scoring', 'order', 'jump-order', 'start', 'check-in'],
  implements: ['implement-query', 'implement-inspection', 'implement-recheck'],
};
