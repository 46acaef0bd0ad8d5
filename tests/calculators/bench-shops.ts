import { type Bench, type BenchShop, openBench } from '../../lib/calculators/bench.ts';
import { type Answer, type Answered, initialEntries, isAnswer } from '../../lib/calculators/calculator.ts';
import { calculators } from '../../lib/calculators/index.ts';
import { awgSize } from '../../lib/model/quantity/wire-size.ts';

const reel = (awg: string, stockM: number) => ({
  cable: {
    part: `wire-${awg.replace('/', '-')}`,
    size: awgSize(awg),
    material: 'copper' as const,
    insulationC: 105,
    stockM,
  },
  uses: ['power', 'ground'] as const,
});

/** A shop that sets no house rule, with four reels and three kinds of fuse. */
export const smallBenchShop: BenchShop = {
  units: 'inch',
  fraction: 16,
  rules: {},
  reels: [reel('8', 20), reel('4', 20), reel('1/0', 12), reel('2/0', 2)],
  fuses: [
    { part: 'fuse-maxi-50', form: 'maxi-blade', ratingA: 50, quantity: 4, interruptA: 1000 },
    { part: 'fuse-large-80', form: 'large-bolt-in', ratingA: 80, quantity: 2, interruptA: 2000 },
    { part: 'fuse-large-150', form: 'large-bolt-in', ratingA: 150, quantity: 1, interruptA: 2000 },
  ],
  holders: [{ part: 'holder-maxi', form: 'maxi-blade', quantity: 1, largestA: 60 }],
  sampleRateHz: 48_000,
};
export const smallBench: Bench = openBench(smallBenchShop);

/** What a calculator answers to its first entries with some exchanged. */
export function asked(id: string, entries: Readonly<Record<string, string>>, bench = smallBench): Answered {
  const one = calculators.find((calculator) => calculator.id === id);
  if (!one) throw new Error(`There is no calculator ${id}.`);
  return one.answer({ ...initialEntries(one, bench), ...entries }, bench);
}

/** The same where it must be an answer. */
export function answered(id: string, entries: Readonly<Record<string, string>>, bench = smallBench): Answer {
  const answer = asked(id, entries, bench);
  if (!isAnswer(answer)) throw new Error(`No answer: ${JSON.stringify(answer)}`);
  return answer;
}

/** The text of a figure of an answer. */
export function figureText({ figures }: Answer, label: string): string | undefined {
  return figures.find((figure) => figure.label === label)?.text;
}

/** The exact value of a figure. */
export function exact({ figures, steps }: Answer, label: string): number {
  return Number([...figures, ...steps].find((figure) => figure.label === label)?.trace?.value);
}
