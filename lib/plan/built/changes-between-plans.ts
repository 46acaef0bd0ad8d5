import type { BuildPlan } from '../../model/plan/index.ts';

/** What a fabricator would build, set or fetch otherwise: name of the thing, and what it is. */
type Built = ReadonlyMap<string, string>;

/**
 * Where today's plan would be built otherwise than the released one, such as
 * `fuse main-fuse: 80 A, today 100 A`. Voltages and the like move with every small change; they are left aside.
 */
export function planChanges(frozen: BuildPlan, today: BuildPlan): string[] {
  const [before, after] = [built(frozen), built(today)];
  const names = new Set([...before.keys(), ...after.keys()]);
  return [...names].flatMap((name) => {
    const [was, is] = [before.get(name) ?? 'nothing', after.get(name) ?? 'nothing'];
    return was === is ? [] : [`${name}: ${was}, today ${is}`];
  });
}

function built(plan: BuildPlan): Built {
  const { power, audio, boards, wires, controls, items } = plan;
  return new Map([
    ...items.map(
      ({ id, part, board, seat }) =>
        [`item ${id}`, `${part ?? 'none'} at ${board ?? seat ?? 'none'}`] as const,
    ),
    ...power.fuses.map(
      ({ id, form, ratingA }) => [`fuse ${id}`, ratingA === null ? 'none' : `${ratingA} A ${form}`] as const,
    ),
    ...wires.map(
      ({ id, label, size, from, to, part }) =>
        [`wire ${id}`, `${label} ${size.label} ${part ?? ''} ${from} to ${to}`] as const,
    ),
    // A centimetre is what a fabricator cuts to; less is rounding.
    ...wires.map(({ id, lengthM }) => [`length of ${id}`, `${lengthM.toFixed(2)} m`] as const),
    ...boards.flatMap(({ id, placements }) =>
      placements.map(
        ({ item, xM, yM, turnDeg }) =>
          [`place of ${item}`, `${id} ${millimetres(xM)}, ${millimetres(yM)}, ${turnDeg} deg`] as const,
      ),
    ),
    ...boards.flatMap(({ id, holes }) => [[`holes of ${id}`, String(holes.length)] as const]),
    ...audio.channels.map(({ id, loadOhm, gainVoltageV, filters }) => {
      const shapes = filters.map(
        ({ where, pass, type, order, cornerHz }) => `${where} ${pass} ${type} ${order} ${cornerHz} Hz`,
      );
      return [
        `channel ${id}`,
        `${round(loadOhm)} ohm, ${round(gainVoltageV)} V ${shapes.join('; ')}`,
      ] as const;
    }),
    ...controls.map(({ item, control, preset }) => [`preset ${item}.${control}`, preset] as const),
  ]);
}

function millimetres(lengthM: number): string {
  return `${Math.round(lengthM * 1000)} mm`;
}

function round(value: number | null): string {
  return value === null ? 'no' : value.toFixed(1);
}
