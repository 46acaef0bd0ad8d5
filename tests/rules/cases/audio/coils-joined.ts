import type { Case } from '../../../../lib/rules/rule.ts';
import { joinCoils, withTwoCoils } from '../../../plan/planned.ts';
import { entry, partIn } from '../../case.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';
import { plannedCase } from '../../stereo.ts';

/**
 * Two coils of 4 ohm on a channel that gives 75 W into 4 ohm and so at least half of that into 8 ohm, and what is told
 * into 2 ohm; joined as if the job had left it open.
 */
function proposed(
  how: 'parallel' | 'series',
  into2: string,
  change: (content: Written) => void = () => {},
  written: readonly string[] = [],
): Case {
  const about = plannedCase((content) => {
    withTwoCoils(content);
    joinCoils(content, how);
    const second = partIn(content, 'two-channel', 'amplifier').channels?.['2'];
    if (second)
      Object.assign(second, {
        minimum: '2 ohm',
        powers: [...(second.powers ?? []), { load: '2 ohm', power: into2 }],
      });
    change(content);
  });
  const links = ['plus', 'minus', 'middle', 'first', 'second'].filter((id) => !written.includes(id));
  return {
    ...about,
    job: {
      ...about.job,
      proposals: links.map((id) => ({
        path: ['links', id],
        rule: 'channels',
        reason: 'the most that the speaker takes',
        value: {},
      })),
    },
  };
}

export const coilsJoinedCases = {
  // Ohm's law: two coils of 4 ohm are 8 ohm in series and 2 ohm in parallel.
  'coils-joined-otherwise': {
    fires: [
      {
        name: 'in series, where parallel gives more than three times as much',
        about: () => proposed('series', '130 W'),
        level: 'note',
        subject: 'amp.2',
        says: /sub are proposed in series: 8 ohm, 38 W .* in parallel they would be 2 ohm and 130 W/,
        toDo: /write loads: \{ "2": 2 ohm \} at amp/,
      },
      {
        name: 'in parallel, where series gives less than a third',
        about: () => proposed('parallel', '130 W'),
        level: 'note',
        subject: 'amp.2',
        says: /sub are proposed in parallel: 2 ohm, 130 W .* in series they would be 8 ohm and 38 W/,
      },
    ],
    quiet: [
      { name: 'joined as the job wrote it', about: () => proposed('series', '130 W', undefined, ['middle']) },
      {
        name: 'the other load is under what the amplifier may drive',
        about: () =>
          proposed('series', '130 W', (content) => {
            const second = partIn(content, 'two-channel', 'amplifier').channels?.['2'];
            if (second)
              Object.assign(second, { minimum: '4 ohm', powers: [{ load: '4 ohm', power: '75 W' }] });
          }),
      },
      { name: 'about as much either way', about: () => proposed('series', '50 W') },
      {
        name: 'the job asks for the load',
        about: () =>
          proposed('series', '130 W', ({ job }) =>
            Object.assign(entry(job.devices, 'amp'), { loads: { '2': '8 ohm' } }),
          ),
      },
    ],
  },
} satisfies RuleCases;
