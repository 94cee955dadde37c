import { getDocument, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What somebody who does not see a paper is read, page by page. */
export interface ReadPdf {
  readonly title: string;
  readonly language: string;
  /** Of the first page, in points. */
  readonly size: readonly [number, number];
  /** The texts of each page in reading order, without what is marked as decoration. */
  readonly pages: readonly (readonly string[])[];
  /** Roles of the structure, each once: H1, Table, TR, TH, … */
  readonly roles: ReadonlySet<string>;
}

/** Reads a PDF with another library than the one that wrote it. */
export async function readPdf(bytes: ArrayBuffer): Promise<ReadPdf> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const { info } = await pdf.getMetadata();
  const { Title: title, Language: language } = info as { Title: string; Language: string };
  const pages: string[][] = [];
  const roles = new Set<string>();
  let size: [number, number] = [0, 0];
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    if (number === 1) size = [width, height];
    pages.push(await textsOf(page));
    addRoles(await page.getStructTree(), roles);
  }
  await pdf.destroy();
  return { title, language, size, pages, roles };
}

async function textsOf(page: PDFPageProxy): Promise<string[]> {
  const { items } = await page.getTextContent({ includeMarkedContent: true });
  const texts: string[] = [];
  const open: string[] = [];
  for (const item of items) {
    if ('str' in item) {
      if (!open.includes('Artifact') && item.str.trim() !== '') texts.push(item.str);
    } else if (item.type === 'endMarkedContent') open.pop();
    else open.push((item as { tag?: string }).tag ?? '');
  }
  return texts;
}

function addRoles(node: unknown, roles: Set<string>): void {
  const { role, children = [] } = (node ?? {}) as { role?: string; children?: unknown[] };
  if (role !== undefined) roles.add(role);
  children.forEach((child) => addRoles(child, roles));
}
