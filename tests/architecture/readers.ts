import { parseSync, Visitor } from 'rolldown/utils';

/** The name of a key that is written as a name; one in quotes is seen as a text. */
const keyOf = (key: object): string | null =>
  'type' in key && key.type === 'Identifier' && 'name' in key && typeof key.name === 'string'
    ? key.name
    : null;

/** Names of fields that a source reads: members, parts of a destructured object, names in quotes. */
export function fieldsRead(path: string, source: string): readonly string[] {
  const { program } = parseSync(path, source);
  const found: string[] = [];
  const add = (key: string | null): void => {
    if (key !== null) found.push(key);
  };
  new Visitor({
    MemberExpression: ({ property }) => add(keyOf(property)),
    ObjectPattern: ({ properties }) => {
      for (const one of properties) if (one.type === 'Property') add(keyOf(one.key));
    },
    Literal: ({ value }) => {
      if (typeof value === 'string') add(value);
    },
  }).visit(program);
  return found;
}
