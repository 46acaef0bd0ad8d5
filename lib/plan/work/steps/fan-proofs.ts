import { minutesFor, type Step, step, type Work } from '../work.ts';

/** With power on, each fan is proved to blow, and the right way, before the vehicle goes out. */
export function fanProofs(work: Work, after: string): Step[] {
  return work.fans.map(({ item, space }, index) =>
    step(
      `fan-blows-${item}`,
      [
        {
          step: index === 0 ? after : `fan-blows-${work.fans[index - 1]?.item ?? ''}`,
          why: 'it runs with the system',
        },
      ],
      {
        layer: 'test',
        place: 'vehicle',
        by: 'vehicle',
        text: `With the system on, prove that ${item} blows the right way${space === null ? '' : ` through ${space}`}, and that it stops with the system`,
        tools: ['strip of paper'],
        minutes: minutesFor(work, 'take-reading'),
        acts: [`fan-blows:${item}`],
        proof:
          'A strip of paper is drawn to the opening where air goes in and blown from the one where it goes out; nothing rubs or rattles',
      },
    ),
  );
}
