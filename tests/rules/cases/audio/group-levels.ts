import { entry, partIn } from '../../case.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';
import { stereo } from '../../stereo.ts';

type Change = (content: Written) => void;

/** Two tweeters on a channel each; the left one is to play below the other. */
const quieter =
  (...changes: readonly Change[]) =>
  () =>
    stereo((content) => {
      entry(content.job.devices, 'left').level = '-3 dB';
      for (const change of changes) change(content);
    });

const gain = {
  what: 'gain',
  form: 'knob',
  panel: 'left',
  safe: 'fully down',
  why: 'no signal passes',
} as const;
const ownGains: Change = (content) => {
  const { controls } = partIn(content, 'two-channel', 'amplifier');
  delete controls?.GAIN;
  Object.assign(controls ?? {}, { G1: { ...gain, channels: ['1'] }, G2: { ...gain, channels: ['2'] } });
};
const noGain: Change = (content) => {
  delete partIn(content, 'two-channel', 'amplifier').controls?.GAIN;
};
const level =
  (channels: readonly string[], down?: string): Change =>
  (content) => {
    const dsp = partIn(content, 'dsp', 'processor');
    const made = { what: 'level', form: 'menu', panel: 'face', safe: '0 dB', why: 'all alike' } as const;
    const reach = down === undefined ? {} : { level: { range: { from: down, to: '0 dB' } } };
    dsp.controls = { ...dsp.controls, LEVEL: { ...made, ...reach, channels: [...channels] } };
  };
const both: Change = ({ job }) => {
  entry(job.devices, 'right').level = '-3 dB';
};
const onOne: Change = ({ job }) => {
  entry(job.links, 'to-right').from = 'amp.CH1';
};

// What a control moves: the parts' data.
export const groupLevelsCases = {
  'level-not-made': {
    fires: [
      {
        name: 'one gain for both',
        about: quieter(),
        level: 'stop',
        subject: 'left',
        path: '/devices/left/level',
        says: /at -3 dB, and what sets its level moves right as well/,
        toDo: /controls: LEVEL: \{ what: level,.* or take level: out/,
      },
      {
        name: 'one channel for both',
        about: quieter(onOne),
        level: 'stop',
        subject: 'left',
        says: /right on the same channel, amp\.1/,
        toDo: /the same level: at all speakers of amp\.1/,
      },
      {
        name: 'no gain that is told',
        about: quieter(noGain),
        level: 'stop',
        subject: 'left',
        says: /neither a gain of amp nor the level of an output/,
        toDo: /under controls: of two-channel, such as GAIN:/,
      },
      {
        name: 'a level that both outputs of the processor have',
        about: quieter(noGain, level(['OUT1', 'OUT2'])),
        level: 'stop',
        subject: 'left',
        says: /moves right as well/,
      },
      {
        name: 'a level that does not go so far down',
        about: quieter(noGain, level(['OUT1'], '-2 dB')),
        level: 'stop',
        subject: 'left',
        says: /at -3 dB, and LEVEL of dsp goes down to -2 dB/,
        toDo: /level: -2 dB; or take level: out/,
      },
      {
        name: 'no channel',
        about: quieter(({ job }) => {
          delete job.links['to-left'];
          job.runs = { ...job.runs, left: { route: 'left-sill', links: ['main'] } };
        }),
        level: 'stop',
        subject: 'left',
        says: /no channel of an amplifier drives it/,
      },
    ],
    quiet: [
      { name: 'a gain each', about: quieter(ownGains) },
      { name: 'one gain, and both at that level', about: quieter(both) },
      { name: 'one channel, and both at that level', about: quieter(both, onOne) },
      { name: 'a level of its own output', about: quieter(level(['OUT1'])) },
      { name: 'a level that goes just so far down', about: quieter(noGain, level(['OUT1'], '-3 dB')) },
      { name: 'none is asked for', about: () => stereo() },
    ],
  },
} satisfies RuleCases;
