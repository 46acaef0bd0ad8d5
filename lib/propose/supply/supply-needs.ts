import { isFault } from '../../model/fault.ts';
import { fuseCeilingA } from '../../model/kinds/fields/supply.ts';
import { amplifierEfficiency } from '../../power/network/amplifier-efficiency.ts';
import { chargerInputA } from '../../power/network/charger-draw.ts';
import { amplifierCurrents } from '../../power/network/load-current.ts';
import { ratedSupplyV } from '../../power/network/rated-voltage.ts';
import { sizingVoltageV } from '../../power/network/sizing-voltage.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import type { DrivenOutputs } from '../sound/bass-channels.ts';
import { strengthW } from '../sound/outputs.ts';
import { usedOutputs } from '../sound/used-outputs.ts';
import type { SwitchedContact } from './turn-on.ts';

/** A terminal that needs a feed. */
export interface SupplyNeed {
  readonly device: DraftDevice;
  readonly terminal: string;
  /** At rated power, at the voltage for sizing (A). */
  readonly currentA: number;
  /** The maker's greatest fuse (A); null where the device has its own or its maker sets none. */
  readonly ceilingA: number | null;
}

/** Every supply terminal of the job that nothing feeds, and the contacts of relays that are proposed. */
export function supplyNeeds(
  draft: Draft,
  driven: readonly DrivenOutputs[],
  contacts: readonly SwitchedContact[],
): readonly SupplyNeed[] {
  const ofDevices = draft.own.flatMap((device): SupplyNeed[] => {
    if (
      device.spec.kind !== 'amplifier' &&
      device.spec.kind !== 'processor' &&
      device.spec.kind !== 'source-unit'
    )
      return [];
    const { supply } = device.spec;
    const [terminal] = terminalsWith(device, 'supply-positive');
    if (terminal === undefined || !draft.isFree(device.id, terminal)) return [];
    const ceilingA = fuseCeilingA(supply);
    return [{ device, terminal, currentA: currentA(draft, device, driven), ceilingA }];
  });
  const ofContacts = contacts.flatMap(({ relay, terminal, currentA: drawnA }): SupplyNeed[] => {
    const device = draft.device(relay);
    return device && draft.isFree(relay, terminal)
      ? [{ device, terminal, currentA: drawnA, ceilingA: null }]
      : [];
  });
  return [...ofDevices, ...ofContacts];
}

/** The voltage that needs are reckoned at (V): that of the plan. */
export function supplyV({ around: { rules, vehicle }, devices }: Draft): number {
  return sizingVoltageV({ devices, rules, vehicle });
}

/** What a device draws at rated power (A): an amplifier into its loads, a charger for all that it gives, anything else as its maker says. */
export function currentA(draft: Draft, device: DraftDevice, driven: readonly DrivenOutputs[]): number {
  const { spec } = device;
  if (spec.kind === 'processor' || spec.kind === 'source-unit') return spec.supply.draw ?? spec.supply.fuse;
  const { rules } = draft.around;
  if (spec.kind === 'fan') return spec.draw;
  const atV = supplyV(draft);
  if (spec.kind === 'charger') return chargerInputA(spec, atV).value;
  if (spec.kind !== 'amplifier') return 0;
  const dealt = driven.flatMap(({ outputs }) => outputs);
  const ratedPowerW = usedOutputs(draft, device).reduce((sum, { output }) => {
    const own = dealt.find((one) => one.output.amplifier === device.id && one.output.name === output.name);
    return sum + (own?.powerW ?? strengthW(output));
  }, 0);
  const { supply } = spec;
  const currents = amplifierCurrents(
    {
      fusesA: [supply.fuse],
      ratedPowerW,
      ratedV: ratedSupplyV(supply, rules),
      efficiency: amplifierEfficiency(supply, rules),
      supply: supply.type,
      musicDuty: rules['music-duty'].value,
    },
    atV,
  );
  return isFault(currents) ? supply.fuse : currents.ratedPowerA.value;
}
