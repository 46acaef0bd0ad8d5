import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { Part } from '../../model/kinds/index.ts';

/** Joints that clamp a pin: a reducer goes into these alone. */
const clamps: readonly TerminalSpec['joint'][] = ['set-screw', 'screw-clamp'];

/** True for a joint that clamps the pin of a reducer. */
export function takesReducer(joint: TerminalSpec['joint']): boolean {
  return clamps.includes(joint);
}

/** Areas within a tenth of a per cent are the same size. */
const grace = 1.001;

/** A reducer of the catalogue, crimped on a conductor that its port is too small for. */
export interface Reducer {
  readonly part: string;
  readonly pin: { readonly label: string; readonly areaMm2: number };
  readonly stripM: number | null;
}

/**
 * The reducer that brings a conductor into a clamp that is too small for it: of those that take the conductor and
 * whose pin the port takes, the one with the thickest pin. Null where the conductor fits bare, or nothing brings it in.
 */
export function reducerFor(
  parts: Readonly<Record<string, Part>>,
  areaMm2: number,
  port: Pick<TerminalSpec, 'joint' | 'takes'> | undefined,
): Reducer | null {
  const takes = port?.takes;
  if (!port || !takes || !takesReducer(port.joint) || areaMm2 <= takes.to.areaMm2 * grace) return null;
  const fitting = partsOfKind(parts, 'terminal').flatMap(([part, spec]): Reducer[] => {
    if (spec.form !== 'reducer' || !spec.pin) return [];
    const { pin } = spec;
    const onWire = areaMm2 * grace >= spec.takes.from.areaMm2 && areaMm2 <= spec.takes.to.areaMm2 * grace;
    const inPort = pin.areaMm2 * grace >= takes.from.areaMm2 && pin.areaMm2 <= takes.to.areaMm2 * grace;
    return onWire && inPort ? [{ part, pin, stripM: spec.strip ?? null }] : [];
  });
  return fitting.toSorted((a, b) => b.pin.areaMm2 - a.pin.areaMm2 || (a.part < b.part ? -1 : 1))[0] ?? null;
}
