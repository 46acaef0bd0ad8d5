import { indexWords } from './search-words.ts';

/** A piece of a line, and whether it answers the question. */
export interface LinePiece {
  readonly text: string;
  readonly isHit: boolean;
}

/** What a page is known by. */
export interface KnownTexts {
  readonly title: string;
  readonly lines: readonly string[];
  /** Ids and labels: of these only those that answer are shown. */
  readonly names: readonly string[];
}

/** Lines shown of a page, beside its title. */
const mostLines = 2;

/** Letters of a line that is shown: of a longer one what is round the first word that answers. */
const mostLetters = 160;

/** Of a page the lines that answer a question best, each with the words in it that do: one line a word, those with more words first. */
export function markedLines(asked: readonly string[], { title, lines, names }: KnownTexts): LinePiece[][] {
  let open = asked.filter((word) => !meets(indexWords(title), word));
  const shown: LinePiece[][] = [];
  while (open.length > 0 && shown.length < mostLines) {
    const best = bestLine(open, lines);
    if (best === null) break;
    shown.push(pieces(best.text, asked));
    open = open.filter((word) => !best.answers.includes(word));
  }
  const named = names.filter((name) => open.some((word) => meets(indexWords(name), word)));
  return named.length === 0 ? shown : [...shown, named.slice(0, 6).map(namePiece)];
}

function namePiece(text: string, index: number): LinePiece {
  return { text: index === 0 ? text : `, ${text}`, isHit: false };
}

function bestLine(
  open: readonly string[],
  lines: readonly string[],
): { readonly text: string; readonly answers: readonly string[] } | null {
  let best: { readonly text: string; readonly answers: readonly string[] } | null = null;
  for (const text of lines) {
    const words = indexWords(text);
    const answers = open.filter((word) => meets(words, word));
    if (answers.length > (best?.answers.length ?? 0)) best = { text, answers };
  }
  return best;
}

/** A word answers what it begins with, as the index has it. */
function meets(words: readonly string[], asked: string): boolean {
  return words.some((word) => word.startsWith(asked));
}

function pieces(line: string, asked: readonly string[]): LinePiece[] {
  const all = line
    .split(/(\s+|[,;:.]+(?=\s|$))/)
    .map((text) => ({ text, isHit: asked.some((word) => meets(indexWords(text), word)) }));
  return shortened(all);
}

function shortened(all: readonly LinePiece[]): LinePiece[] {
  const letters = all.reduce((sum, { text }) => sum + text.length, 0);
  if (letters <= mostLetters) return [...all];
  const first = Math.max(
    0,
    all.findIndex(({ isHit }) => isHit),
  );
  const from = Math.max(0, first - 8);
  const out: LinePiece[] = from > 0 ? [{ text: '… ', isHit: false }] : [];
  let room = mostLetters;
  for (const piece of all.slice(from)) {
    room -= piece.text.length;
    if (room < 0) return [...out, { text: '…', isHit: false }];
    out.push(piece);
  }
  return out;
}
