import { terminalId } from '../../model/content/resolved-job.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import { carriedByName } from '../../model/ports/carried-by-name.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { carriedAt } from '../../plan/audio/carried-sides.ts';
import { factsOfOutput } from '../../plan/audio/signal-inputs.ts';
import { partSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

const outputRoles = ['signal-out', 'speaker-out-positive'] as const;

/** What nothing tells of an output but its number: told where it plays, as what it is taken for. */
const orderAssumed: Rule = {
  id: 'output-order-assumed',
  judge({ job }) {
    const played = new Set(job.links.flatMap(({ from, to }) => [terminalId(from), terminalId(to)]));
    return job.devices.flatMap((device): Verdict<'output-order-assumed'>[] => {
      if (device.spec?.kind !== 'source-unit') return [];
      const untold = outputRoles.flatMap((role) => {
        const alike = terminalsOf(device.facts.terminals, role);
        const named = carriedByName(alike.map(stemName));
        return alike.filter(
          (terminal) =>
            alike.length > 1 &&
            played.has(terminalId({ device: device.id, terminal })) &&
            !named.has(stemName(terminal)) &&
            factsOfOutput(job, device, stemName(terminal)).carries === undefined,
        );
      });
      const taken = untold.flatMap((terminal) => {
        const carries = carriedAt(job, device, terminal);
        return carries === null ? [] : [{ name: stemName(terminal), carries }];
      });
      const [first] = taken;
      if (!first) return [];
      return [
        {
          level: 'note',
          of: [device.id],
          message: `nothing tells which outputs of ${device.id} are which; taken in the order of its part: ${listed(taken.map(({ name, carries }) => `${name} ${carries.replace('-', ' ')}`))}`,
          remedy: `confirm by the leaflet or by balance and fader, and write under outputs: of the part carries: at each, such as ${first.name}: { carries: ${first.carries} }`,
          ...partSpot(job, device.id),
        },
      ];
    });
  },
};

export const outputOrderRules: readonly Rule[] = [orderAssumed];
