import { audioRules } from '../../../model/house-rules/audio.ts';
import { batteryRules } from '../../../model/house-rules/batteries.ts';
import { boardRules } from '../../../model/house-rules/board.ts';
import { conductorRules } from '../../../model/house-rules/conductors.ts';
import { fuseRules } from '../../../model/house-rules/fuses.ts';
import { groundRules } from '../../../model/house-rules/grounds.ts';
import { layoutRules } from '../../../model/house-rules/layout.ts';
import { powerAndSignalRules } from '../../../model/house-rules/power-and-signal.ts';
import { raisingRules } from '../../../model/house-rules/raising.ts';
import { routingRules } from '../../../model/house-rules/routing.ts';
import { faultRules } from '../../../model/house-rules/short-circuit.ts';
import { supplyRules } from '../../../model/house-rules/supply.ts';
import { wiringRules } from '../../../model/house-rules/wiring.ts';
import {
  type HouseRuleName,
  houseRuleDefinition,
  houseRulesSchema,
  isHouseRuleName,
} from '../../../model/house-rules.ts';
import { handText } from '../../../model/quantity/hand-text.ts';
import type { Units } from '../../../model/vocabulary.ts';
import type { Page, SiteContext } from '../../page/page.ts';
import { addresses } from '../../site/addresses.ts';
import { sourceText } from '../../words/words.ts';
import { exampleLine, type FieldRow, type FieldSection, fieldSections } from './field-sections.ts';
import { type DrawPicture, fieldsPage } from './kind-page.ts';

const families = [
  ['supply', 'Supply', supplyRules],
  ['batteries', 'Batteries', batteryRules],
  ['conductors', 'Conductors and drops', conductorRules],
  ['grounds', 'Grounds', groundRules],
  ['fuses', 'Fuses', fuseRules],
  ['short-circuit', 'Short circuit and interrupting', faultRules],
  ['wiring', 'Wires, ends and tests', wiringRules],
  ['power-and-signal', 'Power beside signal', powerAndSignalRules],
  ['board', 'Boards and mounting', boardRules],
  ['layout', 'How a layout is scored', layoutRules],
  ['routing', 'How wires are laid', routingRules],
  ['raising', 'Ribs, risers and screws', raisingRules],
  ['audio', 'Audio', audioRules],
] as const;

export const houseRulesTitle = 'House rules';
export const houseRulesSummary =
  'What holds for every job unless the shop sets it for itself, under rules: of the shop file. Each default has its source.';

/** The page of all house rules, made from their table. */
export function houseRulesPage(context: SiteContext, draw: DrawPicture): Page {
  const { units } = context.site.shop;
  return fieldsPage(context, {
    address: addresses.writingKind('house-rules'),
    title: houseRulesTitle,
    summary: houseRulesSummary,
    file: 'content/shop.yaml, under rules:',
    draw,
    sections: () => ruleSections(units),
  });
}

/** The house rules by family, each default in the units of the shop. */
export function ruleSections(units: Units): readonly FieldSection[] {
  const [all] = fieldSections(houseRulesSchema, { title: houseRulesTitle });
  return families.map(([anchor, title, rules]) => ({
    anchor,
    title,
    says: '',
    rows: (all?.rows ?? []).flatMap((row) =>
      isHouseRuleName(row.name) && Object.hasOwn(rules, row.name) ? [ruleRow(row, row.name, units)] : [],
    ),
  }));
}

function ruleRow(row: FieldRow, name: HouseRuleName, units: Units): FieldRow {
  const { dimension, value, citation, mark } = houseRuleDefinition(name);
  const usual = dimension === 'count' ? value : handText(value, dimension, units);
  const source = sourceText({ source: citation, mark });
  return { ...row, example: exampleLine(name, usual), leftOut: `${usual} (${source})` };
}
