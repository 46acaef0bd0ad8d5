import type { BuildPlan, PlanFuse } from '../../../../lib/model/plan/index.ts';
import { about, aboutPlan } from '../../case.ts';
import { conductor, fuse, run, secondBattery } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** One amplifier behind its fuse, whose maker states 60 A. */
const before = (ratingA: number, more: Partial<PlanFuse> = {}) =>
  aboutPlan((plan) => {
    Object.assign(fuse(plan, 'block.OUT1'), { ratingA, ratedA: 10, loads: ['amp'], ...more });
  });

/**
 * The main fuse as written, before an amplifier, a processor and a radio whose makers state 60, 5 and 10 A: 75 A
 * together, of which 1.6 times is 120 A. 45 A flow: 56.25 A with the margin, for which 60 A is made.
 */
const mainFuse = (ratingA: number, more: (plan: BuildPlan) => void = () => {}) =>
  aboutPlan((plan) => {
    Object.assign(fuse(plan, 'main-fuse'), { ratingA, chosen: 'given', loads: ['amp', 'dsp', 'radio'] });
    more(plan);
  });

export const fuseRatingCases = {
  // Common practice, no source.
  'fuse-over-need': {
    fires: [
      {
        name: 'just above what is asked for',
        about: () => mainFuse(121),
        level: 'caution',
        subject: 'main-fuse',
        says: /121 A fuse main-fuse is larger .* together have fuses of 75 A by their makers, of which 1\.6 times is 120 A, and 60 A does/,
        toDo: /fit 60 A/,
        path: '/devices/main-fuse/fuse',
      },
      {
        name: 'a conductor behind it that carries less, though the fuse is no larger than its devices state',
        about: () =>
          mainFuse(80, (plan) => {
            Object.assign(conductor(plan, 'main'), { ampacityA: 79, neededA: 80 });
          }),
        level: 'stop',
        subject: 'main-fuse',
        says: /main carries less/,
      },
      {
        name: 'a bundle that no grommet fits with it',
        about: () =>
          mainFuse(150, (plan) => {
            run(plan).grommets = [{ zone: 'bulkhead', holeM: 0.02, part: null }];
          }),
        level: 'stop',
        subject: 'main-fuse',
        says: /no grommet of the catalogue fits that in /,
      },
    ],
    quiet: [
      { name: 'just as much as is asked for', about: () => mainFuse(120) },
      {
        name: 'chosen by the tool',
        about: () => mainFuse(200, (plan) => Object.assign(fuse(plan, 'main-fuse'), { chosen: 'computed' })),
      },
      {
        name: 'one device, whose maker sets a ceiling',
        about: () =>
          mainFuse(200, (plan) => Object.assign(fuse(plan, 'main-fuse'), { loads: ['amp'], ceilingA: 60 })),
      },
      {
        name: 'between two batteries, where no device says what flows',
        about: () =>
          secondBattery(true, (plan) =>
            Object.assign(fuse(plan, 'main-fuse'), { ratingA: 200, chosen: 'given', loads: ['amp'] }),
          ),
      },
      {
        name: 'a conductor that carries it just so',
        about: () =>
          mainFuse(80, (plan) => {
            Object.assign(conductor(plan, 'main'), { ampacityA: 80, neededA: 80 });
          }),
      },
    ],
  },
  // Common practice, no source: under half of what the maker states is far below it.
  'fuse-under-maker': {
    fires: [
      {
        name: 'a fuse of 25 A where the maker states 60 A',
        about: () => before(25),
        level: 'caution',
        subject: 'block.OUT1',
        says: /25 A.*far below the 60 A that the maker of amp states/,
      },
      {
        name: 'a fuse just under half',
        about: () => before(29.9),
        level: 'caution',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      { name: 'half of it', about: () => before(30) },
      {
        name: 'fuses aboard: the maker asks for none before it',
        about: () => before(10, { ceilingA: null }),
      },
      { name: 'two devices behind it', about: () => before(10, { loads: ['amp', 'dsp'] }) },
    ],
  },
  // Common practice, no source.
  'fuse-without-rating': {
    fires: [
      {
        name: 'no rating',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT2').ratingA = null;
          }),
        level: 'stop',
        subject: 'block.OUT2',
        path: '/devices/block/fuses/OUT2',
      },
      {
        name: 'a rating of nothing, with what would be lawful',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(fuse(plan, 'block.OUT2'), {
              ratingA: 0,
              alternatives: [
                {
                  form: 'mini-blade',
                  ratingA: 5,
                  part: 'x',
                  stockQuantity: 3,
                  parts: ['holder'],
                  areaM2: 0,
                  note: '',
                },
              ],
            });
          }),
        level: 'stop',
        subject: 'block.OUT2',
        toDo: /lawful instead: mini blade 5 A/,
      },
      ...(
        [
          ['more than the maker allows', { ratedA: 60, ceilingA: 50 }, /its rated power and its fuse:/],
          [
            'more than the conductors carry',
            { ratedA: 60, ceilingA: null, leastAmpacityA: 40 },
            /conductors behind it that carry at least 60 A/,
          ],
          [
            'more than the holder takes',
            { ratedA: 60, ceilingA: null, leastAmpacityA: 90, holderA: 30 },
            /a holder made for at least 60 A/,
          ],
          [
            'a form that is made for none of it',
            { ratedA: 1, ceilingA: null, leastAmpacityA: 90, holderA: 300 },
            /a holder of another form/,
          ],
        ] as const
      ).map(([name, change, toDo]) => ({
        name: `no rating, for ${name}`,
        about: () =>
          aboutPlan((plan) => {
            Object.assign(fuse(plan, 'block.OUT2'), { ratingA: null, alternatives: [], ...change });
          }),
        level: 'stop' as const,
        subject: 'block.OUT2',
        toDo,
      })),
    ],
    quiet: [{ name: 'every fuse has one', about: () => about() }],
  },
  // The part's own data: the fuse that its maker states is a ceiling.
  'fuse-over-ceiling': {
    fires: [
      {
        name: 'a larger fuse than the maker of the amplifier allows',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ceilingA = 50;
          }),
        level: 'stop',
        subject: 'block.OUT1',
      },
    ],
    quiet: [{ name: 'the fuse is the ceiling', about: () => about() }],
  },
  // ISO 8820-3: standard blades are made for 1 to 40 A, maxi blades for 20 to 80 A.
  'fuse-not-made': {
    fires: [
      {
        name: 'a standard blade of 12 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT3').ratingA = 12;
          }),
        level: 'stop',
        subject: 'block.OUT3',
      },
    ],
    quiet: [
      { name: 'made ratings', about: () => about() },
      {
        name: "a rating that is not in the table, but in the fuse's own part",
        about: () =>
          about({
            content: ({ parts }) => {
              parts['some-fuse'] = { kind: 'fuse', title: 'Fuse', form: 'standard-blade', rating: '6 A' };
            },
            plan: (plan) => {
              fuse(plan, 'block.OUT3').ratingA = 6;
            },
          }),
      },
    ],
  },
  // The part's own data.
  'fuse-over-holder': {
    fires: [
      {
        name: 'a 300 A fuse in a holder for 250 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 300;
          }),
        level: 'stop',
        subject: 'main-fuse',
      },
      {
        name: 'a way of a distribution part with a limit of its own',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').holderA = 50;
          }),
        level: 'stop',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      {
        name: 'a 250 A fuse in a holder for 250 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 250;
          }),
      },
    ],
  },
  // The shop's own stock.
  'fuse-not-in-stock': {
    fires: [
      {
        name: 'three fuses needed, two there',
        about: () =>
          aboutPlan((plan) => {
            for (const { id } of plan.power.fuses) if (id !== 'main-fuse') fuse(plan, id).stockQuantity = 2;
            fuse(plan, 'main-fuse').part = 'other-fuse';
          }),
        level: 'caution',
        subject: 'block.OUT1',
        says: /needs 3/,
      },
      {
        name: 'no part at all',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(fuse(plan, 'main-fuse'), { part: null, stockQuantity: 0 });
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
      {
        name: 'two others that are lawful, of which the catalogue has one, off the shelf',
        about: () =>
          aboutPlan((plan) => {
            const other = { part: null, stockQuantity: 0, parts: [], areaM2: 0, note: '' };
            Object.assign(fuse(plan, 'main-fuse'), {
              ...{ part: null, stockQuantity: 0 },
              alternatives: [
                { ...other, form: 'class-t', ratingA: 50, parts: ['holder-t'] },
                { ...other, form: 'large-bolt-in', ratingA: 80 },
              ],
            });
          }),
        level: 'caution',
        subject: 'main-fuse',
        toDo: /lawful instead: large bolt-in 80 A \(0 pieces in stock\) or class T 50 A \(not in the catalogue, with holder-t\); these alone may take its place.*no higher rating/i,
      },
    ],
    quiet: [
      {
        name: 'four needed, four there',
        about: () =>
          aboutPlan((plan) => {
            for (const { id } of plan.power.fuses) fuse(plan, id).stockQuantity = 4;
          }),
      },
    ],
  },
  // Common practice, no source: a continuous load is at most 75 to 80 % of the fuse.
  'fuse-under-load': {
    fires: [
      {
        name: 'above 80 %, and a larger fuse may be fitted',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratedA = 65;
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
      {
        name: 'above 80 % at the ceiling of the device',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ratedA = 50;
          }),
        level: 'note',
        subject: 'block.OUT1',
      },
      {
        name: 'more than the fuse itself, ceiling or not',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ratedA = 61;
          }),
        level: 'caution',
        subject: 'block.OUT1',
      },
      {
        name: 'above 80 % at the voltage that the devices get, though not at that for sizing',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(fuse(plan, 'main-fuse'), {
              ratedA: 10,
              continuousA: 0.801 * (fuse(plan, 'main-fuse').ratingA ?? 0),
              continuousAt: 'engine-off',
            });
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
    ],
    quiet: [
      {
        name: 'just 80 % at the voltage that the devices get',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(fuse(plan, 'main-fuse'), {
              ratedA: 79,
              continuousA: 0.8 * (fuse(plan, 'main-fuse').ratingA ?? 0),
              continuousAt: 'engine-off',
            });
          }),
      },
      {
        name: 'a rating of nothing, which has a rule of its own',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 0;
          }),
      },
      {
        name: 'just 80 %',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratedA = 64;
          }),
      },
    ],
  },
} satisfies RuleCases;
