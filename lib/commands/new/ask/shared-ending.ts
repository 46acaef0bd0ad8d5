/** Words that tell one of a pair from the other, and are no name by themselves. */
const telling = /^(?:left|right|middle|front|rear|upper|lower|inner|outer|top|bottom)$/i;

/**
 * Values of a cell with bars between them, each whole: words behind the last one belong to all of them where those before
 * it only tell which one is meant, `Left|Right front door` or `left|right-kick-panel`. As a text what is wrong with values
 * of which one can't stand by itself and nothing tells what it goes on with.
 */
export function wholeNames(values: readonly string[]): readonly string[] | string {
  const begun = values.slice(0, -1);
  const last = values.at(-1) ?? '';
  const [count = 0] = begun.map((value) => wordsOf(value).length);
  const isBegun = begun.length > 0 && count > 0 && begun.every((one) => isTelling(one, count));
  const [ahead, ending] = partedBehind(last, count);
  if (isBegun && ending !== '' && isTelling(ahead, count))
    return [...begun.map((value) => `${value}${ending}`), last];
  const bare = values.find((value) => value !== '' && isTelling(value, wordsOf(value).length));
  const named = values.find((value) => wordsOf(value).length > 1 && !isTelling(value, wordsOf(value).length));
  const isNamed = named !== undefined && telling.test(wordsOf(named)[0] ?? '');
  return bare !== undefined && isNamed
    ? `has "${values.join('|')}", where "${bare}" is no whole name: write each of them whole, such as Left front door|Right front door`
    : values;
}

function wordsOf(value: string): readonly string[] {
  return value.split(/[\s-]+/).filter((word) => word !== '');
}

function isTelling(value: string, count: number): boolean {
  const words = wordsOf(value);
  return words.length === count && words.every((word) => telling.test(word));
}

/** The first words of a value, and what stands behind them with what parts it from them. */
function partedBehind(value: string, count: number): readonly [string, string] {
  const [ahead = ''] =
    new RegExp(`^(?:[^\\s-]+[\\s-]+){${Math.max(count - 1, 0)}}[^\\s-]+`).exec(value) ?? [];
  return [ahead, value.slice(ahead.length)];
}
