import type { PrintedTable } from '../printed-document.js';
import type { Frame, StructureElement } from './pdf-document.js';

const PADDING = 3;
const SIZE = 9;
const HEAD_SIZE = 8;
const WRITING_HEIGHT = 26;

interface Box {
  readonly x: number;
  readonly width: number;
}

/** A table over as many pages as it takes. Its header row is read out once and drawn on every page. */
export function drawTable(frame: Frame, table: PrintedTable, parent: StructureElement): void {
  const { pdf } = frame;
  const boxes = boxesOf(frame, table);
  const element = pdf.struct('Table', table.caption === null ? {} : { title: table.caption });
  parent.add(element);
  const titles = table.columns.map(({ title }) => title);
  const headHeight = heightOf(frame, table, boxes, titles, true);
  if (pdf.y + headHeight + heightOf(frame, table, boxes, table.rows[0] ?? [], false) > frame.bottom) {
    newPage(frame);
  }
  addRow(frame, table, boxes, titles, headHeight, { element, isHead: true });
  for (const [index, cells] of table.rows.entries()) {
    const height = heightOf(frame, table, boxes, cells, false);
    if (pdf.y + height > frame.bottom) {
      newPage(frame);
      pdf.markContent('Artifact', { type: 'Layout' });
      drawRow(frame, table, boxes, titles, headHeight, true, (_, draw) => draw());
      pdf.endMarkedContent();
    }
    addRow(frame, table, boxes, cells, height, { element, isHead: false, isShaded: index % 2 === 1 });
  }
  element.end();
  pdf.x = frame.left;
}

function newPage({ pdf, top }: Frame): void {
  pdf.addPage();
  pdf.y = top;
}

function boxesOf({ left, right }: Frame, { columns }: PrintedTable): Box[] {
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  let x = left;
  return columns.map(({ share }) => {
    const width = ((right - left) * share) / whole;
    const box = { x, width };
    x += width;
    return box;
  });
}

function heightOf(
  { pdf }: Frame,
  table: PrintedTable,
  boxes: readonly Box[],
  cells: readonly string[],
  isHead: boolean,
): number {
  pdf.font(isHead ? 'strong' : 'text').fontSize(isHead ? HEAD_SIZE : SIZE);
  const heights = cells.map((cell, at) => {
    const width = Math.max(boxes[at]!.width - 2 * PADDING, 1);
    return cell === '' ? 0 : pdf.heightOfString(cell, { width });
  });
  const least = !isHead && table.isForWriting ? WRITING_HEIGHT : SIZE + 4;
  return Math.max(least, ...heights) + 2 * PADDING;
}

interface RowOptions {
  readonly element: StructureElement;
  readonly isHead: boolean;
  readonly isShaded?: boolean;
}

/** A row as part of the text. */
function addRow(
  frame: Frame,
  table: PrintedTable,
  boxes: readonly Box[],
  cells: readonly string[],
  height: number,
  { element, isHead, isShaded = false }: RowOptions,
): void {
  const { pdf } = frame;
  if (isShaded && !table.isForWriting) shade(frame, height);
  const row = pdf.struct('TR');
  element.add(row);
  drawRow(frame, table, boxes, cells, height, isHead, (at, draw) => {
    const isHeader = isHead || table.columns[at]?.isHeader === true;
    row.add(pdf.struct(isHeader ? 'TH' : 'TD', {}, draw));
  });
  row.end();
}

function shade({ pdf, left, right }: Frame, height: number): void {
  pdf.markContent('Artifact', { type: 'Layout' });
  pdf.rect(left, pdf.y, right - left, height).fill('#f1f1f1');
  pdf.fillColor('#000');
  pdf.endMarkedContent();
}

/** Draws a row at the present height and moves below it. `place` puts each cell where it belongs in the text. */
function drawRow(
  { pdf }: Frame,
  table: PrintedTable,
  boxes: readonly Box[],
  cells: readonly string[],
  height: number,
  isHead: boolean,
  place: (at: number, draw: () => void) => void,
): void {
  const y = pdf.y;
  for (const [at, { x, width }] of boxes.entries()) {
    place(at, () => {
      pdf.lineWidth(isHead ? 1 : 0.5);
      pdf.rect(x, y, width, height).stroke('#555');
      pdf
        .font(isHead ? 'strong' : 'text')
        .fontSize(isHead ? HEAD_SIZE : SIZE)
        .fillColor('#000');
      pdf.text(cells[at] ?? '', x + PADDING, y + PADDING, {
        width: Math.max(width - 2 * PADDING, 1),
        align: table.columns[at]!.align,
      });
    });
  }
  pdf.y = y + height;
}
