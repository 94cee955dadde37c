import { delaysIn, type PlannedSlots } from './delay.js';
import { MINUTE_MS } from './timetable.js';

/** A plan of two competitions by the minutes at which they start. */
function plan(discus: number, hammer: number, reason: string | null = null): PlannedSlots {
  const slot = (competition: string, minute: number) => ({
    ...{ competitions: [competition], facility: 'cage', minutes: 60, reportMinutes: 20 },
    startsAt: minute * MINUTE_MS,
  });
  return { slots: [slot('discus', discus), slot('hammer', hammer)], reason };
}

const inMinutes = (...plans: PlannedSlots[]): unknown[] =>
  [...delaysIn(plans)].map(([id, { plannedAt, startsAt, reason }]) => [
    ...[id, plannedAt / MINUTE_MS, startsAt / MINUTE_MS, reason],
  ]);

it('what was moved with a reason is later than it was planned, until it is planned anew', () => {
  const [planned, gate, rain] = [plan(0, 60), plan(20, 60, 'gate'), plan(35, 70, 'rain')];
  expect(inMinutes(planned)).toEqual([]);
  expect(inMinutes(planned, gate)).toEqual([['discus', 0, 20, 'gate']]);
  expect(inMinutes(planned, gate, rain)).toEqual([
    ['discus', 0, 35, 'rain'],
    ['hammer', 60, 70, 'rain'],
  ]);
  expect(inMinutes(planned, gate, plan(30, 60))).toEqual([]);
  expect(inMinutes(planned, gate, plan(0, 60, 'the gate is whole again'))).toEqual([]);
});
