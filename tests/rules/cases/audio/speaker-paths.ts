import type { PlanSpeaker, PlanSum } from '../../../../lib/model/plan/index.ts';
import { about, aboutPlan, byId, one } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

const summing = (handover: Pick<PlanSum['handovers'][number], 'sumDb' | 'louderDb'>) => () =>
  aboutPlan(({ audio }) => {
    audio.curves.sums = [
      {
        id: 'amp.1',
        channels: ['amp.1', 'amp.2'],
        levelsDb: [],
        handovers: [{ upper: 'amp.1', lower: 'amp.2', frequencyHz: 80, ...handover }],
      },
    ];
  });

const speaker = (more: Partial<PlanSpeaker>) => () =>
  aboutPlan(({ audio }) => {
    Object.assign(byId(audio.speakers, 'sub'), more);
  });

const channel = (change: (channel: { belowDb: number | null }) => void) => () =>
  aboutPlan(({ audio }) => change(byId(audio.channels, 'amp.1')));

/** Every limit here: common practice, no source, or the parts' own data. */
export const speakerPathsCases = {
  'crossover-cancels': {
    fires: [
      {
        // Two second-order filters in the same polarity are 180 degrees apart at their corner.
        name: 'a null at the corner',
        about: summing({ sumDb: -100, louderDb: -3.01 }),
        level: 'caution',
        subject: 'amp.1',
        says: /80 Hz/,
      },
    ],
    quiet: [
      { name: 'fourth-order Linkwitz-Riley adds to 0 dB', about: summing({ sumDb: 0, louderDb: -6.02 }) },
      { name: 'third-order ways are a right angle apart', about: summing({ sumDb: 0, louderDb: -3.01 }) },
    ],
  },
  'polarity-not-as-declared': {
    fires: [
      {
        name: 'back to front, wired normally',
        about: speaker({ mounted: 'reversed' }),
        level: 'caution',
        subject: 'sub',
      },
      {
        name: 'meant to be reversed, wired normally',
        about: speaker({ reversedWhy: 'the crossover asks for it' }),
        level: 'caution',
        subject: 'sub',
        says: /the crossover asks for it/,
      },
    ],
    quiet: [
      { name: 'nothing declared', about: () => about() },
      {
        name: 'back to front and wired reversed',
        about: speaker({ mounted: 'reversed', polarity: 'reversed' }),
      },
      {
        name: 'back to front and meant to be reversed cancel out',
        about: speaker({ mounted: 'reversed', reversedWhy: 'the crossover asks for it' }),
      },
      { name: 'not wired at all', about: speaker({ mounted: 'reversed', polarity: 'unwired' }) },
    ],
  },
  'speaker-paths-differ': {
    fires: [
      {
        name: '0.6 dB',
        about: channel((own) => {
          own.belowDb = 0.6;
        }),
        level: 'note',
        subject: 'amp.1',
        says: /0\.6 dB/,
      },
    ],
    quiet: [
      {
        name: '0.5 dB',
        about: channel((own) => {
          own.belowDb = 0.5;
        }),
      },
      {
        name: 'not known',
        about: channel((own) => {
          own.belowDb = null;
        }),
      },
    ],
  },
  'full-scale-clips': {
    fires: [
      {
        name: 'an overlap of 5 dB on an amplifier without reserve',
        about: () =>
          aboutPlan(({ audio }) => {
            byId(audio.channels, 'amp.1').gain = {
              targetPowerW: 75,
              targetV: 17.3,
              clipV: 17.3,
              toneMarginDb: 0,
              fullScaleMarginDb: -5,
              toneLevelDb: -5,
              overlapDb: 5,
            };
          }),
        level: 'note',
        subject: 'amp.1',
        says: /5 dB/,
      },
    ],
    quiet: [{ name: 'no gain is known', about: () => about() }],
  },
  'control-position-unknown': {
    fires: [
      {
        name: 'one that it does not have after commissioning',
        about: () =>
          aboutPlan((plan) => {
            one(plan.controls, ({ control }) => control === 'SENSE').final = {
              ...{ state: 'SOMETIMES', why: 'as the job says', chosen: 'given', during: 'filters' },
            };
          }),
        level: 'stop',
        subject: 'amp.SENSE',
        says: /SOMETIMES/,
      },
      {
        name: 'a position that the switch does not have',
        about: () =>
          aboutPlan((plan) => {
            one(plan.controls, ({ control }) => control === 'SENSE').preset = 'SOMETIMES';
          }),
        level: 'stop',
        subject: 'amp.SENSE',
        says: /SOMETIMES/,
      },
    ],
    quiet: [{ name: 'every switch in a position that it has', about: () => about() }],
  },
} satisfies RuleCases;
