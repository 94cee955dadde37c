import type { TimetableFault } from '#rules';

/** Every fault of a timetable in words. */
export const TIMETABLE_FAULTS: Readonly<
  Record<TimetableFault, { readonly message: string; readonly remedy: string }>
> = {
  FACILITY_TWICE: {
    message: 'Two facilities have the same key.',
    remedy: 'Give each a key of its own.',
  },
  UNKNOWN_FACILITY: {
    message: 'The timetable has no such facility.',
    remedy: 'Name a facility of the list, or add it.',
  },
  SHARED_WITH_ITSELF: {
    message: 'A facility shares its ground with itself anyway.',
    remedy: 'Name two different facilities.',
  },
  SLOT_TWICE: {
    message: 'A competition is in more than one slot.',
    remedy: 'Leave it in one.',
  },
  SLOT_EMPTY: {
    message: 'A slot has no competition.',
    remedy: 'Name its competitions, or leave it out.',
  },
};
