const name = String.raw`[A-Za-z_][\w.:-]*`;
const attribute = String.raw`\s+${name}="(?:[^"<&]|&(?:amp|lt|gt|quot);)*"`;
const token = new RegExp(
  String.raw`<(${name})((?:${attribute})*)\s*(/?)>|</(${name})>|((?:[^<&]|&(?:amp|lt|gt|quot);)+)`,
  'y',
);

/** What keeps a text from being well-formed XML (1.0, section 2.1: one root, nesting, unique attributes, escapes); null where nothing does. */
export function xmlFault(text: string): string | null {
  const open: string[] = [];
  let roots = 0;
  token.lastIndex = 0;
  while (token.lastIndex < text.length) {
    const start = token.lastIndex;
    const match = token.exec(text);
    if (!match) return `not XML at ${start}: ${text.slice(start, start + 40)}`;
    const [, opened, attributes = '', empty, closed, words] = match;
    if (words !== undefined) {
      if (open.length === 0 && words.trim() !== '') return `text outside the root: ${words}`;
    } else if (closed !== undefined) {
      if (open.pop() !== closed) return `</${closed}> closes nothing`;
    } else if (opened !== undefined) {
      const names = [...attributes.matchAll(/\s([^\s=]+)="/g)].map(([, each]) => each);
      if (new Set(names).size < names.length) return `an attribute twice in <${opened}>`;
      if (open.length === 0) roots += 1;
      if (empty === '') open.push(opened);
    }
  }
  return open.length > 0 || roots !== 1 ? `${roots} roots, still open: ${open.join(' ')}` : null;
}
