import type { OperatingPointName } from '../../../../lib/model/operating-points.ts';
import type { Case } from '../../../../lib/rules/rule.ts';
import { aboutPlan, one } from '../../case.ts';
import { conductor, point } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

const lead = 'vehicle.charge';
const strap = 'vehicle.strap';

/** The vehicle's charge lead of 4 AWG with this current at one point, and the fuses that protect it. */
function charged(name: OperatingPointName, currentA: number, fuses: readonly string[] = []): Case {
  return aboutPlan((plan) => {
    // 33 CFR 183.425, Table 5: 4 AWG at 105 C carries 160 A, in an engine space 0.85 of it; 82 A are left at 85 C.
    plan.power.conductors.push({
      ...conductor(plan, 'feed'),
      ...{ id: lead, from: 'alternator.B+', to: 'battery.POS', role: 'power' },
      ...{ ampacityA: 136, cautionA: 82, neededA: 0, fuses: [...fuses] },
    });
    const { points } = plan.power;
    if (!points.some((each) => each.name === name))
      points.push({ ...point(plan, 'rated-power'), name, title: name, elements: [] });
    point(plan, name).elements.push({
      ...{ id: `${lead}:conductor`, of: lead, kind: 'conductor', model: 'resistance' },
      ...{ from: 'alternator.B+', to: 'battery.POS', ohm: 0.001, currentA: -currentA },
    });
  });
}

export const vehicleConductorsCases = {
  // Table 5 as above; sqrt((105 - 85) / (105 - 30)) of 160 A, floored, is 82 A.
  'vehicle-conductor-overloaded': {
    fires: [
      {
        name: '137 A at full rating, where 136 A are published',
        about: () => charged('full-rating', 137),
        level: 'stop',
        subject: lead,
        path: '/links/charge',
        file: 'vehicle.yaml',
        says: /137 A flow through vehicle.charge.*4 AWG carries 136 A by the published figure/,
      },
      {
        name: '83 A with music, where 82 A are left at 85 C',
        about: () => charged('music', 83),
        level: 'caution',
        subject: lead,
        file: 'vehicle.yaml',
        says: /carries 82 A at the true ambient/,
      },
      {
        name: '83 A at rated power, which a tone would hold and no fuse would end',
        about: () => charged('rated-power', 83),
        level: 'note',
        subject: lead,
        file: 'vehicle.yaml',
        says: /83 A flow through vehicle.charge.*carries 82 A for long/,
        toDo: /no steady tone/,
      },
      {
        name: '83 A at rated power through the strap of the battery too: one note, and no fuse in a ground',
        about: () => {
          const made = charged('rated-power', 83);
          const { conductors } = made.plan.power;
          conductors.push({ ...conductor(made.plan, lead), id: strap, role: 'ground' });
          const { elements } = point(made.plan, 'rated-power');
          const own = one(elements, ({ of }) => of === lead);
          elements.push({ ...own, id: `${strap}:conductor`, of: strap });
          return made;
        },
        level: 'note',
        subject: lead,
        file: 'vehicle.yaml',
        says: /83 A flow through vehicle\.charge and vehicle\.strap, .*rated power lasts only seconds/,
        toDo: /a fused lead beside vehicle\.charge and a ground lead without a fuse beside vehicle\.strap$/,
      },
    ],
    quiet: [
      { name: '136 A at full rating', about: () => charged('full-rating', 136) },
      { name: '82 A with music', about: () => charged('music', 82) },
      { name: '82 A at rated power', about: () => charged('rated-power', 82) },
      {
        name: '83 A at full rating, which opens the fuses of the devices',
        about: () => charged('full-rating', 83),
      },
      {
        name: '137 A behind a fuse, which has rules of its own',
        about: () => charged('full-rating', 137, ['x']),
      },
    ],
  },
} satisfies RuleCases;
