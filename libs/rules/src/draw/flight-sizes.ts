import type { FlightSize } from '../rule-sets/rule-set.js';

/**
 * How many flights a field needs: as few as the largest size allows. `null` when none of them would be of the least
 * size with that number; a field smaller than the least size is one flight. Without sizes (the rule set names none,
 * and neither does the meet) the field is one flight.
 */
export function flightsNeeded(competitors: number, size: FlightSize | null): number | null {
  if (size === null) return 1;
  const flights = Math.max(1, Math.ceil(competitors / size.max));
  return flights === 1 || Math.floor(competitors / flights) >= size.min ? flights : null;
}

/** Sizes that differ by one at most; the later flights are the larger ones (constructed: no book says which). */
export function flightSizes(competitors: number, flights: number): number[] {
  const least = Math.floor(competitors / flights);
  const larger = competitors % flights;
  return Array.from({ length: flights }, (_, at) => (at >= flights - larger ? least + 1 : least));
}
