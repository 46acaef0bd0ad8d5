import type { ControlSpec } from '../../model/kinds/fields/control-spec.ts';
import { isToldByInputs } from '../audio/input-switch.ts';
import { isToldBySwitch } from '../audio/turn-on-switch.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';

/** Controls whose wrong state at first power-up can ruin a speaker or an ear. */
const grave: readonly ControlSpec['what'][] = ['gain', 'boost', 'crossover', 'crossover-mode', 'subsonic'];

const unlisted: Rule = {
  id: 'control-unlisted',
  judge({ job, plan }) {
    return job.devices
      .filter(({ origin }) => origin === 'job')
      .flatMap(({ id, facts }) =>
        Object.entries(facts.controls).flatMap(([name, { what }]): Verdict<'control-unlisted'>[] => {
          const preset = plan.controls.find(({ item, control }) => item === id && control === name);
          if (preset && /\S/.test(preset.preset)) return [];
          return [
            {
              level: grave.includes(what) ? 'stop' : 'caution',
              of: [`${id}.${name}`, id],
              message: `the state of ${name} on ${id} before first power-up is not written down`,
              remedy: `write it under settings: of ${id}`,
              ...deviceSpot(job, id),
            },
          ];
        }),
      );
  },
};

const unsafe: Rule = {
  id: 'control-unsafe',
  judge(about) {
    const { job, plan } = about;
    return plan.controls.flatMap(({ item, control, preset, safe }): Verdict<'control-unsafe'>[] => {
      const spec = deviceOf(job, item)?.facts.controls[control];
      if (safe || isToldBySwitch(about, item, control) || isToldByInputs(about, item, control)) return [];
      const isGrave = !spec || grave.includes(spec.what);
      const spot = deviceSpot(job, item, 'settings', control);
      return [
        {
          level: isGrave ? 'stop' : 'caution',
          of: [`${item}.${control}`, item],
          message: `${control} on ${item} is to stand at "${preset}" at first power-up${spec ? `; its safe state is "${spec.safe}": ${spec.why}` : ', which is not known to be safe'}`,
          value: preset,
          ...(spec && { limit: spec.safe }),
          remedy: spec
            ? `write "${spec.safe}", and change it at commissioning once the meter says so`
            : "look its safe state up in the maker's data",
          ...(spec && { instead: { path: spot.path, text: spec.safe } }),
          ...spot,
        },
      ];
    });
  },
};

export const controlRules: readonly Rule[] = [unlisted, unsafe];
