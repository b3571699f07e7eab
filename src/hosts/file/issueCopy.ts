import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { issuedSheet } from './issueSheet';
import { callsCellFunction } from './storedFormula';
import { unescaped } from './xmlText';

type Parts = Record<string, Uint8Array>;

const WORKBOOK = 'xl/workbook.xml';
const TYPES = '[Content_Types].xml';
/** What tells how dynamic arrays of cells are kept. */
const METADATA = 'xl/metadata.xml';

/**
 * A copy of a workbook file that needs no add-in. Every formula that calls a cell function becomes the value it gave, spilled
 * values included; plain formulas stay alive and keep their values. Names, looks, rules and charts stay. Every cell is locked and
 * every sheet protected, without a password.
 * Throws, naming the cell, on a formula that was not computed; the file given stays as it was.
 */
export function issueCopy(file: Uint8Array): Uint8Array {
  const parts = opened(file);
  for (const { name, part } of sheetsOf(parts)) edit(parts, part, (xml) => issuedSheet(xml, name));
  edit(parts, 'xl/styles.xml', (xml) => xml.replace(/(<protection\b[^>]*?\s)locked="(?:0|false)"/g, '$1locked="1"'));
  edit(parts, WORKBOOK, issuedWorkbook);
  leaveOut(parts, (part) => part === 'xl/calcChain.xml' || part.startsWith('xl/webextensions/'));
  // A workbook without dynamic arrays has no use for what describes them.
  if (!sheetsOf(parts).some(({ part }) => /<c\b[^>]*\s[cv]m="/.test(strFromU8(parts[part])))) leaveOut(parts, (part) => part === METADATA);
  return zipSync(parts);
}

function opened(file: Uint8Array): Parts {
  let parts: Parts;
  try {
    parts = unzipSync(file);
  } catch (error) {
    throw new Error('found a file that is no zip archive; expected a workbook (.xlsx)', { cause: error });
  }
  for (const part of [WORKBOOK, 'xl/_rels/workbook.xml.rels', 'xl/styles.xml', TYPES]) {
    if (!parts[part]) throw new Error(`found no part "${part}"; expected a workbook (.xlsx)`);
  }
  return parts;
}

function edit(parts: Parts, part: string, change: (xml: string) => string): void {
  parts[part] = strToU8(change(strFromU8(parts[part])));
}

/** The worksheets in their order; sheets of other kinds hold no cells. */
function sheetsOf(parts: Parts): { readonly name: string; readonly part: string }[] {
  const targets = new Map([...strFromU8(parts['xl/_rels/workbook.xml.rels']).matchAll(/<Relationship\b([^>]*)>/g)]
    .map(([, attributes]) => [attribute(attributes, 'Id'), attribute(attributes, 'Target')?.replace(/^\/?(?:xl\/)?/, 'xl/')]));
  return [...strFromU8(parts[WORKBOOK]).matchAll(/<sheet\b([^>]*?)\/?>/g)].flatMap(([, attributes]) => {
    const part = targets.get(attribute(attributes, 'r:id'));
    if (part === undefined || !parts[part]) throw new Error(`found no part of the sheet “${attribute(attributes, 'name') ?? ''}”; expected a workbook (.xlsx)`);
    return part.includes('/worksheets/') ? [{ name: attribute(attributes, 'name') ?? '', part }] : [];
  });
}

/** Nothing is computed on opening, and no name stands for a cell function. */
function issuedWorkbook(xml: string): string {
  const names = /<definedNames>(.*?)<\/definedNames>/s.exec(xml);
  const kept = names && [...names[1].matchAll(/<definedName\b([^>]*)>(.*?)<\/definedName>/gs)].filter(([, attributes, text]) => {
    if (callsCellFunction(unescaped(text))) {
      throw new Error(`found ${unescaped(text)} as the name “${attribute(attributes, 'name') ?? ''}”; an issue copy takes names of ranges and of plain formulas`);
    }
    return !/^_xldudf_/i.test(attribute(attributes, 'name') ?? '');
  }).map(([whole]) => whole);
  const named = names && kept ? xml.replace(names[0], () => (kept.length > 0 ? `<definedNames>${kept.join('')}</definedNames>` : '')) : xml;
  return named.replace(/<calcPr\b[^>]*\/>/, '<calcPr calcId="191029"/>');
}

/** Leaves parts out of the file, with all that points to them. */
function leaveOut(parts: Parts, isOut: (part: string) => boolean): void {
  const out = Object.keys(parts).filter(isOut);
  for (const part of out) delete parts[part];
  if (out.length === 0) return;
  const gone = new Set(out);
  edit(parts, TYPES, (xml) => xml.replace(/<Override\b([^>]*)\/>/g, (whole, attributes: string) => (gone.has(attribute(attributes, 'PartName')?.slice(1) ?? '') ? '' : whole)));
  for (const rels of Object.keys(parts).filter((part) => part.endsWith('.rels'))) {
    const folder = rels.replace(/_rels\/[^/]*$/, '');
    edit(parts, rels, (xml) => xml.replace(/<Relationship\b([^>]*)\/>/g, (whole, attributes: string) => {
      const target = attribute(attributes, 'Target') ?? '';
      return gone.has(target.startsWith('/') ? target.slice(1) : folder + target) ? '' : whole;
    }));
  }
}

function attribute(attributes: string, name: string): string | undefined {
  const found = new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(attributes)?.[1];
  return found === undefined ? undefined : unescaped(found);
}
