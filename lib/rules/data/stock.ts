import type { Job } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { PlanPick } from '../../model/plan/index.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import { wiresToBuy, wireToBuyId } from '../../plan/work/wire-to-buy.ts';
import { wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { counted, lengthIn, listed } from '../words.ts';
import { promisedText } from './promised.ts';

/** What a job takes and the shelf lacks. A fuse that is short has a rule of its own, which tells the lawful alternatives. */
function lacking({ plan }: Case, unit: PlanPick['unit']): readonly PlanPick[] {
  return plan.pick.filter((one) => one.unit === unit && one.short > 0 && one.kind !== 'fuse');
}

const short: Rule = {
  id: 'stock-short',
  judge(about) {
    const { job, plan } = about;
    const written = (part: string) =>
      plan.wires.filter((wire) => wire.part === part).map(({ id }) => wireSpot({ job, plan }, id));
    return lacking(about, 'm').map((row) => {
      const { part, quantity, unit, stockQuantity, short: missing } = row;
      if (wiresToBuy(plan.wires).some((wire) => wireToBuyId(wire) === part)) return noReel(about, row);
      const length = lengthIn(job, { path: pointer(['stock', part]), file: 'shop' }, ...written(part));
      return {
        level: 'caution',
        of: [part],
        message: `the job takes ${length(quantity)} of ${part}, the shelf has ${length(stockQuantity)}, ${length(missing)} is on no single reel${promisedText(job, part, length)}`,
        value: stockQuantity,
        limit: quantity,
        unit,
        remedy: `order a reel; two ends do not make one length. Once it is there, count it under stock: of the shop file: ${part}: { reels: [LENGTH, LENGTH] }`,
        path: pointer(['stock', part]),
        file: 'shop',
      };
    });
  },
};

/** Wire that no reel of the catalogue is of: it is on the pick list by its size and colour alone. */
function noReel({ job, plan }: Case, { part, title, quantity, unit }: PlanPick): Verdict<'stock-short'> {
  const wires = wiresToBuy(plan.wires).filter((wire) => wireToBuyId(wire) === part);
  const spot = wires[0] ? wireSpot({ job, plan }, wires[0].id) : { path: '/links' };
  const length = lengthIn(job, spot);
  const names = [...new Set(wires.map(({ id }) => linkName(id)))];
  return {
    level: 'caution',
    of: wires.map(({ id }) => id),
    message: `the job takes ${length(quantity)} of wire for ${listed(names)} that no reel of the catalogue is of: ${title}`,
    value: 0,
    limit: quantity,
    unit,
    remedy:
      'order a reel, and put it into the catalogue (rackleaf new part, kind wire) and under stock: of the shop file; or leave size: and colour: out',
    ...spot,
  };
}

const toOrder: Rule = {
  id: 'to-order',
  judge(about): readonly Verdict<'to-order'>[] {
    const { job, plan } = about;
    const missing = lacking(about, 'piece');
    if (missing.length === 0) return [];
    // A fuse alone is told by its own rule; beside others it stands on the order with them.
    const fuses = plan.pick.filter(
      ({ kind, unit, short: lacks }) => kind === 'fuse' && unit === 'piece' && lacks > 0,
    );
    const lines = [...missing, ...fuses].map(({ part, quantity, stockQuantity, short: lacks }) => {
      const promised = promisedText(job, part, (count) => counted(count, 'piece'));
      const there =
        stockQuantity > 0 || promised !== ''
          ? ` (the job takes ${quantity}, the shelf has ${stockQuantity}${promised})`
          : '';
      return `${counted(lacks, 'piece')} of ${part}${there}`;
    });
    return [
      {
        level: 'caution',
        of: missing.map(({ part }) => part),
        message: `to order for this job: ${lines.join(', ')}`,
        remedy: orderText(job, missing),
        path: pointer(['stock']),
        file: 'shop',
      },
    ];
  },
};

/** How what is ordered comes to be counted; what no part of the catalogue is, such as a bolt by its load, is not. */
function orderText({ parts }: Pick<Job, 'parts'>, missing: readonly PlanPick[]): string {
  const [first] = missing.filter(({ part }) => parts[part]);
  const unlisted = missing.flatMap(({ part }) => (parts[part] ? [] : [part]));
  const count =
    first &&
    `once they are there, write what the shelf has under stock: of the shop file, such as ${first.part}: { pieces: ${first.quantity} }`;
  const none =
    unlisted.length > 0 &&
    `the catalogue has no ${listed(unlisted)}: the pick list tells what each has to be, and nothing is to be written for it`;
  return ['order them', count, none].filter(Boolean).join('; ');
}

const notCounted: Rule = {
  id: 'stock-not-counted',
  judge({ job, plan }) {
    const relied = plan.pick.filter(({ stockQuantity, suppliedWith }) => stockQuantity > 0 && !suppliedWith);
    if (job.shop['stock-counted'] || relied.length === 0) return [];
    return [
      {
        level: 'note',
        of: relied.map(({ part }) => part),
        message: `the shelf is not counted: ${counted(relied.length, 'entry', 'entries')} of the pick list ${relied.length === 1 ? 'rests' : 'rest'} on figures that the shop file began with`,
        remedy:
          'count what lies there, mend the figures under stock: of the shop file, and take its line stock-counted: false away',
        path: pointer(['stock-counted']),
        file: 'shop',
      },
    ];
  },
};

export const stockRules: readonly Rule[] = [short, toOrder, notCounted];
