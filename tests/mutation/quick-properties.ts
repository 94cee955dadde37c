import fc from 'fast-check';

/** In milliseconds; see groups.mjs. */
declare const PROPERTY_TIME: number;

/** The same values for every change of the source, no search for the smallest that fails, and an end in time. */
fc.configureGlobal({ seed: 1, endOnFailure: true, interruptAfterTimeLimit: PROPERTY_TIME });
