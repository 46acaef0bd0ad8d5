import type { Case } from '../../../../lib/rules/rule.ts';
import { about } from '../../case.ts';
import { conductor, fuse } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The processor fed by a panel that the vehicle came with, whose fuse has this rating. */
function fromPanel(ratingA: number | null, protects: readonly string[]): Case {
  return about({
    content: ({ vehicle, job }) => {
      vehicle.fitted.panel = { part: 'fused', zone: 'cabin' };
      if (protects.length > 0) job.links['dsp-feed'] = { from: 'panel.OUT2', to: 'dsp.B+' };
    },
    plan: (plan) => {
      plan.power.fuses.push({
        ...fuse(plan, 'block.OUT2'),
        id: 'panel.OUT2',
        item: 'panel',
        ratingA,
        from: 'panel.IN',
        to: 'panel.OUT2',
        protects: [...protects],
      });
      conductor(plan, 'dsp-feed').fuses = protects.length > 0 ? ['panel.OUT2'] : [];
    },
  });
}

export const vehicleFusesCases = {
  // The fuse that is fitted: nothing else tells what protects a conductor behind it.
  'vehicle-fuse-unknown': {
    fires: [
      {
        name: 'a conductor of the job behind a fuse that nobody read off',
        about: () => fromPanel(null, ['dsp-feed']),
        level: 'stop',
        subject: 'panel.OUT2',
        path: '/fitted/panel',
        file: 'vehicle.yaml',
        says: /not known, and dsp-feed hangs behind it/,
      },
    ],
    quiet: [
      { name: 'every fuse is of the job', about: () => about() },
      { name: 'its rating is read off', about: () => fromPanel(5, ['dsp-feed']) },
      { name: 'nothing of the job hangs behind it', about: () => fromPanel(null, []) },
    ],
  },
} satisfies RuleCases;
