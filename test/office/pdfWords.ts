import { execFileSync } from 'node:child_process';
import { XMLParser } from 'fast-xml-parser';
import { missing, pageReader } from './libreOffice';

/** A word on a printed page; points from the upper left corner. */
export interface Word {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A printed page. */
export interface Page {
  readonly width: number;
  readonly height: number;
  readonly words: readonly Word[];
}

interface BoxedPage {
  readonly '@width': string;
  readonly '@height': string;
  readonly word?: readonly { readonly '@xMin': string; readonly '@xMax': string; readonly '@yMin': string; readonly '@yMax': string; readonly '#text': string }[];
}

const parser = new XMLParser({
  ignoreAttributes: false, attributeNamePrefix: '@', parseTagValue: false, parseAttributeValue: false, alwaysCreateTextNode: true, htmlEntities: true,
  isArray: (name) => name === 'page' || name === 'word',
});

/** The words on the pages of a PDF, with their places. */
export function pagesOf(pdf: Uint8Array): Page[] {
  if (!pageReader) throw new Error(missing);
  const boxes = execFileSync(pageReader, ['-bbox', '-', '-'], { input: pdf, encoding: 'utf8', maxBuffer: 1 << 28 });
  const pages: readonly BoxedPage[] = parser.parse(boxes).html.body.doc.page;
  return pages.map((page) => ({
    width: Number(page['@width']),
    height: Number(page['@height']),
    words: (page.word ?? []).map((word) => ({
      text: word['#text'], left: Number(word['@xMin']), right: Number(word['@xMax']), top: Number(word['@yMin']), bottom: Number(word['@yMax']),
    })),
  }));
}
