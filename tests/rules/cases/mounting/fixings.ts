import { about, aboutContent, entry, partIn } from '../../case.ts';
import { board, soundPoint } from '../../changes.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

type Fixing = ReturnType<typeof partIn<'fixing'>>;

/** The bolt of both fixings, M6 by 40 mm through a board of 12 mm, with something else about it. */
const bolt =
  (change: Partial<Fixing>, more: (content: Written) => void = () => {}) =>
  () =>
    aboutContent((content) => {
      Object.assign(partIn(content, 'screw', 'fixing'), change);
      more(content);
    });

const fixingA = ({ job }: Written) => entry(entry(job.boards, 'main').fixings, 'a');

/** A bolt of so many millimetres over a spacer of 12 mm, whose stack the plan makes as high as told. */
const overSpacer = (length: string, makesM: number) => () =>
  about({
    content: (content) => {
      partIn(content, 'screw', 'fixing').length = length;
      fixingA(content).spacer = '12 mm';
    },
    plan: (plan) => {
      board(plan).pieces = [
        {
          ...{ id: 'main.a.pad', carries: 'a', form: 'pad', count: 1, widthM: 0.04, lengthM: 0.04 },
          ...{ thicknessM: 0.012, layers: 1, parts: [], makesM, packM: 0, holeM: 0.0066 },
        },
      ];
    },
  });

/** Both fixings over something of 10 mm from the shelf. */
const over = (form: Fixing['form']) => () =>
  about({
    content: ({ parts }) => {
      parts.stand = { kind: 'fixing', title: 'Stand', form, thread: 'M6', length: '10 mm' };
    },
    plan: (plan) => {
      board(plan).pieces = ['a', 'b'].map((carries) => ({
        ...{ id: `main.${carries}.pad`, carries, form: 'pad', count: 1, widthM: 0, lengthM: 0 },
        ...{ thicknessM: 0, layers: 0, parts: [{ part: 'stand', count: 1 }], makesM: 0.01, packM: 0 },
        holeM: null,
      }));
    },
  });

/** The amplifier on the board, with feet of a hole so wide, and a wood screw #8 in the catalogue. */
const feet =
  (diameter: string, bearsOn?: string, more: (content: Written) => void = () => {}) =>
  () =>
    about({
      content: (content) => {
        partIn(content, 'two-channel', 'amplifier')['mounting-holes'] = [
          { x: '5 mm', y: '5 mm', diameter: '5 mm' },
          { x: '95 mm', y: '5 mm', diameter },
        ];
        content.parts.pan = {
          ...{ kind: 'fixing', title: 'Wood screw', form: 'wood-screw', thread: '#8' },
          ...{ length: '16 mm', pilot: '3 mm', clearance: '4.4 mm' },
          ...(bearsOn !== undefined && { 'bears-on': bearsOn }),
        };
        more(content);
      },
      plan: (plan) => {
        board(plan).placements = [
          {
            ...{
              item: 'amp',
              xM: 0.1,
              yM: 0.1,
              turnDeg: 0,
              widthM: 0.1,
              depthM: 0.1,
              heightM: 0.05,
              raisedM: 0,
            },
            ...{ keepClear: [], chosen: 'given' },
          },
        ];
      },
    });

/** A screw of this length that the job names for the parts of its board. */
const named = (length: string) =>
  feet('8 mm', undefined, (content) => {
    partIn(content, 'pan', 'fixing').length = length;
    Object.assign(entry(content.job.boards, 'main'), { screw: 'pan' });
  });

/** Parts on feet of a height, screwed by a screw of a length onto a board with a spacer of 12 mm below. */
const footed = (length: string, foot: string) =>
  feet('5 mm', undefined, (content) => {
    partIn(content, 'pan', 'fixing').length = length;
    Object.assign(partIn(content, 'two-channel', 'amplifier'), { foot });
    Object.assign(entry(content.job.boards, 'main'), { spacer: '12 mm' });
  });

export const fixingsCases = {
  // Common practice, no source: rubber gives way below a torque.
  'board-on-rubber': {
    fires: [
      {
        name: 'bushes of rubber',
        about: over('rubber-bush'),
        level: 'note',
        subject: 'a',
        path: '/boards/main',
        says: /stands at a and b on rubber \(stand\)/,
        toDo: /begins to bulge/,
      },
    ],
    quiet: [
      { name: 'hard spacers', about: over('spacer') },
      { name: 'no spacers at all', about: () => about() },
    ],
  },
  // The thread of the point, as the vehicle's file tells it: M6.
  'fixing-misfits-point': {
    fires: [
      {
        name: 'a bolt M6 for a point M8',
        about: bolt({}, (content) => {
          soundPoint(content).stud = 'M8';
        }),
        level: 'stop',
        subject: 'a',
        path: '/boards/main/fixings/a',
        says: /has the thread M6, and p1 takes a bolt M8/,
      },
      { name: 'a bolt M8 for a point M6', about: bolt({ thread: 'M8' }), level: 'stop', subject: 'b' },
      {
        name: 'a wood screw into a rivet nut',
        about: bolt({ form: 'wood-screw', thread: '#8' }),
        level: 'stop',
        subject: 'a',
        says: /is a wood screw, which has no hold in a thread/,
      },
      {
        name: 'a rivet nut in place of its bolt',
        about: bolt({ form: 'rivet-nut' }),
        level: 'stop',
        subject: 'a',
        says: /is a rivet nut/,
      },
      {
        name: 'a screw by number in a metric nut',
        about: bolt({ thread: '#10' }),
        level: 'stop',
        subject: 'a',
      },
    ],
    quiet: [
      { name: 'M6 in M6', about: () => about() },
      { name: 'a bolt', about: bolt({ form: 'bolt' }) },
    ],
  },
  // ISO 4032, from memory: a regular nut is 0.8 diameters high; a whole diameter is common practice. M6: 4.8 and 6 mm.
  'fixing-too-short': {
    fires: [
      {
        name: '17.9 mm through 12 mm: 5.9 mm are left',
        about: bolt({ length: '17.9 mm' }),
        level: 'caution',
        subject: 'a',
        says: /have .*5.9 mm.* left for their thread/,
      },
      {
        name: '16.9 mm: 4.9 mm are left',
        about: bolt({ length: '16.9 mm' }),
        level: 'caution',
        subject: 'a',
      },
      { name: '16.7 mm: 4.7 mm are left', about: bolt({ length: '16.7 mm' }), level: 'stop', subject: 'a' },
      {
        name: '11 mm does not come through',
        about: bolt({ length: '11 mm' }),
        level: 'stop',
        subject: 'a',
        path: '/boards/main/fixings/a',
        says: /the fixings a and b of main, .* do not reach p1 and p2/,
        toDo: /no machine screw M6 of the catalogue does: add one of 18 mm .* or more/,
      },
      {
        name: '11 mm does not come through, and a screw of 18 mm is in the catalogue',
        about: bolt({ length: '11 mm' }, ({ parts }) => {
          parts.longer = {
            kind: 'fixing',
            title: 'Screw',
            form: 'machine-screw',
            thread: 'M6',
            length: '18 mm',
          };
        }),
        level: 'stop',
        subject: 'a',
        toDo: /^write fixing: longer \(0 in stock\) for a and b/,
      },
      {
        name: '11 mm does not come through, and a screw in the catalogue reaches past what is free behind p1',
        about: bolt({ length: '11 mm' }, ({ parts }) => {
          parts.longer = {
            kind: 'fixing',
            title: 'Screw',
            form: 'machine-screw',
            thread: 'M6',
            length: '43 mm',
          };
        }),
        level: 'stop',
        subject: 'a',
        toDo: /of the catalogue does: add one/,
      },
      {
        name: '29 mm over a spacer of 12 mm',
        about: overSpacer('29 mm', 0.012),
        level: 'caution',
        subject: 'a',
        says: /12 mm.* of spacer/,
      },
      {
        name: '30 mm over a stack that comes to 14 mm',
        about: overSpacer('30 mm', 0.014),
        level: 'stop',
        subject: 'a',
      },
    ],
    quiet: [
      { name: '18 mm through 12 mm', about: bolt({ length: '18 mm' }) },
      { name: '30 mm over a spacer of 12 mm', about: overSpacer('30 mm', 0.012) },
      {
        name: 'a screw that does not fit its point is told as that',
        about: bolt({ length: '5 mm', thread: 'M8' }),
      },
    ],
  },
  // Geometry. A #8 is 4.17 mm thick (ASME B18.6), and an ordinary head counts as twice that: 8.3 mm.
  'head-pulls-through': {
    fires: [
      {
        name: 'a head of 6.5 mm on a clearance hole of 6.6 mm',
        about: bolt({ clearance: '6.6 mm', 'bears-on': '6.5 mm' }),
        level: 'stop',
        subject: 'a',
        path: '/boards/main/fixings/a',
      },
      {
        name: 'feet with a hole of 8.5 mm, the head not told',
        about: feet('8.5 mm'),
        level: 'caution',
        subject: 'amp',
        path: '/devices/amp',
        says: /across as an ordinary one, and a mounting hole of amp/,
      },
      {
        name: 'a head that is told, as wide as the hole',
        about: feet('8 mm', '8 mm'),
        level: 'stop',
        subject: 'amp',
      },
    ],
    quiet: [
      { name: 'feet with a hole of 8 mm', about: feet('8 mm') },
      { name: 'a washer of 12 mm on a hole of 8.5 mm', about: feet('8.5 mm', '12 mm') },
      { name: 'a head of 10 mm on 6.6 mm', about: bolt({ clearance: '6.6 mm', 'bears-on': '10 mm' }) },
    ],
  },
  // By hand: 16 mm through a foot of 3 mm end 1 mm behind 12 mm of board; 13 mm bite 10 mm, and 14 mm end 1 mm short of the face.
  'part-screw-through': {
    fires: [
      {
        name: 'a screw of 16 mm through feet of 3 mm',
        about: footed('16 mm', '3 mm'),
        level: 'note',
        subject: 'main',
        path: '/boards/main',
        says: /pan comes 1\.?0? mm.* out of main behind amp/,
        toDo: /order screws of 13 to 14 mm below the head/,
      },
      {
        name: 'one of 28 mm, which reaches 13 mm out where 12 are free',
        about: footed('28 mm', '3 mm'),
        level: 'caution',
        subject: 'main',
        says: /out of main behind amp, where 12 mm .* is free/,
        toDo: /or stand the board on spacers/,
      },
    ],
    quiet: [
      { name: 'a screw of 14 mm through the same', about: footed('14 mm', '3 mm') },
      { name: 'a screw of 16 mm through feet of 4 mm', about: footed('16 mm', '4 mm') },
    ],
  },
  // The board is 12 mm thick, and the house asks for a bite of 10 mm.
  'part-screw-unfit': {
    fires: [
      {
        name: 'a screw of 8 mm',
        about: named('8 mm'),
        level: 'caution',
        subject: 'main',
        path: '/boards/main/screw',
        says: /bites .* in main, and .* are asked for/,
      },
      {
        name: 'a screw of 60 mm, out of board and spacer',
        about: named('60 mm'),
        level: 'caution',
        subject: 'main',
        says: /comes out of main/,
      },
    ],
    quiet: [
      { name: 'a screw of 11 mm', about: named('11 mm') },
      { name: 'a short screw that nobody names', about: feet('5 mm') },
    ],
  },
} satisfies RuleCases;
