/**
 * Mutants of one source file: small wrong changes that some test should notice.
 *
 * All of them are written into the file at once, each behind a switch (switch.ts): `(wrong$(17) ? wrong : right)`. So the
 * code is bundled once, and a mutant is chosen by its number while the code stands loaded. The switch bears a name that
 * no variable of the code has.
 */
import ts from 'typescript';

export interface Mutant {
  readonly id: number;
  readonly file: string;
  readonly line: number;
  /** What was changed, in words. */
  readonly what: string;
  readonly from: string;
  readonly to: string;
  /** The whole source line, trimmed: names the mutant where line numbers move. */
  readonly text: string;
  /** Outside any function: it is decided once, as its file is loaded. */
  readonly standing?: true;
  /** Drawn of the whole engine, not of its room. */
  readonly whole?: true;
}

const SWITCH = new URL('switch.ts', import.meta.url).pathname;

type Wrong = readonly [what: string, text: string];

const boundaries: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
};
const arithmetic: Readonly<Record<string, string>> = { '+': '-', '-': '+', '*': '/', '/': '*' };
const assigned: Readonly<Record<string, string>> = { '+=': '-=', '-=': '+=', '*=': '/=', '/=': '*=' };
const others: Readonly<Record<string, string>> = { min: 'max', max: 'min', some: 'every', every: 'some' };
/** Severities and verdicts: what forbids becomes a note, what is a note forbids. */
const severities: Readonly<Record<string, string>> = {
  forbids: 'notes',
  unknown: 'notes',
  limits: 'notes',
  notes: 'forbids',
  hold: 'go',
  go: 'hold',
};
/** Below this a number is a guard against rounding, and a little more of it changes nothing. */
const SMALLEST = 1e-5;

/** The file with every mutant in it, behind switches numbered from `first`; only those that `keep` says. */
export function mutate(
  file: string,
  source: string,
  first: number,
  keep: (mutant: Mutant) => boolean = () => true,
): { readonly code: string; readonly mutants: readonly Mutant[] } {
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true);
  const lines = source.split('\n');
  const mutants: Mutant[] = [];
  let next = first;

  const write = (node: ts.Node): string => {
    const inside = children(node);
    const wrongs = ts.isExpression(node) ? wrongsOf(node, source) : [];
    const kept = wrongs.flatMap(([what, to]) => {
      const { line } = tree.getLineAndCharacterOfPosition(node.getStart());
      const from = node.getText();
      const standing = isWithinFunction(node) ? {} : ({ standing: true } as const);
      const mutant = {
        id: next,
        file,
        line: line + 1,
        what,
        from,
        to,
        text: lines[line].trim(),
        ...standing,
      };
      next++;
      if (!keep(mutant)) return [];
      mutants.push(mutant);
      return [`wrong$(${mutant.id}) ? (${to}) : `];
    });
    return kept.length === 0 ? inside : `(${kept.join('')}(${inside}))`;
  };

  /** The node's own text, with what is written anew for its children. */
  const children = (node: ts.Node): string => {
    let text = '';
    let at = node.getStart();
    ts.forEachChild(node, (child) => {
      text += source.slice(at, child.getStart());
      text += ts.isTypeNode(child) || ts.isImportDeclaration(child) ? child.getText() : write(child);
      at = child.getEnd();
    });
    return text + source.slice(at, node.getEnd());
  };

  const body = children(tree);
  return { code: `import { wrong$ } from '${SWITCH}';\n${body}`, mutants };
}

/** Wrong texts that may stand in for an expression. */
function wrongsOf(node: ts.Expression, source: string): Wrong[] {
  const text = (n: ts.Node): string => n.getText();
  if (ts.isBinaryExpression(node)) return binary(node, source);
  if (ts.isPrefixUnaryExpression(node)) {
    if (node.operator === ts.SyntaxKind.ExclamationToken) return [['not dropped', text(node.operand)]];
    if (node.operator === ts.SyntaxKind.MinusToken) return [['sign dropped', text(node.operand)]];
  }
  if (ts.isNumericLiteral(node) && isValue(node)) return number(Number(node.text));
  if (ts.isStringLiteral(node) && isValue(node)) {
    const other = severities[node.text];
    return other === undefined ? [] : [['severity', `'${other}'`]];
  }
  if (ts.isArrayLiteralExpression(node) && node.elements.length > 0 && isGiven(node)) {
    return [['emptied', '[]']];
  }
  if (ts.isCallExpression(node)) return call(node);
  if (isCondition(node)) return forced(node);
  return [];
}

function binary(node: ts.BinaryExpression, source: string): Wrong[] {
  const { left, operatorToken, right } = node;
  const operator = operatorToken.getText();
  const [a, b] = [
    source.slice(left.getStart(), left.getEnd()),
    source.slice(right.getStart(), right.getEnd()),
  ];
  const wrongs: Wrong[] = (boundaries[operator] ?? []).map((o): Wrong => ['comparison', `${a} ${o} ${b}`]);
  if (arithmetic[operator] && !isText(left) && !isText(right)) {
    wrongs.push(['arithmetic', `(${a}) ${arithmetic[operator]} (${b})`]);
  }
  if (assigned[operator]) wrongs.push(['arithmetic', `${a} ${assigned[operator]} ${b}`]);
  if (operator === '&&') wrongs.push(['and, or', `(${a}) || (${b})`]);
  if (operator === '||') wrongs.push(['and, or', `(${a}) && (${b})`]);
  if (operator === '??') wrongs.push(['fallback alone', b], ['fallback dropped', a]);
  return isCondition(node) ? [...wrongs, ...forced(node)] : wrongs;
}

function call(node: ts.CallExpression): Wrong[] {
  const callee = node.expression;
  const wrongs: Wrong[] = isCondition(node) ? forced(node) : [];
  if (ts.isPropertyAccessExpression(callee)) {
    const other = others[callee.name.text];
    const whole = node.getText();
    const at = callee.name.getStart() - node.getStart();
    if (other && !node.questionDotToken) {
      wrongs.push(['other of two', whole.slice(0, at) + other + whole.slice(at + callee.name.text.length)]);
    }
  }
  if (ts.isExpressionStatement(node.parent)) wrongs.push(['left out', 'undefined']);
  if (ts.isSpreadElement(node.parent)) wrongs.push(['left out', '[]']);
  return wrongs;
}

const forced = (node: ts.Node): Wrong[] => {
  const never: Wrong = ['never', 'false'];
  return isLoop(node.parent) ? [never] : [never, ['always', 'true']];
};

function number(n: number): Wrong[] {
  if (n !== 0 && Math.abs(n) < SMALLEST) return [];
  return [['number', Number.isInteger(n) && Math.abs(n) < 10 ? `${n + 1}` : `${n * 1.1}`]];
}

const isLoop = (node: ts.Node): boolean =>
  ts.isForStatement(node) || ts.isWhileStatement(node) || ts.isDoStatement(node);

/** Something decides by it alone: the condition of an if, a loop, a choice; a side of && or ||. */
function isCondition(node: ts.Expression): boolean {
  const { parent } = node;
  if (ts.isIfStatement(parent) || ts.isWhileStatement(parent)) return parent.expression === node;
  if (ts.isConditionalExpression(parent) || ts.isForStatement(parent)) return parent.condition === node;
  if (ts.isBinaryExpression(parent)) {
    const operator = parent.operatorToken.kind;
    return (
      (operator === ts.SyntaxKind.AmpersandAmpersandToken || operator === ts.SyntaxKind.BarBarToken) &&
      parent.left === node
    );
  }
  return false;
}

function isWithinFunction(node: ts.Node): boolean {
  for (let at = node.parent; at; at = at.parent) if (ts.isFunctionLike(at)) return true;
  return false;
}

/** An array that is given back, or kept under a name. */
const isGiven = ({ parent }: ts.Node): boolean =>
  ts.isReturnStatement(parent) || ts.isArrowFunction(parent) || ts.isConditionalExpression(parent);

/** A literal that is a value: no name of a property, no type, no module. */
const isValue = (node: ts.Node): boolean =>
  !ts.isPropertyName(node) || !ts.isObjectLiteralElementLike(node.parent) || node.parent.name !== node
    ? !ts.isLiteralTypeNode(node.parent) &&
      !ts.isImportDeclaration(node.parent) &&
      !ts.isExportDeclaration(node.parent) &&
      !(ts.isPropertySignature(node.parent) && node.parent.name === node)
    : false;

const isText = (node: ts.Node): boolean =>
  ts.isStringLiteralLike(node) ||
  ts.isTemplateExpression(node) ||
  (ts.isBinaryExpression(node) && (isText(node.left) || isText(node.right)));
