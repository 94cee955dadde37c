/**
 * What is known of the wind of one trial: whole tenths of m/s (never negative zero), `NWI` when it was not
 * measured, `pending` when a reading is still expected. `null` beside it: the event has no wind, or none was given.
 */
export type Wind = number | 'NWI' | 'pending';
