import { parseSync, Visitor } from 'rolldown/utils';

/** A closed set of words in a source: what it lists, in alphabetical order, and where. */
export interface WordSet {
  readonly words: string;
  readonly count: number;
  readonly at: string;
  /** A schema lists its words for reading and for types; a type alone for the code. */
  readonly form: 'schema' | 'type';
}

interface Literal {
  readonly type: string;
  readonly value?: unknown;
  readonly literal?: Literal;
}

const textOf = (node: Literal | null): string | null => {
  const literal = node?.type === 'TSLiteralType' ? node.literal : node;
  return literal?.type === 'Literal' && typeof literal.value === 'string' ? literal.value : null;
};

function setOf(nodes: readonly (Literal | null)[], at: string, form: WordSet['form']): readonly WordSet[] {
  const words = nodes.map(textOf).filter((word) => word !== null);
  if (words.length !== nodes.length || words.length < 2) return [];
  return [{ words: words.toSorted().join(' | '), count: words.length, at, form }];
}

/** Every closed set of words that a source spells out: of a `z.enum([...])`, or of a union of literal types. */
export function wordSets(path: string, source: string): readonly WordSet[] {
  const { program } = parseSync(path, source);
  const at = (offset: number): string => `${path}:${source.slice(0, offset).split('\n').length}`;
  const found: WordSet[] = [];
  const keyLists = new Set<number>();
  new Visitor({
    TSTypeReference: ({ typeName, typeArguments }) => {
      const keys = typeArguments?.params[1];
      if (typeName.type === 'Identifier' && /^(Pick|Omit)$/.test(typeName.name) && keys)
        keyLists.add(keys.start);
    },
    CallExpression: ({ callee, arguments: [list], start }) => {
      const isEnum =
        callee.type === 'MemberExpression' &&
        callee.property.type === 'Identifier' &&
        callee.property.name === 'enum';
      if (isEnum && list?.type === 'ArrayExpression')
        found.push(...setOf(list.elements, at(start), 'schema'));
    },
    TSUnionType: ({ types, start }) => {
      if (!keyLists.has(start)) found.push(...setOf(types, at(start), 'type'));
    },
  }).visit(program);
  return found;
}
