import type { Part } from '../../model/kinds/index.ts';
import type { ConductorRole, VehicleSide } from '../../model/vocabulary.ts';

/** A lead of fixed length of the catalogue. */
export interface MadeLead {
  readonly part: string;
  readonly lengthM: number;
  /** True where its conductors begin at one plug. */
  readonly isY: boolean;
  readonly conductors: readonly { readonly name: string; readonly side: VehicleSide | undefined }[];
}

/** The made leads of a catalogue for a role that plug into a joint, the shortest first. */
export function madeLeads(
  parts: Readonly<Record<string, Part>>,
  role: ConductorRole,
  joint: string | null,
): readonly MadeLead[] {
  return Object.entries(parts)
    .flatMap(([part, spec]): MadeLead[] => {
      if (spec.kind !== 'cable' || spec['made-length'] === undefined || !spec.for.includes(role)) return [];
      if (role === 'signal' && spec.plugs !== joint) return [];
      // A lead with a filter in it is no plain one: it is written where it is meant.
      if (spec.filter) return [];
      const conductors = Object.entries(spec.conductors).map(([name, { side }]) => ({ name, side }));
      return [{ part, lengthM: spec['made-length'], isY: spec['y-lead'], conductors }];
    })
    .toSorted((a, b) => a.lengthM - b.lengthM || (a.part < b.part ? -1 : 1));
}
