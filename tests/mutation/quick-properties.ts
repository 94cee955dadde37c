import fc from 'fast-check';

/** The same values for every change of the source, and no search for the smallest that fails. */
fc.configureGlobal({ seed: 1, endOnFailure: true });
