import { pointer } from '../../model/place.ts';
import { wireSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { counted, lengthIn } from '../words.ts';

const short: Rule = {
  id: 'stock-short',
  judge({ job, plan }) {
    const written = (part: string) =>
      plan.wires.filter((wire) => wire.part === part).map(({ id }) => wireSpot({ job, plan }, id));
    return plan.pick.flatMap(
      ({ part, kind, quantity, unit, stockQuantity, short: missing }): Verdict<'stock-short'>[] => {
        // A fuse that is short has a rule of its own, which tells the lawful alternatives.
        if (missing <= 0 || kind === 'fuse') return [];
        const length = lengthIn(job, { path: pointer(['stock', part]), file: 'shop' }, ...written(part));
        const amount = (value: number) => (unit === 'm' ? length(value) : counted(value, 'piece'));
        return [
          {
            level: 'caution',
            of: [part],
            message: `the job takes ${amount(quantity)} of ${part}, the shelf has ${amount(stockQuantity)}, ${amount(missing)} ${unit === 'm' ? 'is on no single reel' : 'short'}`,
            value: stockQuantity,
            limit: quantity,
            unit,
            remedy: unit === 'm' ? 'order a reel; two ends do not make one length' : 'order what is short',
            path: pointer(['stock', part]),
            file: 'shop',
          },
        ];
      },
    );
  },
};

export const stockRules: readonly Rule[] = [short];
