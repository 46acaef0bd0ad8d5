import type { Case } from '../../../../lib/rules/rule.ts';
import { about, aboutContent, aboutPlan, partIn } from '../../case.ts';
import { fuse, point, secondBattery } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The block between two batteries, each behind a fuse of its own (A), its fuse OUT1 being 60 A. */
function betweenTwo(mainA: number, secondA: number): Case {
  return secondBattery(true, (plan) => {
    fuse(plan, 'main-fuse').ratingA = mainA;
    plan.power.fuses.push({
      ...fuse(plan, 'main-fuse'),
      id: 'second-fuse',
      item: 'second-fuse',
      ratingA: secondA,
      source: 'second',
      protects: ['second-tail', 'link'],
    });
  });
}

/** The ground bar, made for 200 A, with so much through its wires at an operating point; its port G1 for a current. */
function throughBar(pointName: 'rated-power' | 'engine-off', currentA: number, portA?: string): Case {
  return about({
    content: (content) => {
      const port = partIn(content, 'bar', 'distribution').terminals.G1;
      if (port && portA !== undefined) port.current = portA;
    },
    plan: (plan) => {
      const joint = { kind: 'joint', model: 'resistance', currentA, dropV: 0 } as const;
      point(plan, pointName).elements.push(
        { ...joint, id: 'amp-ground:to', of: 'amp-ground', from: 'amp-ground:end', to: 'ground.G1' },
        { ...joint, id: 'board-ground:from', of: 'board-ground', from: 'ground.G0', to: 'board-ground:end' },
      );
    },
  });
}

export const fuseOrderCases = {
  // Common practice, no source.
  'fuse-order': {
    fires: [
      {
        name: 'a branch fuse above the main fuse',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 50;
          }),
        level: 'caution',
        subject: 'block.OUT1',
      },
      {
        name: 'a branch fuse above one of two that feed it from either side',
        about: () => betweenTwo(50, 80),
        level: 'note',
        subject: 'block.OUT1',
        says: /above the 50 A of main-fuse/,
      },
      {
        name: 'a branch fuse above two that feed it from either side, taken together',
        about: () => betweenTwo(20, 30),
        level: 'caution',
        subject: 'block.OUT1',
        says: /50 A of main-fuse and second-fuse together/,
      },
    ],
    quiet: [
      { name: 'a branch fuse under both that feed it', about: () => betweenTwo(60, 80) },
      {
        name: 'a branch fuse as large as the main fuse',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 60;
          }),
      },
    ],
  },
  // Common practice, no source.
  'fuses-over-feeder': {
    fires: [
      {
        name: '60, 5 and 10 A behind 70 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 70;
          }),
        level: 'note',
        subject: 'main-fuse',
        says: /75 A/,
      },
    ],
    quiet: [{ name: '75 A behind 80 A', about: () => about() }],
  },
  // The part's own data.
  'distribution-over-current': {
    fires: [
      {
        name: 'more current than the part is made for',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'fused', 'distribution').current = '40 A';
          }),
        level: 'stop',
        subject: 'block',
      },
      {
        name: 'a main fuse that lets more through than the part is made for',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'fused', 'distribution').current = '60 A';
          }),
        level: 'caution',
        subject: 'block',
      },
      {
        name: 'two fuses on either side that together let more through than the part is made for',
        about: () => betweenTwo(80, 80),
        level: 'caution',
        subject: 'block',
        says: /main-fuse and second-fuse before it let/,
      },
      {
        name: 'a part without fuses, and no fuse before it, with more through it than it is made for',
        about: () => throughBar('rated-power', 210),
        level: 'stop',
        subject: 'ground',
        says: /^210 A flow through ground at rated power, and it is made for 200 A$/,
      },
      {
        name: 'the same at another operating point alone',
        about: () => throughBar('engine-off', 210),
        level: 'caution',
        subject: 'ground',
        says: /^Engine off: 210 A flow through ground/,
      },
      {
        name: 'more through one port than that is made for',
        about: () => throughBar('rated-power', 90, '80 A'),
        level: 'stop',
        subject: 'ground',
        says: /90 A flow through ground\.G1, and that port is made for 80 A/,
      },
    ],
    quiet: [
      {
        name: 'a part without fuses with all that it is made for, and so its port',
        about: () => throughBar('rated-power', 200, '200 A'),
      },
      {
        name: 'a part made for what the main fuse lets through',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'fused', 'distribution').current = '80 A';
          }),
      },
    ],
  },
} satisfies RuleCases;
