import type { Case } from '../../../../lib/rules/rule.ts';
import { about, partIn } from '../../case.ts';
import { fuse, isolated, point, withRelay } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The relay of 30 A with so much through its contact at an operating point, behind a fuse of so much. */
function contactWith(currentA: number, pointName: 'rated-power' | 'engine-off', fuseA: number): Case {
  const made = withRelay('diode');
  const joint = { kind: 'joint', model: 'resistance', dropV: 0, from: 'relay.30', to: 'relay.87' } as const;
  point(made.plan, pointName).elements.push({ ...joint, id: 'relay.30>87', of: 'relay', currentA });
  fuse(made.plan, 'block.OUT2').ratingA = fuseA;
  return made;
}

/** An isolating relay of 100 A, the main fuse of 80 A at the one side and one of so much at the other. */
function isolatedBy(ratingA: number): Case {
  return isolated(
    'radio.REM',
    () => {},
    ({ power }) => {
      const main = power.fuses.find(({ id }) => id === 'main-fuse');
      if (main) power.fuses.push({ ...main, id: 'second-fuse', item: 'second-fuse', ratingA });
    },
  );
}

/** The part's data: its contact is made for 30 A. */
export const relayContactCases = {
  'relay-contact-over-current': {
    fires: [
      {
        name: '31 A at rated power',
        about: () => contactWith(31, 'rated-power', 30),
        level: 'stop',
        subject: 'relay',
        path: '/devices/relay',
        says: /31 A flow through the contact of relay, and it is made for 30 A/,
      },
      {
        name: '31 A against its direction',
        about: () => contactWith(-31, 'rated-power', 30),
        level: 'stop',
        subject: 'relay',
      },
      {
        name: '31 A at another point',
        about: () => contactWith(31, 'engine-off', 30),
        level: 'caution',
        subject: 'relay',
        says: /Engine off: 31 A/,
      },
      {
        name: 'an isolating relay of 100 A behind a fuse of 125 A at the far battery',
        about: () => isolatedBy(125),
        level: 'caution',
        subject: 'isolator',
        says: /made for 100 A, and second-fuse before it would let 125 A through/,
      },
      {
        name: 'a fuse of 40 A before it',
        about: () => contactWith(1, 'rated-power', 40),
        level: 'caution',
        subject: 'relay',
        says: /block\.OUT2 before it would let 40 A through/,
        toDo: /a fuse of at most 30 A/,
      },
    ],
    quiet: [
      {
        name: 'an isolating relay between fuses of 100 A',
        about: () => isolatedBy(100),
      },
      { name: '30 A behind a fuse of 30 A', about: () => contactWith(30, 'rated-power', 30) },
      { name: 'no relay', about: () => about() },
      {
        name: 'a relay for more',
        about: () =>
          about({
            content: (content) => {
              partIn(content, 'relay', 'relay')['contact-current'] = '70 A';
              content.job.devices.relay = { part: 'relay', on: 'main' };
              content.job.links['contact-feed'] = { from: 'block.OUT2', to: 'relay.30' };
            },
            plan: (plan) => {
              fuse(plan, 'block.OUT2').ratingA = 60;
            },
          }),
      },
    ],
  },
} satisfies RuleCases;
