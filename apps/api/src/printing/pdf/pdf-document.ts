import PDFDocument from 'pdfkit';
import type { PrintedDocument } from '../printed-document.js';
import { FONTS } from './fonts.js';
import { setCards } from './pdf-cards.js';
import { drawTable } from './pdf-table.js';

export type Paper = 'A4' | 'A5' | 'LETTER';

/** A part of the text that is read out: a paragraph, a table, a cell. */
export type StructureElement = ReturnType<PDFKit.PDFDocument['struct']>;

/** Where and on what a document is set. Lengths are points, 1/72 inch. */
export interface Frame {
  readonly pdf: PDFKit.PDFDocument;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Nothing of the text goes below. */
  readonly bottom: number;
}

export interface Setting {
  readonly paper: Paper;
  readonly language: string;
  /** "Page {number} of {of}", in the language. */
  readonly page: string;
}

const MARGIN = 36;
const FOOT = 20;

/**
 * Sets a document as a tagged PDF: embedded fonts, text in reading order, header rows repeated on every page, page
 * numbers.
 */
export async function pdfOf(document: PrintedDocument, setting: Setting): Promise<Buffer> {
  const pdf = new PDFDocument({
    size: setting.paper,
    layout: document.isLandscape ? 'landscape' : 'portrait',
    margin: MARGIN,
    bufferPages: true,
    font: FONTS.text,
    pdfVersion: '1.7',
    tagged: true,
    displayTitle: true,
    lang: setting.language,
    info: { Title: document.title },
  });
  const chunks: Buffer[] = [];
  pdf.on('data', (chunk: Buffer) => chunks.push(chunk));
  const ended = new Promise((resolve, reject) => pdf.once('end', resolve).once('error', reject));
  pdf.registerFont('text', FONTS.text).registerFont('strong', FONTS.strong);
  const frame: Frame = {
    pdf,
    left: MARGIN,
    right: pdf.page.width - MARGIN,
    top: MARGIN,
    bottom: pdf.page.height - MARGIN - FOOT,
  };
  if (document.cards) setCards(frame, document.cards);
  else setText(frame, document);
  if (!document.cards) setFeet(frame, document, setting);
  pdf.end();
  await ended;
  return Buffer.concat(chunks);
}

function setText(frame: Frame, document: PrintedDocument): void {
  const { pdf, left } = frame;
  const whole = pdf.struct('Document');
  pdf.addStructure(whole);
  whole.add(paragraph(frame, 'H1', () => pdf.font('strong').fontSize(16).text(document.title, left)));
  for (const line of document.lines) whole.add(text(frame, line, 10));
  for (const table of document.tables) {
    pdf.moveDown(0.6);
    if (table.caption !== null) {
      const caption = table.caption;
      keepTogether(frame, 60);
      whole.add(paragraph(frame, 'H2', () => pdf.font('strong').fontSize(11).text(caption, left)));
    }
    drawTable(frame, table, whole);
  }
  pdf.moveDown(0.6);
  for (const note of document.notes) whole.add(text(frame, note, 8.5));
  if (document.signatures.length > 0) whole.add(signatures(frame, document.signatures));
  whole.end();
}

function text(frame: Frame, line: string, size: number): StructureElement {
  const { pdf, left, right } = frame;
  return paragraph(frame, 'P', () => {
    pdf.font('text').fontSize(size);
    keepTogether(frame, pdf.heightOfString(line, { width: right - left }));
    pdf.text(line, left, pdf.y, { width: right - left });
  });
}

function paragraph({ pdf }: Frame, kind: 'H1' | 'H2' | 'P', draw: () => unknown): StructureElement {
  return pdf.struct(kind, {}, () => void draw());
}

/** Goes on to a new page when less than `height` is left. */
function keepTogether({ pdf, top, bottom }: Frame, height: number): void {
  if (pdf.y + height <= bottom) return;
  pdf.addPage();
  pdf.y = top;
}

function signatures(frame: Frame, labels: readonly string[]): StructureElement {
  const { pdf, left, right } = frame;
  return paragraph(frame, 'P', () => {
    keepTogether(frame, 48);
    const y = pdf.y + 26;
    const width = (right - left) / labels.length;
    labels.forEach((label, index) => {
      const x = left + index * width;
      pdf
        .moveTo(x, y)
        .lineTo(x + width - 12, y)
        .lineWidth(0.7)
        .stroke('#444');
      pdf
        .font('text')
        .fontSize(8)
        .fillColor('#000')
        .text(label, x, y + 2, { width: width - 12 });
    });
  });
}

/** The foot of each page is an artifact: it is not read out as part of the text. */
function setFeet({ pdf, left, right, bottom }: Frame, { foot }: PrintedDocument, setting: Setting): void {
  const { start, count } = pdf.bufferedPageRange();
  for (let index = 0; index < count; index++) {
    pdf.switchToPage(start + index);
    // Text below the margin would open a page.
    pdf.page.margins.bottom = 0;
    const y = bottom + 8;
    pdf.markContent('Artifact', { type: 'Pagination' });
    pdf.font('text').fontSize(8).fillColor('#333');
    pdf.text(foot, left, y, { width: right - left - 90, height: FOOT, ellipsis: true, lineBreak: false });
    const page = setting.page.replace('{number}', String(index + 1)).replace('{of}', String(count));
    pdf.text(page, right - 90, y, { width: 90, align: 'right', lineBreak: false });
    pdf.endMarkedContent();
  }
}
