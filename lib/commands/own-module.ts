/**
 * The file of a module of ours, to be started in a process or thread of its own: `name` is its path from the module
 * that asks, without an ending. In the repository it is TypeScript, in the package what that was compiled to.
 *
 * @param asking `import.meta.url` of the module that asks.
 */
export function ownModule(name: string, asking: string): URL {
  return new URL(`${name}${asking.endsWith('.ts') ? '.ts' : '.js'}`, asking);
}
