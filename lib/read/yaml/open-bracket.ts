/** A bracket or a quote that is open at an offset of a source. */
interface Opened {
  readonly mark: string;
  readonly line: number;
}

const closing: Readonly<Record<string, string>> = { '[': ']', '{': '}' };

/**
 * What is wrong with the brackets up to an offset: the one that is open there, and in which line it was opened, or the one
 * that is closed by another kind. Null where none is open. Quotes and comments are passed over as YAML has them.
 */
export function bracketFault(source: string, offset: number): string | null {
  const open = openAt(source, offset).at(-1);
  if (open === undefined) return null;
  const here = source[offset] ?? '';
  const asked = closing[open.mark] ?? open.mark;
  const what = `the ${open.mark} that was opened in line ${open.line}`;
  if ((here === ']' || here === '}') && here !== asked)
    return `${what} is closed by ${here}: write ${asked} before it`;
  return /^\s*(?:#.*)?(?:\n|$)/.test(source.slice(offset)) || /(?:^|\n)\s*$/.test(source.slice(0, offset))
    ? `${what} is not closed: write ${asked} at its end`
    : null;
}

function openAt(source: string, offset: number): readonly Opened[] {
  const open: Opened[] = [];
  let line = 1;
  for (let at = 0; at < offset; at += 1) {
    const mark = source[at] ?? '';
    if (mark === '\n') line += 1;
    else if (open.at(-1)?.mark === mark && /["']/.test(mark)) open.pop();
    else if (/["']/.test(open.at(-1)?.mark ?? '')) continue;
    else if (mark === '#' && /[\s]/.test(source[at - 1] ?? '\n')) at = endOfLine(source, at) - 1;
    else if (mark === '[' || mark === '{' || (/["']/.test(mark) && /[\s:[{,]/.test(source[at - 1] ?? '\n')))
      open.push({ mark, line });
    else if (mark === closing[open.at(-1)?.mark ?? '']) open.pop();
  }
  return open;
}

function endOfLine(source: string, at: number): number {
  const end = source.indexOf('\n', at);
  return end < 0 ? source.length : end;
}
