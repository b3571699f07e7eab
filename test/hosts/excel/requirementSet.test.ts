/** What the Excel host uses of Office.js must be in the version of ExcelApi that the manifest asks for, or be asked for first. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

const ROOT = path.resolve(__dirname, '../../..');
const FOLDER = path.join(ROOT, 'src/hosts/excel');

/** Used only where `supports` said yes. */
const ASKED_FOR_FIRST = ['Range.getMergedAreasOrNullObject', 'WorksheetCollection.onNameChanged'];

/** The members of Office.js that the files use, each with the version of ExcelApi that brought it. */
function usedMembers(files: readonly string[]): Map<string, number> {
  const program = ts.createProgram(files, {
    target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler,
    strict: true, skipLibCheck: true, noEmit: true, resolveJsonModule: true, types: ['office-js'],
  });
  const checker = program.getTypeChecker();
  const found = new Map<string, number>();
  const note = (symbol: ts.Symbol | undefined): void => {
    const [declaration] = symbol?.declarations ?? [];
    if (!symbol || !declaration?.getSourceFile().fileName.includes('office-js')) return;
    const owner = ts.isClassDeclaration(declaration.parent) ? declaration.parent.name?.text : undefined;
    const version = /\[Api set: ExcelApi\w* ([\d.]+)/.exec(declaration.getFullText())?.[1];
    if (owner && version) found.set(`${owner}.${symbol.name}`, Number(version.replace(/^1\./, '')));
  };
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAccessExpression(node)) note(checker.getSymbolAtLocation(node.name));
    // { names } = sheet
    if (ts.isBindingElement(node)) note(checker.getTypeAtLocation(node.parent).getProperty((node.propertyName ?? node.name).getText()));
    ts.forEachChild(node, visit);
  };
  for (const file of files) visit(program.getSourceFile(file) as ts.SourceFile);
  return found;
}

test('every member of Office.js that the host uses is in the ExcelApi of the manifest, or is asked for first', () => {
  const asked = Number(/Name="ExcelApi" MinVersion="1\.(\d+)"/.exec(readFileSync(path.join(ROOT, 'manifest.xml'), 'utf8'))?.[1]);
  const files = readdirSync(FOLDER).filter((name) => name.endsWith('.ts')).map((name) => path.join(FOLDER, name));
  const used = usedMembers(files);
  expect(used.get('Range.setCellProperties')).toBe(9);
  expect(used.size).toBeGreaterThan(60);
  const later = [...used].filter(([, version]) => version > asked).map(([name]) => name);
  expect(later.sort()).toEqual(ASKED_FOR_FIRST);
}, 60_000);
