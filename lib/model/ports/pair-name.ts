/** A terminal or a label without the sign of its pair: `CH1` for `CH1+` and `CH1-`, `REM` for `REM`. */
export function stemName(name: string): string {
  return name.replace(/[+-]$/, '');
}

/** A link as its file names it: `out` for the conductors `out.+` and `out.-` of a pair, and for `out`. */
export function linkName(id: string): string {
  return id.replace(/\.[+-]$/, '');
}

/** Where a job writes a link, key by key from its top, by the id of one of its conductors. */
export function linkEntry(id: string): readonly string[] {
  return ['links', linkName(id)];
}
