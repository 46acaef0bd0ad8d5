import type { PlanControl } from '../../model/plan/index.ts';
import { type HeardInputs, heardInputs } from '../../plan/work/input-switch.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Case, RuleOf, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** A switch for inputs whose positions are known, as it stands after commissioning. */
function heardAt({ job }: Case, { item, control }: PlanControl): HeardInputs | null {
  const device = deviceOf(job, item);
  const spec = device?.facts.controls[control];
  return device?.origin === 'job' && spec ? heardInputs(job, device, spec) : null;
}

/** True where it is known what the positions of a switch hear: it is judged by the rule below alone, since one that mutes harms nothing. */
export function isToldByInputs(about: Case, item: string, control: string): boolean {
  return about.plan.controls.some(
    (one) => one.item === item && one.control === control && heardAt(about, one) !== null,
  );
}

function verdictOf(about: Case, own: PlanControl): Verdict<'input-switch'> | null {
  const inputs = heardAt(about, own);
  const { item, control, preset, chosen, final } = own;
  const state = final.state ?? preset;
  const heard = inputs?.heard.get(state);
  if (!inputs || !heard || heard.length === inputs.linked.length) return null;
  const lost = inputs.linked.filter((name) => !heard.includes(name)).map((name) => `${item}.${name}`);
  const key = final.chosen === 'given' ? 'after-commissioning' : chosen === 'given' ? 'settings' : null;
  const [only, ...others] = inputs.whole;
  const spot = deviceSpot(about.job, item, ...(key ? [key, control] : []));
  const write = inputs.whole
    .map((position) => `${key ?? 'settings'}: { ${control}: ${position} }`)
    .join(' or ');
  return {
    ...{ of: [`${item}.${control}`, item], value: state },
    ...(only !== undefined && others.length === 0 && { limit: only }),
    level: heard.length === 0 ? 'stop' : 'caution',
    message: `${control} on ${item} is to stand at ${state}, in which ${listed(lost)} ${lost.length === 1 ? 'is' : 'are'} not heard`,
    remedy:
      only === undefined
        ? `no position of ${control} hears all that is linked: link inputs of one position alone, or write under hears: of ${control} in its part what each position lets through`
        : `write ${write} at ${item}${key ? ', or leave it out' : ''}; or link the inputs that ${state} lets through`,
    ...(key && only !== undefined && others.length === 0 && { instead: { path: spot.path, text: only } }),
    ...spot,
  };
}

/** A switch for inputs that stands so that what is linked is not heard. */
export const inputSwitchRule: RuleOf<'input-switch'> = {
  id: 'input-switch',
  judge: (about) => about.plan.controls.flatMap((control) => verdictOf(about, control) ?? []),
};
