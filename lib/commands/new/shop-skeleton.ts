import { type HouseRuleName, houseRuleDefinition, houseRuleNames } from '../../model/house-rules.ts';
import type { Part } from '../../model/kinds/index.ts';
import { handText } from '../../model/quantity/hand-text.ts';
import type { Units } from '../../model/vocabulary.ts';
import { firstStock } from './first-stock.ts';

/** What a new shop begins with. */
export interface ShopBeginning {
  readonly name: string;
  readonly units: Units;
}

/**
 * The text of `content/shop.yaml` for a shop that begins: every house rule as a comment with its default, so that one is
 * set by taking its mark away; and a first stock, to be counted.
 */
export function shopSkeleton({ name, units }: ShopBeginning, parts: Readonly<Record<string, Part>>): string {
  return `rackleaf: 1
name: ${JSON.stringify(name)}
# Stands under the name on every sheet.
# address: ["", ""]
# Where the built site will stand, in full; the codes on the sheets lead there.
# site-url:
# inch or millimetre: what comes first on sheets. A file may always be written in either.
units: ${units}
# Inches are read to 1/16 or to 1/32.
fraction: 16
# letter or a4
paper: ${units === 'inch' ? 'letter' : 'a4'}
# tabloid or a3, where the shop can print it: the wiring of a board that the paper above would cut stands on it as a whole.
# larger-paper: ${units === 'inch' ? 'tabloid' : 'a3'}

# House rules: what holds for every job. Each line below is a default with its source; to set one, take the # away, and
# the braces behind rules:. Those marked cp are common practice, those marked mem were quoted from memory: confirm them.
rules: {}
${houseRuleNames.map((rule) => `#  ${ruleText(rule, units)}`).join('\n')}

# What the shop pays, by part, for its order list and its estimates alone: rackleaf estimate JOB.
# currency: EUR
# prices: { wire-power-4-rd: 1.85 per ft, bolt-m6-40: 14.50 per 100 }
# What an estimate for the counter reckons with beside them: an hour of work, what is put on parts, tax on the whole.
# estimate: { labour: 85 per h, markup: 30 %, tax: 20 % }

# What lies on the shelf: pieces, and what is left on each reel, short ends included. Sizes, fuses and colours are chosen
# from it; what is not listed counts as none. These counts are invented: count your own, then take the first line away.
stock-counted: false
stock:
${firstStock(parts, units)
  .map((line) => `  ${line}`)
  .join('\n')}
`;
}

/** A house rule as it is written, with what it sets and where its default comes from. */
export function ruleText(name: HouseRuleName, units: ShopBeginning['units']): string {
  const { says, dimension, value, citation, mark } = houseRuleDefinition(name);
  const written = dimension === 'count' ? String(value) : handText(value, dimension, units);
  return `${name}: ${written} # ${says} (${mark ?? citation})`;
}
