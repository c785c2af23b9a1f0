import { dirname, join, relative, sep } from 'node:path';
import ts from 'typescript';

/** Parts of the reference, by the folder of `src` that a name comes from; the recipes above the floors first. */
const PARTS: Readonly<Record<string, string>> = {
  '': 'The main calls',
  catalogue: 'Blanks, papers, press cards',
  geometry: 'Lengths and shapes',
  formats: 'Artwork',
  job: 'A job: art on a blank',
  checks: 'Checks and findings',
  mends: 'Mends',
  prepare: 'The plan of a print',
  conditions: 'What a printer makes of colours',
  printers: "A maker's printer",
  sheet: 'Sheets',
  costing: 'Cost',
  ledger: 'What was pressed',
  reports: 'Reports',
  raster: 'Pictures in memory',
  archive: 'ZIPs',
};

interface Entry {
  readonly name: string;
  readonly part: string;
  readonly markdown: string;
}

/** The reference of everything that the door of the library exports, as Markdown, from its sources and their comments. */
export function renderApi(root: string): string {
  const config = ts.readConfigFile(join(root, 'tsconfig.json'), ts.sys.readFile).config;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const door = join(root, 'src', 'index.ts');
  const program = ts.createProgram([door], options);
  const checker = program.getTypeChecker();
  const module = checker.getSymbolAtLocation(program.getSourceFile(door)!)!;
  const entries = checker
    .getExportsOfModule(module)
    .map((exported) => describe(exported, checker, join(root, 'src')))
    .sort((a, b) => (a.name.toLowerCase() < b.name.toLowerCase() ? -1 : 1));
  const known = Object.keys(PARTS);
  const stranger = entries.find(({ part }) => !known.includes(part));
  if (stranger) throw new Error(`Expected a part for ${stranger.part}, where ${stranger.name} comes from.`);
  const sections = known.flatMap((part) => {
    const here = entries.filter((entry) => entry.part === part);
    return here.length === 0 ? [] : [`## ${PARTS[part]}`, ...here.map(({ markdown }) => markdown)];
  });
  return `${[HEAD, ...sections].join('\n\n')}\n`;
}

const HEAD = `# The library, name by name

Made from the sources and their comments by a test (\`UPDATE=1 npx vitest run --dir tests docs/api\`); a program to begin with is in the
README. Lengths are in mm and their names say so, colours name their white point. Nothing here touches a disk, the console or
the process.`;

function describe(exported: ts.Symbol, checker: ts.TypeChecker, source: string): Entry {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  const [declaration] = symbol.declarations!;
  const file = declaration!.getSourceFile();
  const folder = dirname(relative(source, file.fileName)).split(sep)[0]!;
  const name = exported.name;
  const comment = ts.displayPartsToString(symbol.getDocumentationComment(checker));
  const tags = symbol
    .getJsDocTags(checker)
    .map((tag) => `*${TAGS[tag.name] ?? tag.name}:* ${ts.displayPartsToString(tag.text)}`.trim());
  const text = signatureOf(symbol, declaration!, checker);
  const parts = [`### ${name}`, comment, ...tags, `\`\`\`ts\n${text}\n\`\`\``];
  return {
    name,
    part: folder === '.' ? '' : folder,
    markdown: parts
      .filter((part) => part !== '')
      .map((part) => part.replace(/[ \t]+$/gm, ''))
      .join('\n\n'),
  };
}

const TAGS: Readonly<Record<string, string>> = { throws: 'Throws', see: 'See' };

function signatureOf(symbol: ts.Symbol, declaration: ts.Declaration, checker: ts.TypeChecker): string {
  if (ts.isFunctionDeclaration(declaration)) {
    const end = declaration.body?.getStart() ?? declaration.getEnd();
    return bare(declaration.getSourceFile().text.slice(declaration.getStart(), end));
  }
  if (ts.isVariableDeclaration(declaration)) {
    const type = checker.getTypeOfSymbol(symbol);
    const told = checker.typeToString(type, undefined, ts.TypeFormatFlags.None);
    return `const ${symbol.name}: ${told}`;
  }
  if (ts.isClassDeclaration(declaration)) {
    const members = declaration.members
      .filter((member) => !ts.isConstructorDeclaration(member))
      .map((member) => `  ${member.getText()}`);
    const from = declaration.heritageClauses?.map((clause) => ` ${clause.getText()}`).join('') ?? '';
    return `class ${symbol.name}${from} {\n${members.join('\n')}\n}`;
  }
  if (ts.isTypeAliasDeclaration(declaration) && declaration.type.getText().includes('typeof'))
    return `type ${symbol.name} = ${spellOut(checker.getTypeAtLocation(declaration), checker)};`;
  return bare(declaration.getText());
}

/** The values of a list that stands elsewhere, which tells a reader nothing; sorted, since their order is the compiler's own. */
function spellOut(type: ts.Type, checker: ts.TypeChecker): string {
  const isLiterals = type.isUnion() && type.types.every((one) => one.isStringLiteral());
  if (isLiterals)
    return type.types
      .map((one) => `'${(one as ts.StringLiteralType).value}'`)
      .sort()
      .join(' | ');
  return checker.typeToString(
    type,
    undefined,
    ts.TypeFormatFlags.InTypeAlias | ts.TypeFormatFlags.NoTruncation,
  );
}

function bare(text: string): string {
  return text.replace(/^export (?:default )?/, '').trim();
}
