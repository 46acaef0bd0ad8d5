import type { Device, Job } from '../../model/content/resolved-job.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import type { PlanInput } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { passedInputs } from '../../plan/audio/passed-on.ts';
import { groupsOf } from '../groups-of.ts';
import { deviceIdOf, deviceOf, hasRole, partSpot, terminalNameOf, terminalSpecOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';
import { inputSwitchRule } from './input-switch.ts';

/** A terminal with the level that nobody tells of it. */
interface Untold {
  readonly terminal: string;
  readonly input: PlanInput;
  /** What is not known, and what to write. */
  readonly what: string;
  readonly write: string;
}

/** What an output gives is not known. What came with the vehicle is to be measured, and that is told by itself. */
function ofOutput({ job }: Case, input: PlanInput): Untold[] {
  const { output: terminal, sourceV } = input;
  const device = deviceOf(job, deviceIdOf(terminal));
  if (sourceV !== null || device?.origin !== 'job') return [];
  const isSpeaker = hasRole(job, terminal, 'speaker-out-positive');
  const isSource = device.spec?.kind === 'source-unit';
  if (!isSpeaker && device.spec?.kind === 'amplifier') {
    const write = passedText(job, device, terminalNameOf(terminal));
    return write === null ? [] : [{ terminal, input, what: 'gives clean', write }];
  }
  const write =
    isSpeaker && isSource
      ? 'powers: of its outputs (such as 4 ohm: 18 W), from which the clean voltage follows'
      : 'signal: of its terminals, the greatest clean voltage of the leaflet';
  return [{ terminal, input, what: 'gives clean', write }];
}

/**
 * What to write of a line output of an amplifier: what it gives follows from what arrives at the amplifier. Null where all
 * of that is told, and only what arrives there is not known: that is told there.
 */
function passedText(job: Job, device: Device, output: string): string | null {
  const passed = passedInputs(job, device, output);
  const measure = 'where it says nothing of it, measure that output before the gain behind it is set';
  if (!passed) {
    const [input = 'IN1'] = terminalsOf(device.facts.terminals, 'signal-in', 'speaker-in-positive');
    return `passes: { ${output}: { of: { ${stemName(input)}: 1 }, tap: inputs } } with the inputs that it carries, and the share of their voltage that comes out, as the leaflet says; ${measure}`;
  }
  if (passed.tap !== 'inputs')
    return `tap: inputs at ${output} under passes: if the leaflet says that it is taken ahead of gain and filters; else its level stands once these are set, so measure it before the gain behind it is set`;
  if (passed.inputs.length === 1) return null;
  return passed.inputs.length === 0
    ? `under passes: at ${output} the input that is linked, with the share of its voltage that comes out, as the leaflet says; ${measure}`
    : `under passes: at ${output} one alone of the inputs that are linked, or link one of them; else measure that output before the gain behind it is set`;
}

/** What an input takes is not known. */
function ofInput({ job }: Case, input: PlanInput): Untold[] {
  const { input: terminal, leastV, greatestV } = input;
  const isTold = terminalSpecOf(job, terminal)?.signal !== undefined || leastV !== null || greatestV !== null;
  if (isTold || deviceOf(job, deviceIdOf(terminal))?.origin !== 'job') return [];
  const write =
    'signal-range: of its terminals, from the least voltage for full output to the most that it takes';
  return [{ terminal, input, what: 'takes', write }];
}

const unknown: Rule = {
  id: 'input-level-unknown',
  judge(about) {
    const { job, plan } = about;
    const all = plan.audio.inputs.flatMap((input) => [...ofOutput(about, input), ...ofInput(about, input)]);
    return groupsOf(all, ({ terminal, what }) => `${deviceIdOf(terminal)} ${what}`).flatMap(
      (group): Verdict<'input-level-unknown'>[] => {
        const [first] = group;
        if (!first) return [];
        const id = deviceIdOf(first.terminal);
        const names = [...new Set(group.map(({ terminal }) => stemName(terminalNameOf(terminal))))];
        const inputs = [...new Set(group.map(({ input }) => input.input))];
        return [
          {
            level: 'note',
            of: [id, ...new Set(group.map(({ terminal }) => terminal))],
            message: `what ${listed(names.map((name) => `${id}.${name}`))} ${first.what} is not known: nothing tells whether ${listed(inputs)} ${inputs.length === 1 ? 'is' : 'are'} driven too far, or too little`,
            remedy: `write into the part ${deviceOf(job, id)?.part ?? id} ${first.write}`,
            ...partSpot(job, id),
          },
        ];
      },
    );
  },
};

export const inputLevelRules: readonly Rule[] = [unknown, inputSwitchRule];
