/**
 * The unit in which an event is measured. A mark is a whole number of units: `cm` = centimetre,
 * `qin` = quarter inch. Marks of different units are never compared.
 */
export type Unit = 'cm' | 'qin';
