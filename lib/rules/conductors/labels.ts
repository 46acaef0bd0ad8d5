import type { PlanWire } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { nextFree, terminalNames, wireLabelClashes } from '../../plan/wiring/label-numbers.ts';
import { jobWires, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** True where a released revision fixed a label: it hangs on the wire, and is never changed. */
const isReleased = ({ job }: Case, wire: string): boolean => Object.hasOwn(job.releasedLabels, wire);

/** A label as it is read on a wire: capitals and small letters are one. */
const readLabel = ({ label }: PlanWire): string => label.toUpperCase();

/** The next label of the letters of a written one that no wire and no terminal has; none for one that is not written. */
function freeLabel({ job, plan }: Case, wire: PlanWire): Pick<Verdict<'label-twice'>, 'instead'> {
  const link = job.links.find(({ id }) => id === wire.id);
  const [letters = ''] = /^\D*/.exec(stemName(wire.label)) ?? [];
  if (link?.given?.label === undefined || letters === '') return {};
  const labels = [...plan.wires.map(({ label }) => label), ...Object.values(job.releasedLabels)];
  const taken = new Set([...terminalNames(job).keys(), ...labels].map((one) => stemName(one).toUpperCase()));
  const text = nextFree(letters, (label) => taken.has(label.toUpperCase()));
  return { instead: { path: `${link.path}/label`, text } };
}

const labelTwice: Rule = {
  id: 'label-twice',
  judge(about) {
    const wires = jobWires(about);
    const labels = [...new Set(wires.map(readLabel))];
    return labels.flatMap((label): Verdict<'label-twice'>[] => {
      const same = wires.filter((wire) => readLabel(wire) === label);
      const [first] = same;
      if (!first || same.length < 2) return [];
      const names = same.map(({ id }) => id);
      const all = names.every((id) => isReleased(about, id));
      const written = same.find(({ id }) => !isReleased(about, id)) ?? first;
      return [
        {
          level: all ? 'caution' : 'stop',
          of: names,
          message: `${listed(names)} bear one label, ${first.label}: whoever follows it by its label ends at the wrong terminal`,
          value: first.label,
          remedy: all
            ? 'the labels hang on the wires of a released revision: mark them apart by hand, and write another label: with the next revision'
            : `write another label: for ${written.link}, or leave it out`,
          ...(all ? {} : freeLabel(about, written)),
          ...wireSpot(about, written.id),
        },
      ];
    });
  },
};

const labelIsTerminal: Rule = {
  id: 'label-is-terminal',
  judge(about) {
    return wireLabelClashes(about.job, jobWires(about)).map(
      ({ wire, terminals }): Verdict<'label-is-terminal'> => {
        const released = isReleased(about, wire.id);
        return {
          level: released ? 'note' : 'caution',
          of: [wire.id, ...terminals],
          message: `the label ${wire.label} of ${wire.id} is also the name of ${listed(terminals)}: on a drawing one is taken for the other`,
          value: wire.label,
          remedy: released
            ? 'the label hangs on the wire of a released revision and stays; write another label: with the next revision'
            : `write another label: for ${wire.link}, or leave it out`,
          ...(released ? {} : freeLabel(about, wire)),
          ...wireSpot(about, wire.id),
        };
      },
    );
  },
};

export const labelRules: readonly Rule[] = [labelTwice, labelIsTerminal];
