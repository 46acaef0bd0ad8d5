import { about, aboutContent, partIn } from '../../case.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A second lead to the amplifier, from the way that fed the radio: 60 A and 10 A side by side. */
function secondLead({ job }: Written): void {
  delete job.links['radio-feed'];
  job.links['amp-feed-2'] = { from: 'block.OUT3', to: 'amp.B+' };
}

export const fusesSideBySideCases = {
  // The part's own data: the maker of the amplifier allows 60 A.
  'fuses-over-ceiling': {
    fires: [
      {
        name: 'two leads to one amplifier, whose fuses add to more than its maker allows',
        about: () => aboutContent(secondLead),
        level: 'stop',
        subject: 'amp',
        path: '/devices/amp',
        says: /block\.OUT1 and block\.OUT3 .* 70 A .* 60 A/,
      },
    ],
    quiet: [
      { name: 'one lead behind one fuse', about: () => about() },
      {
        name: 'two leads to an amplifier that has fuses of its own aboard',
        about: () =>
          aboutContent((content) => {
            secondLead(content);
            partIn(content, 'two-channel', 'amplifier').supply['fuses-fitted'] = 2;
          }),
      },
      {
        name: 'two leads whose fuses together keep the ceiling',
        about: () =>
          aboutContent((content) => {
            secondLead(content);
            partIn(content, 'two-channel', 'amplifier').supply.fuse = '70 A';
          }),
      },
    ],
  },
} satisfies RuleCases;
