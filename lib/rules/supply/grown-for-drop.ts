import type { PlanConductor } from '../../model/plan/index.ts';
import { linkEntry } from '../../model/ports/pair-name.ts';
import { houseRule } from '../house-rule-of.ts';
import { wireSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed, voltsAllowed, voltsLost } from '../words.ts';

type Grown = PlanConductor & { readonly grown: NonNullable<PlanConductor['grown']> };

/** What a device would lose with the last size that was too thin. */
function lostText({ grown: { with: tried, item, side, lostV, allowedV } }: Grown): string {
  if (lostV === 0) return `with ${tried.label} ${item} could not be fed`;
  const where = side === 'ground' ? 'on the ground side' : 'on feed and ground';
  return `with ${tried.label} ${item} would lose ${voltsLost(lostV)} ${where} at rated power, where ${voltsAllowed(allowedV)} are allowed`;
}

/** Conductors that are larger than their fuses ask, since a device would lose too much: one finding for each device. */
export const grownForDrop: Rule = {
  id: 'grown-for-drop',
  judge(about) {
    const { conductors } = about.plan.power;
    const grown = conductors.flatMap((one): Grown[] => (one.grown ? [{ ...one, grown: one.grown }] : []));
    const items = [...new Set(grown.map((one) => one.grown.item))];
    return items.flatMap((item): Verdict<'grown-for-drop'>[] => {
      const own = grown.filter((one) => one.grown.item === item);
      const [first] = own;
      if (!first) return [];
      const sizes = own.map(
        ({ id, size, grown: { from: before } }) =>
          `${id} is ${size.label} where ${before.label} carries its fuse`,
      );
      const { from } = houseRule(
        about.job,
        first.grown.side === 'ground' ? 'ground-drop-limit' : 'drop-limit',
      );
      return [
        {
          level: 'note',
          of: [...own.map(({ id }) => id), item],
          message: `${listed(sizes)}, for the drop alone: ${lostText(first)}`,
          remedy: `leave it; or write size: ${first.grown.from.label} at ${first.id}, and the drop stays as a caution; or make it shorter, by another way or another place of the board`,
          writesAt: own.map(({ id }) => linkEntry(id)),
          ...from,
          ...wireSpot(about, first.id),
        },
      ];
    });
  },
};
