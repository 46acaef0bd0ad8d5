import { bracketFault } from './open-bracket.ts';

interface Word {
  /** What the parser says. */
  readonly reason: RegExp;
  /** What stands at the place: the rest of the line. */
  readonly rest?: RegExp;
  /** What stands before the place on its line. */
  readonly before?: RegExp;
  /** The lines up to this one that are not empty, this one last. */
  readonly lines?: RegExp;
  readonly says: string;
}

/** From the particular to the general: the first that fits is said. */
const words: readonly Word[] = [
  {
    reason: /bad indentation|missed comma|block mapping|complex/,
    lines: /[:[,{]\s*\?\s*(?:[,}\]]|$)[^\n]*$/,
    says: 'a ? can not stand for what is not known yet: leave the name out too, or put # before the line',
  },
  {
    reason: /bad indentation/,
    before: /^\s*[\w-]+\s*\{[^{}]*$/,
    says: 'a colon is missing between the name and its {: write name: { ... }',
  },
  {
    reason: /bad indentation/,
    before: /^\s*$/,
    lines: /(?:^|\n)\s*- [^\n]*\n\s*[^-\s#][^\n]*$/,
    says: 'the line above is an entry of a list, and this one a name: write both as name: value, without -',
  },
  {
    reason: /bad indentation/,
    before: /^\s*$/,
    lines: /(?:^|\n)\s*[^-\s#][^\n]*\n\s*- [^\n]*$/,
    says: 'this line is an entry of a list, and the one above has a name: write both as name: value, without -',
  },
  { reason: /tab characters/, says: 'a tab stands in the indentation: use spaces' },
  {
    reason: /bad indentation|deficient/,
    before: /^ *\t/,
    says: 'a tab stands in the indentation: use spaces',
  },
  {
    reason: /bad indentation/,
    rest: /^[@`%]/,
    says: "a value can't begin with @, % or `: put quotes round the text",
  },
  {
    reason: /bad indentation/,
    rest: /^:/,
    says: 'there is a second colon in this line: put quotes round the text, or begin a new line',
  },
  {
    reason: /bad indentation/,
    before: /["'\]}]\s*$/,
    says: 'there is something after the closing quote or bracket: a text that holds quotes needs quotes of the other kind round it',
  },
  {
    reason: /bad indentation/,
    says: 'the indentation does not fit the lines above: what belongs together begins in the same column',
  },
  {
    reason: /deficient indentation|within a flow collection|within a (single|double) quoted/,
    says: 'a bracket or a quote that was opened above is not closed',
  },
  { reason: /missed comma/, says: 'a comma is missing between two entries in brackets' },
  { reason: /found ','/, says: 'there is a comma too many in the brackets' },
  {
    reason: /end of the stream or a document separator|expected ':'|multiline key|can not read/,
    says: 'this does not belong to what stands above: each line needs name: value with a space after the colon, in the column of its neighbours',
  },
  { reason: /whitespace character is expected/, says: 'a space is missing after the colon' },
  { reason: /nesting exceeded/, says: 'blocks are nested too deep' },
  {
    reason: /escape|hexadecimal/,
    says: 'a \\ in double quotes begins an escape that is not known: use single quotes',
  },
  {
    reason: /non-printable|null byte|JSON character/,
    says: "there is a character that can't be printed: write the line anew",
  },
  { reason: /alias|anchor/, says: "anchors (&name) and aliases (*name) can't be used: write the value out" },
  { reason: /tag/, says: "tags (!name) can't be used: leave it out" },
  { reason: /directive|YAML version/i, says: "lines that begin with % can't be used: leave it out" },
  {
    reason: /block scalar|chomping|indentation width|line break/,
    says: 'after | or > nothing may follow in the line, except - or + and a comment',
  },
];

/** What is wrong with a file that can't be parsed, in plain words, from the parser's reason and the place. */
export function syntaxFault(reason: string, source: string, offset: number): string {
  const before =
    source
      .slice(0, offset)
      .split(/[\r\n]/)
      .at(-1) ?? '';
  const line = `${before}${/^[^\r\n]*/.exec(source.slice(offset))?.[0] ?? ''}`;
  const above = source.slice(0, offset - before.length).split(/[\r\n]+/);
  const lines = [...above.filter((one) => /\S/.test(one) && !/^\s*#/.test(one)).slice(-1), line].join('\n');
  const rest = source.slice(offset).split(/[\r\n]/, 1)[0] ?? '';
  const word = words.find(
    (one) =>
      one.reason.test(reason) &&
      (one.rest?.test(rest) ?? true) &&
      (one.before?.test(before) ?? true) &&
      (one.lines?.test(lines) ?? true),
  );
  const bracket = /flow|deficient/.test(reason) ? bracketFault(source, offset) : null;
  if (bracket !== null && word?.lines === undefined) return bracket;
  return word?.says ?? "this line can't be read: check its colons, quotes, brackets and indentation";
}
