import type { Draw } from './draw.js';
import type { Faulty } from './fault-shapes.js';
import { generateSheet, meetSheet } from './generate-sheet.js';
import { scoring } from './generate-field.js';

type TextFault = (draw: Draw) => Faulty;

const ANYWHERE = { path: '', below: true };

/** A text that is no JSON, or one that a lenient reader would take. */
const notJson: TextFault = (draw) => {
  const text = JSON.stringify(generateSheet(draw));
  const spoilt = [
    text.slice(0, -1),
    `${text}}`,
    '',
    text.replace('{', '{,'),
    `${text.slice(0, -1)},}`,
    `// ${text}`,
  ];
  return { source: draw.pick(spoilt), expected: { code: 'NOT_JSON', ...ANYWHERE } };
};

const keyTwice: TextFault = (draw) => {
  const text = JSON.stringify(generateSheet(draw));
  const format = /"format":"[^"]+"/.exec(text)?.[0] ?? '';
  const again = draw.chance(50) ? format : format.replace('format', '\\u0066ormat');
  return { source: text.replace('{', `{${again},`), expected: { code: 'NOT_JSON', ...ANYWHERE } };
};

const notUtf8: TextFault = (draw) => {
  const bytes = new TextEncoder().encode(JSON.stringify({ ...generateSheet(draw), remark: 'abc' }));
  bytes[bytes.length - 4] = draw.pick([0xff, 0xc0, 0x80, 0xed]);
  return { source: bytes, expected: { code: 'NOT_JSON', ...ANYWHERE } };
};

const tooManyCompetitors: TextFault = () => {
  const competitors = Array.from({ length: 2001 }, (_, index) => ({ bib: String(index) }));
  const sheet = { format: 'sectorline-sheet/1', rules: 'WA', event: 'shot', competitors };
  return { source: JSON.stringify(sheet), expected: { code: 'TOO_LARGE', ...ANYWHERE } };
};

const tooManyBytes: TextFault = (draw) => {
  const text = JSON.stringify(generateSheet(draw));
  const bytes = new TextEncoder().encode(text).length;
  return { source: text + ' '.repeat(5_000_001 - bytes), expected: { code: 'TOO_LARGE', ...ANYWHERE } };
};

/** Assigning this key would set the prototype, so it is put into the text. */
const prototypeKey: TextFault = (draw) => ({
  source: JSON.stringify(generateSheet(draw)).replace('{', '{"__proto__":{"rules":"WA"},'),
  expected: { code: 'UNKNOWN_KEY', path: '/__proto__' },
});

const scoringInMeet: TextFault = (draw) => {
  const meet = meetSheet(draw);
  const at = meet.sheets.length;
  const sheet = {
    format: 'sectorline-sheet/1',
    rules: 'WA',
    event: 'shot',
    competitors: [],
    scoring: scoring(draw),
  };
  const source = JSON.stringify({ ...meet, sheets: [...meet.sheets, sheet] });
  return { source, expected: { code: 'SCORING', path: `/sheets/${at}/scoring` } };
};

const meetKey: TextFault = (draw) => {
  const meet = meetSheet(draw) as Partial<ReturnType<typeof meetSheet>>;
  const key = draw.pick(['scoring', 'sheets'] as const);
  delete meet[key];
  return { source: JSON.stringify(meet), expected: { code: 'MISSING', path: `/${key}` } };
};

const unknownFormat: TextFault = (draw) => ({
  source: JSON.stringify({ ...generateSheet(draw), format: draw.pick(['sectorline-sheet/2', '', 'sheet']) }),
  expected: { code: 'UNKNOWN_VALUE', path: '/format' },
});

export const TEXT_FAULTS: Record<string, TextFault> = {
  'text that is not JSON': notJson,
  'a key twice': keyTwice,
  'bytes that are not UTF-8': notUtf8,
  'more than 2,000 competitors': tooManyCompetitors,
  'more than 5,000,000 bytes': tooManyBytes,
  'a key that would set the prototype': prototypeKey,
  'a scoring in a sheet of a meet': scoringInMeet,
  'a meet without its parts': meetKey,
  'an unknown format': unknownFormat,
};
