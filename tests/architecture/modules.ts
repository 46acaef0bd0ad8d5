import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync, Visitor } from 'rolldown/utils';

/** The folder of the project. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

/** What one module takes from elsewhere. */
export interface Taken {
  /** As written: a package, a `node:` module, or a path. */
  readonly from: string;
  /** Path from the root, for a module of ours. */
  readonly module: string | null;
  /** True where only types are taken, which nothing runs of. */
  readonly typesOnly: boolean;
  /** True for what is only loaded once the code comes to it. */
  readonly onDemand: boolean;
}

/** A module of `lib/`, as its source says. */
export interface Module {
  readonly path: string;
  readonly lines: number;
  readonly takes: readonly Taken[];
  /** Free names such as `Date` and members of them such as `Math.random`. */
  readonly names: ReadonlySet<string>;
}

/** Every module of `lib/`, parsed. */
export function libModules(): readonly Module[] {
  return readdirSync(join(root, 'lib'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort()
    .map(moduleAt);
}

function moduleAt(path: string): Module {
  const source = readFileSync(join(root, path), 'utf8');
  return { path, lines: source.trimEnd().split('\n').length, ...readModule(path, source) };
}

/** What a source takes and names. A source that can't be parsed is a fault of the test. */
export function readModule(path: string, source: string): Pick<Module, 'takes' | 'names'> {
  const { program, module, errors } = parseSync(path, source);
  const [error] = errors;
  if (error) throw new Error(`${path}: ${error.message}`);
  const taken = (from: string, typesOnly: boolean, onDemand = false): Taken => ({
    from,
    module: from.startsWith('.') ? join(dirname(path), from).split(sep).join('/') : null,
    typesOnly,
    onDemand,
  });
  const takes = [
    ...module.staticImports.map(({ moduleRequest, entries }) =>
      taken(moduleRequest.value, entries.length > 0 && entries.every(({ isType }) => isType)),
    ),
    ...module.staticExports.flatMap(({ entries }) =>
      entries.flatMap(({ moduleRequest, isType }) =>
        moduleRequest ? [taken(moduleRequest.value, isType)] : [],
      ),
    ),
    ...module.dynamicImports.map(({ moduleRequest: { start, end } }) =>
      taken(source.slice(start, end).replace(/^['"`]|['"`]$/g, ''), false, true),
    ),
  ];
  const names = new Set<string>();
  new Visitor({
    Identifier: ({ name }) => {
      names.add(name);
    },
    MemberExpression: ({ object, property }) => {
      if (object.type === 'Identifier' && property.type === 'Identifier')
        names.add(`${object.name}.${property.name}`);
    },
  }).visit(program);
  return { takes, names };
}

/** The rings among modules that take values or types of each other: of each, its modules, one after the one that takes it. */
export function rings(modules: readonly Pick<Module, 'path' | 'takes'>[]): string[][] {
  const next = new Map(
    modules.map(({ path, takes }) => [
      path,
      takes.flatMap(({ module }) => (module === null ? [] : [module])),
    ]),
  );
  const done = new Set<string>();
  const found: string[][] = [];
  const walk = (path: string, way: readonly string[]): void => {
    const at = way.indexOf(path);
    if (at >= 0) found.push([...way.slice(at)]);
    if (at >= 0 || done.has(path)) return;
    for (const other of next.get(path) ?? []) walk(other, [...way, path]);
    done.add(path);
  };
  for (const { path } of modules) walk(path, []);
  return found;
}
