import type { Estimate } from '../../model/estimate/estimate.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import {
  amountText,
  differenceText,
  freeLines,
  lacksOf,
  layerName,
  lineFrom,
  lineName,
  quantityWriter,
  standingNotes,
  totalText,
  workedText,
} from '../../publish/estimate/estimate-words.ts';
import { hoursText } from '../../publish/words/hours-text.ts';

/** An estimate as the command line prints it: the total first, then each line, each part and each layer. */
export function estimateText(estimate: Estimate, { shop }: Pick<BuildPlan, 'shop'>): string {
  const { job, revision, currency, parts, hours, estimatedMinutes, workedMinutes } = estimate;
  const quantityText = quantityWriter(shop);
  const money = (minor: number | null) =>
    minor === null ? 'no price' : `${amountText(estimate, minor)} ${currency}`;
  const total = { layer: 'all', minutes: estimatedMinutes, workedMinutes };
  return [
    `${job}, revision ${revision}: ${totalText(estimate)}`,
    ...standingNotes(estimate),
    ...lacksOf(estimate),
    ...estimate.sum.map(({ of, minor }) => `  ${lineName(of)}: ${money(minor)} (${lineFrom(estimate, of)})`),
    ...(parts.length > 0 ? ['Parts'] : []),
    ...parts.map(
      (one) =>
        `  ${quantityText(one)} x ${one.title} (${one.part}): ${money(one.costMinor)}${one.price === null ? '' : `, ${one.price}`}`,
    ),
    ...freeLines(estimate).map((text) => `${text} No cost.`),
    'Hours of one person',
    ...[...hours, total].map((one) => {
      const worked = one.workedMinutes === 0 ? '' : `, worked ${hoursText(one.workedMinutes)}`;
      const difference = differenceText(one.minutes, one.workedMinutes);
      return `  ${layerName(one.layer)}: ${hoursText(one.minutes)}${worked}${difference === '' ? '' : `, ${difference}`}`;
    }),
    workedText(estimate),
  ].join('\n');
}
