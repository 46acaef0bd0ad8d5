import type { PartOf } from '../../model/kinds/index.ts';
import type { Remark } from '../../model/remark.ts';
import type { EndPreparation } from '../../power/conductor/end-preparation.ts';

/** What goes on an end. */
export type TerminalForm = PartOf<'terminal'>['form'];

/** A port that takes none of the conductors that end in it. */
export function refusal(
  wires: readonly string[],
  terminal: string,
  { reason, alternatives }: Extract<EndPreparation, { prep: 'refused' }>,
): Remark {
  return {
    rule: 'port-refuses-conductor',
    level: 'stop',
    of: [...wires, terminal],
    message: wires.length > 1 ? `${reason}: ${wires.join(' and ')}` : reason,
    remedy: alternatives.join('; or ') || 'use another terminal',
  };
}

/** What is to be known of a port that takes them. */
export function noted(wires: readonly string[], terminal: string, note: string): Remark {
  return {
    rule: 'port-note',
    level: 'note',
    of: [...wires, terminal],
    message: `${terminal}, ${wires.join(' and ')}: ${note}`,
    remedy: 'check the fit on the bench before the vehicle',
  };
}

/** No terminal of the catalogue goes on an end. */
export function noPart(wire: string, terminal: string, form: TerminalForm, size: string): Remark {
  return {
    rule: 'terminal-not-in-catalogue',
    level: 'caution',
    of: [wire, terminal],
    message: `no ${form.replaceAll('-', ' ')} for ${size} is in the catalogue`,
    remedy: 'add the part, so that the pick list can count it',
  };
}

/** No heat-shrink of the catalogue goes over a lug. */
export function noShrink(wire: string, terminal: string, size: string): Remark {
  return {
    rule: 'heat-shrink-none-fits',
    level: 'caution',
    of: [wire, terminal],
    message: `no heat-shrink of the catalogue goes over the lug of ${size} and closes on it`,
    remedy: 'add heat-shrink of a higher ratio, so that the pick list can count it',
  };
}
