import { entry, partIn } from '../../case.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';
import { plannedCase, stereo } from '../../stereo.ts';

/** A subwoofer in place of the right tweeter, on the second channel; the source has a left and a right output. */
const bass = (change: (content: Written) => void) =>
  stereo((content) => {
    const { job } = content;
    entry(job.devices, 'right').part = 'woofer';
    entry(job.links, 'to-right').to = 'right.C';
    change(content);
  });

const mixed = (...inputs: string[]) =>
  bass(({ job }) => {
    entry(job.devices, 'dsp').mix = { OUT1: ['IN-A'], OUT2: inputs };
  });

/** The processor only converts the level: it has no menu, and passes each input on to the output of its number. */
const converter = (content: Written) => {
  const dsp = partIn(content, 'dsp', 'processor');
  delete dsp['filter-orders'];
  delete entry(content.job.devices, 'dsp').filters;
};

/** What the outputs of the source carry. */
const outputs = (content: Written, left: object, right: object) => {
  partIn(content, 'radio', 'source-unit').outputs = { LEFT: left, RIGHT: right };
};

export const bassSidesCases = {
  // Common practice, no source: what is recorded on one side alone is heard from a subwoofer that plays both.
  'bass-from-one-side': {
    fires: [
      {
        name: 'a subwoofer whose output of the processor plays the left input alone',
        about: () => mixed('IN-A'),
        level: 'caution',
        subject: 'amp.2',
        says: /^right plays the bass of radio.LEFT alone, the left side of the source: bass that is recorded on the right alone is lost$/,
        toDo: /mix: of both/,
      },
      {
        name: 'a subwoofer behind the right half of a converter',
        about: () => bass(converter),
        level: 'caution',
        subject: 'amp.2',
        says: /radio.RIGHT alone, the right side/,
      },
      {
        name: 'outputs whose side is told by their number alone',
        about: () =>
          bass((content) => {
            converter(content);
            outputs(content, {}, {});
          }),
        level: 'caution',
        subject: 'amp.2',
        says: /radio.RIGHT alone, the right side/,
      },
      {
        name: 'both subwoofers from the right',
        about: () =>
          bass((content) => {
            const { job } = content;
            entry(job.devices, 'left').part = 'woofer';
            entry(job.links, 'to-left').to = 'left.C';
            entry(job.devices, 'dsp').mix = { OUT1: ['IN-B'], OUT2: ['IN-B'] };
          }),
        level: 'caution',
        subject: 'amp.1',
        says: /^left and right play the bass of radio.RIGHT alone/,
      },
    ],
    quiet: [
      { name: 'both inputs', about: () => mixed('IN-A', 'IN-B') },
      {
        name: 'a processor that does not say what its output plays',
        about: () => bass(() => {}),
      },
      {
        name: 'an amplifier that adds the other side',
        about: () =>
          bass((content) => {
            converter(content);
            const amp = partIn(content, 'two-channel', 'amplifier');
            entry(amp.channels, '2').summed = ['IN1'];
          }),
      },
      {
        name: 'a subwoofer on each side',
        about: () =>
          bass((content) => {
            converter(content);
            const { job } = content;
            entry(job.devices, 'left').part = 'woofer';
            entry(job.links, 'to-left').to = 'left.C';
          }),
      },
      {
        name: 'an output that carries both sides',
        about: () =>
          bass((content) => {
            converter(content);
            outputs(content, { side: 'left' }, { side: 'middle' });
          }),
      },
      {
        name: 'an output for bass',
        about: () =>
          bass((content) => {
            converter(content);
            outputs(content, { carries: 'front-left' }, { carries: 'bass-right' });
          }),
      },
      { name: 'a source of one output, which carries both sides', about: () => plannedCase(() => {}) },
      { name: 'tweeters of either side', about: () => stereo(converter) },
    ],
  },
} satisfies RuleCases;
