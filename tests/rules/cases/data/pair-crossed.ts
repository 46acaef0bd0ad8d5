import { entry, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';
import { crossedPair, plannedCase, stereo } from '../../stereo.ts';

const fed =
  (...given: Parameters<typeof crossedPair>) =>
  () =>
    crossedPair(...given);

/** The same source, with both of its pairs or one at a subwoofer whose channel adds two inputs. */
const bass = (second: string) =>
  fed('FL', second, (content) => {
    const { job } = content;
    const { channels } = partIn(content, 'two-channel', 'amplifier');
    Object.assign(channels, { '1': { ...entry(channels, '1'), summed: ['IN2'] } });
    partIn(content, 'tweeter', 'speaker').band = 'subwoofer';
    delete job.devices.right;
    delete job.links['to-right'];
    job.runs = { left: { route: 'left-sill', links: ['main', 'to-left'] } };
  });

/** A subwoofer behind a processor that adds all four outputs of the source. */
const crossedBass = fed('FL', 'FR', (content) => {
  const { job } = content;
  const { terminals } = partIn(content, 'dsp', 'processor');
  const input = entry(terminals, 'IN-A');
  Object.assign(terminals, { 'IN-C': { ...input }, 'IN-D': { ...input } });
  Object.assign(job.links, {
    'in-rear-left': { from: 'radio.RL', to: 'dsp.IN-C' },
    'in-rear-right': { from: 'radio.RR', to: 'dsp.IN-D' },
  });
  partIn(content, 'tweeter', 'speaker').band = 'subwoofer';
  const all = ['IN-A', 'IN-B', 'IN-C', 'IN-D'];
  entry(job.devices, 'dsp').mix = { OUT1: all, OUT2: all };
});

/** Tweeters that the source drives itself. */
const direct = (left: string) => () =>
  plannedCase((content) => {
    const { job } = content;
    const { terminals } = partIn(content, 'radio', 'source-unit');
    for (const name of ['FL', 'FR'])
      Object.assign(terminals, {
        [`${name}+`]: { role: 'speaker-out-positive' },
        [`${name}-`]: { role: 'speaker-out-negative' },
      });
    job.links['speaker-1'] = { from: `radio.${left}`, to: 'tweeter.T' };
  });

// How outputs are marked is common practice, no source.
export const pairCrossedCases = {
  'pair-crossed': {
    fires: [
      {
        name: 'the front left from the rear right',
        about: fed('RR', 'FR'),
        level: 'caution',
        subject: 'amp.1',
        path: '/links/in-left',
        says: /^left is of the front left, and is linked to radio\.RR, which carries rear right$/,
        toDo: /^link it to radio\.FL;/,
      },
      {
        name: 'the rear where the job says so, from the front',
        about: fed('FL', 'FR', ({ job }) => {
          entry(job.devices, 'left').signal = 'rear';
        }),
        level: 'caution',
        subject: 'amp.1',
        says: /left is of the rear left/,
      },
      {
        name: 'what is written of an output goes before its name',
        about: fed('FL', 'FR', (content) => {
          const radio = partIn(content, 'radio', 'source-unit');
          radio.outputs = { FL: { carries: 'rear-left' }, RL: { carries: 'front-left' } };
        }),
        level: 'caution',
        subject: 'amp.1',
        toDo: /radio\.RL;/,
      },
      {
        name: 'bass from the front and the rear',
        about: bass('RR'),
        level: 'caution',
        subject: 'amp.1',
        says: /radio\.FL \(front left\) and radio\.RR \(rear right\): outputs of two pairs/,
      },
      {
        name: 'a speaker on the left that the source drives by its right output',
        about: direct('FR'),
        level: 'caution',
        subject: 'speaker-1',
        toDo: /radio\.FL;/,
      },
      {
        name: 'an input of a processor that is named for another',
        about: fed('FL', 'FR', (content) => {
          const { terminals } = partIn(content, 'dsp', 'processor');
          terminals.RR = { ...entry(terminals, 'IN-A') };
          delete terminals['IN-A'];
          entry(content.job.links, 'in-left').to = 'dsp.RR';
          entry(content.job.devices, 'dsp').mix = { OUT1: ['RR'], OUT2: ['IN-B'] };
        }),
        level: 'caution',
        subject: 'in-left',
        says: /dsp\.RR is of the rear right, and is linked to radio\.FL/,
      },
    ],
    quiet: [
      { name: 'each from its own', about: fed('FL', 'FR') },
      {
        name: 'the rear outputs, as the job says',
        about: fed('RL', 'RR', ({ job }) => {
          for (const id of ['left', 'right']) entry(job.devices, id).signal = 'rear';
        }),
      },
      {
        name: 'a row that nothing tells',
        about: fed('RL', 'RR', ({ vehicle }) => {
          for (const place of ['door', 'right-door']) delete entry(vehicle.places, place).row;
        }),
      },
      { name: 'bass from both of the front', about: bass('FR') },
      {
        name: 'bass from both of the front and both of the rear, which a processor sums',
        about: crossedBass,
      },
      { name: 'its own output at a speaker', about: direct('FL') },
      { name: 'a source with one pair, whose names tell the side alone', about: () => stereo() },
    ],
  },
} satisfies RuleCases;
