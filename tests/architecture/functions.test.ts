import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync, Visitor } from 'rolldown/utils';
import { describe, expect, test } from 'vitest';
import { libModules, root } from './modules.ts';

const most = 60;

/** Functions of a source that are longer than so many lines, by their first line. */
function longFunctions(path: string, source: string, lines: number): string[] {
  const { program } = parseSync(path, source);
  const lineOf = (at: number): number => source.slice(0, at).split('\n').length;
  const found: string[] = [];
  const look = ({ start, end }: { readonly start: number; readonly end: number }): void => {
    const first = lineOf(start);
    const long = lineOf(end) - first + 1;
    if (long > lines) found.push(`${path}:${first}: ${long}`);
  };
  new Visitor({
    FunctionDeclaration: look,
    FunctionExpression: look,
    ArrowFunctionExpression: look,
  }).visit(program);
  return found;
}

/** Functions that take a whole job or plan and read one or two of its fields, by their first line. */
function wholeTakers(path: string, source: string): string[] {
  const { program } = parseSync(path, source);
  const found: string[] = [];
  new Visitor({
    ObjectPattern: ({ properties, typeAnnotation, start }) => {
      const type = typeAnnotation?.typeAnnotation;
      const isWhole =
        type?.type === 'TSTypeReference' &&
        type.typeName.type === 'Identifier' &&
        /^(Job|BuildPlan)$/.test(type.typeName.name);
      if (isWhole && properties.length <= 2)
        found.push(`${path}:${source.slice(0, start).split('\n').length}`);
    },
  }).visit(program);
  return found;
}

describe('functions', () => {
  test('that read one or two fields of a job or a plan ask for these alone', () => {
    const takers = libModules().flatMap(({ path }) =>
      wholeTakers(path, readFileSync(join(root, path), 'utf8')),
    );
    expect(takers).toEqual([]);
    expect(
      wholeTakers('a.ts', "function a({ rules }: Job) {}\nconst b = ({ rules }: Pick<Job, 'rules'>) => 0;"),
    ).toEqual(['a.ts:1']);
  });

  test(`of lib are at most ${most} lines long`, () => {
    const long = libModules().flatMap(({ path }) =>
      longFunctions(path, readFileSync(join(root, path), 'utf8'), most),
    );
    expect(long).toEqual([]);
  });

  test('are seen by the check in each of their forms, methods too', () => {
    const body = '{\n  a();\n  a();\n}';
    const source = `function one() ${body}\nconst two = () => ${body};\nclass C {\n  three() ${body}\n}\nconst o = { four() ${body} };\nconst f = function () ${body};`;
    expect(longFunctions('a.ts', source, 3)).toHaveLength(5);
    expect(longFunctions('a.ts', source, 4)).toEqual([]);
  });
});
