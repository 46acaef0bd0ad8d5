import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { deviceOf, deviceSpot, jobWires } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

const vehicleFuseUnknown: Rule = {
  id: 'vehicle-fuse-unknown',
  judge(about) {
    const { job, plan } = about;
    const own = new Set(jobWires(about).map(({ id }) => id));
    return plan.power.fuses.flatMap((fuse): Verdict<'vehicle-fuse-unknown'>[] => {
      const { id, item, way, form, ratingA, protects, to } = fuse;
      if (deviceOf(job, item)?.origin !== 'vehicle' || (ratingA !== null && ratingA > 0)) return [];
      const behind = plan.power.conductors
        .filter(({ fuses }) => fuses.includes(id))
        .map((conductor) => conductor.id);
      // A turn-on wire is no conductor of the power diagram, yet burns as one.
      const joined = plan.wires
        .filter(({ ends }) => ends.some(({ terminal }) => terminal === to))
        .map((wire) => wire.id);
      const hung = [...new Set([...protects, ...behind, ...joined])].filter((wire) => own.has(wire));
      if (hung.length === 0) return [];
      const name = way === '' ? 'fuse' : way;
      return [
        {
          level: 'stop',
          of: [id, ...hung],
          message: `the rating of the vehicle's own fuse ${id} (${fuseForms[form].name}) is not known, and ${listed(hung)} ${hung.length === 1 ? 'hangs' : 'hang'} behind it`,
          remedy: `read it off and write it as fuses: { ${name}: … A } of ${item} in the vehicle`,
          ...deviceSpot(job, item),
        },
      ];
    });
  },
};

export const vehicleFuseRules: readonly Rule[] = [vehicleFuseUnknown];
