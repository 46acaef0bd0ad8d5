import { solveNetwork } from '../../../lib/power/network/network.ts';
import type {
  EmfSource,
  Load,
  NetworkElement,
  NetworkResult,
  PassiveElement,
  TwoSlopeSource,
} from '../../../lib/power/network/network-types.ts';

export const battery = (more: Partial<EmfSource> = {}): EmfSource => ({
  id: 'battery',
  kind: 'source',
  model: 'emf',
  emfV: 12,
  ohm: 0.1,
  from: 'plus',
  to: 'minus',
  ...more,
});
export const wire = (id: string, from: string, to: string, ohm: number): PassiveElement => ({
  id,
  kind: 'conductor',
  model: 'resistance',
  from,
  to,
  ohm,
});
export const amp = (powerW: number, from = 'plus', to = 'minus', id = 'amp'): Load => ({
  id,
  kind: 'load',
  model: 'power',
  powerW,
  from,
  to,
});
export const solve = (...elements: NetworkElement[]) => solveNetwork({ referenceNode: 'minus', elements });

/** What flows through an element of a network that was solved. */
export function flow(result: NetworkResult, id: string) {
  if (result.state === 'no-solution' || result.state === 'fault') throw new Error(JSON.stringify(result));
  const found = result.elements.find((element) => element.id === id);
  if (!found) throw new Error(`no element ${id}`);
  return found;
}
export const faultKinds = (result: NetworkResult) =>
  result.state === 'fault' ? result.faults.map(({ fault }) => fault.replace('network-', '')) : result.state;

/** A battery that has rested: it gives behind one resistance, and charges behind another up to what it accepts. */
export const rested: TwoSlopeSource = {
  id: 'battery',
  kind: 'source',
  model: 'two-slope',
  emfV: 12.6,
  ohm: 0.005,
  chargeOhm: 0.15,
  acceptA: 20,
  from: 'plus',
  to: 'minus',
};
