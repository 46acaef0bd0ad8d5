import fc from 'fast-check';
import type { Coil, Wiring } from '../../../lib/audio/load/coil-wiring.ts';

interface Shape {
  readonly series: boolean;
  readonly split: number;
}

/** Up to six coils of usual loads, two to a speaker, joined at random. */
export const wiredCoils = fc
  .tuple(
    fc.array(fc.constantFrom(1, 1.5, 2, 3, 4, 6, 8), { minLength: 1, maxLength: 6 }),
    fc.array(fc.record({ series: fc.boolean(), split: fc.nat(5) }), { minLength: 12, maxLength: 12 }),
  )
  .map(([loads, shapes]) => {
    const coils: Coil[] = loads.map((nominalOhm, index) => ({
      id: `c${index}`,
      speaker: `s${Math.floor(index / 2)}`,
      nominalOhm,
    }));
    return {
      coils,
      wiring: join(
        coils.map((coil) => coil.id),
        [...shapes],
      ),
    };
  });

function join(ids: readonly string[], shapes: Shape[]): Wiring {
  const [only] = ids;
  if (ids.length < 2) return { kind: 'coil', coil: only ?? '' };
  const shape = shapes.shift() ?? { series: true, split: 0 };
  const at = 1 + (shape.split % (ids.length - 1));
  const members = [join(ids.slice(0, at), shapes), join(ids.slice(at), shapes)];
  return { kind: shape.series ? 'series' : 'parallel', members };
}
