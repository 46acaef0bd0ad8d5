import { z } from 'zod';
import { builders } from '../audience.ts';
import { quantityWithin, text } from '../fields.ts';
import { rows } from '../short-forms/short-form.ts';
import { section } from '../writing/field-text.ts';
import { equipmentBase } from './fields/equipment.ts';
import { fuseFormField } from './fields/fuse-form.ts';
import { equipmentKind, kindField, type PartElement, terminalsOf } from './kind.ts';

export const distributionSchema = z.strictObject({
  kind: kindField('distribution'),
  ...equipmentBase,
  'fused-ways': section(
    rows(
      z.record(
        z.string(),
        z.strictObject({
          from: builders(text('IN'), 'The terminal that feeds the way.'),
          'fuse-form': builders(fuseFormField, 'The form of fuse that fits the way.', {
            example: 'small-bolt-in',
          }),
        }),
      ),
    ).default({}),
    'Its fused ways, by the outgoing terminal. A plain block or a ground bar has none.',
    { name: 'OUT1' },
  ),
  current: builders(
    quantityWithin('current', { above: 0, most: 1000 }),
    'The greatest current that it carries.',
    { example: '250 A' },
  ),
});

/** True for what plugs into a slot of a fuse panel, and gives its fused ways by leads of its own. */
export function isFuseTap({ terminals, 'fused-ways': ways }: z.output<typeof distributionSchema>): boolean {
  const inputs = terminalsOf(terminals, 'feed-in');
  const outputs = Object.keys(ways);
  return (
    inputs.length > 0 &&
    outputs.length > 0 &&
    inputs.every((name) => terminals[name]?.joint === 'plug') &&
    outputs.every((name) => terminals[name]?.joint === 'supplied-lead')
  );
}

/** Fused ways are fuses; every other terminal hangs on the one bar. */
export const distribution = equipmentKind('Distribution', distributionSchema, (part): PartElement[] => {
  const fused = Object.entries(part['fused-ways']).map(
    ([to, way]): PartElement => ({ kind: 'fuse', way: to, from: way.from, to }),
  );
  const onBar = terminalsOf(part.terminals, 'feed-in', 'feed-out', 'ground-bar').filter(
    (name) => !(name in part['fused-ways']),
  );
  const [bar, ...others] = onBar;
  if (bar === undefined) return fused;
  return [...others.map((to): PartElement => ({ kind: 'joint', from: bar, to, ohm: 0 })), ...fused];
});
