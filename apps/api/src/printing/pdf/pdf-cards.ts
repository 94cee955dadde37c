import type { PrintedCard } from '../printed-document.js';
import type { Frame } from './pdf-document.js';

/** Points, 1/72 inch. */
const [NAME, LINE, GAP] = [30, 16, 10] as const;
/** Of the font: how high its figures stand over the line in relation to its size. */
const FIGURE_HEIGHT = 0.72;

/** A card a page: the number as large as it fits, the lines under it. Each card is a paragraph of the text. */
export function setCards(frame: Frame, cards: readonly PrintedCard[]): void {
  const { pdf } = frame;
  const whole = pdf.struct('Document');
  pdf.addStructure(whole);
  cards.forEach((card, index) => {
    if (index > 0) pdf.addPage();
    pdf.page.margins.bottom = 0;
    whole.add(pdf.struct('P', {}, () => void setCard(frame, card)));
  });
  whole.end();
}

function setCard({ pdf, left, right, top, bottom }: Frame, { number, lines }: PrintedCard): void {
  const width = right - left;
  const below = lines.length === 0 ? 0 : NAME + (lines.length - 1) * (LINE + GAP) + 2 * GAP;
  const height = bottom - top - below;
  pdf.font('strong').fontSize(100);
  const size = Math.min((100 * width) / pdf.widthOfString(number), height / FIGURE_HEIGHT);
  pdf.fontSize(size);
  // The line is higher than its figures: they stand in the middle of what is left above the lines.
  const y = top + (height - pdf.currentLineHeight(true)) / 2;
  // Without a width nothing is wrapped: a line that is higher than the page would be put on another one.
  pdf.text(number, left + (width - pdf.widthOfString(number)) / 2, y, { lineBreak: false });
  let at = bottom - below + GAP;
  lines.forEach((line, index) => {
    pdf.font(index === 0 ? 'strong' : 'text').fontSize(index === 0 ? NAME : LINE);
    pdf.text(line, left, at, { width, align: 'center', height: NAME, ellipsis: true });
    at += (index === 0 ? NAME : LINE) + GAP;
  });
}
