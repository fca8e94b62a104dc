/** The page of the library's face: every export with its docstring and type, as the compiler sees it. */
import { writeFileSync } from 'node:fs';
import ts from 'typescript';

const entry = new URL('../library/index.ts', import.meta.url).pathname;

export function apiPage(): string {
  const { options } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(new URL('../tsconfig.json', import.meta.url).pathname, ts.sys.readFile).config,
    ts.sys,
    new URL('..', import.meta.url).pathname,
  );
  const program = ts.createProgram([entry], options);
  const checker = program.getTypeChecker();
  const face = program.getSourceFile(entry);
  const module = face && checker.getSymbolAtLocation(face);
  if (!module) throw new Error('the library has no face');
  const parts = checker.getExportsOfModule(module).map((symbol) => partOf(symbol, checker));
  return [
    '# What the library gives',
    '',
    'Made by `npm run library-api` from `library/index.ts`; a test keeps it up to date. How it is used: [library.md](library.md).',
    '',
    ...parts.sort((a, b) => (a.name < b.name ? -1 : 1)).map((p) => p.text),
  ].join('\n');
}

function partOf(exported: ts.Symbol, checker: ts.TypeChecker): { name: string; text: string } {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  const name = exported.getName();
  const declaration = symbol.declarations?.[0];
  if (!declaration) throw new Error(`${name} is declared nowhere`);
  const isType = ts.isInterfaceDeclaration(declaration) || ts.isTypeAliasDeclaration(declaration);
  const told = isType
    ? declaration.getText().replace(/^export /, '')
    : `${name}: ${checker.typeToString(checker.getTypeOfSymbol(symbol), undefined, ts.TypeFormatFlags.NoTruncation)}`;
  const doc = ts.displayPartsToString(symbol.getDocumentationComment(checker));
  const tags = symbol
    .getJsDocTags(checker)
    .map((t) => `- *${t.name}* ${ts.displayPartsToString(t.text).replaceAll(/\s+/g, ' ')}`);
  const lines = [`## ${name}`, '', '```ts', told, '```', '', ...(doc ? [doc, ''] : [])];
  return { name, text: [...lines, ...(tags.length > 0 ? [...tags, ''] : [])].join('\n') };
}

if (process.argv[1]?.endsWith('library-api.ts')) {
  writeFileSync(new URL('../docs/library-api.md', import.meta.url), apiPage());
}
