import { about, aboutContent, aboutPlan, byId, entry, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

const listed =
  (revision: string, ...list: readonly string[]) =>
  () =>
    aboutContent(({ job }) => {
      job.revision = revision;
      job.revisions = list.map((one) => ({ revision: one, date: '2026-03-14', what: 'Issue' }));
    });

/** Two speakers in the doors, of these parts. */
const pair =
  (left: string, right: string, names = ['mid-left', 'mid-right']) =>
  () =>
    aboutContent(({ job }) => {
      const [first = '', second = ''] = names;
      job.devices[first] = { part: left, in: 'door' };
      job.devices[second] = { part: right, in: 'door' };
      for (const name of names)
        for (const end of left === right || name === first ? terminalsOf(left) : terminalsOf(right))
          job['left-open'] = { ...job['left-open'], [`${name}.${end}`]: 'not driven here' };
    });
const terminalsOf = (part: string) => (part === 'tweeter' ? ['T+', 'T-'] : ['C+', 'C-']);

/** The switch of the amplifier, which its part wants at AUTO in the end. */
const ended =
  (state: string | null, final: string | undefined = 'AUTO') =>
  () =>
    aboutContent((content) => {
      const control = entry(partIn(content, 'two-channel', 'amplifier').controls, 'SENSE');
      if (final !== undefined) control.final = final;
      if (state !== null) entry(content.job.devices, 'amp')['after-commissioning'] = { SENSE: state };
    });

/** The signal of the radio in a cable of the job that is for these uses. */
const carried =
  (...uses: readonly ('speaker' | 'turn-on' | 'signal')[]) =>
  () =>
    aboutContent((content) => {
      partIn(content, 'nine-wire', 'cable').for = [...uses];
      content.job.cables = { lead: { part: 'nine-wire' } };
      Object.assign(entry(content.job.links, 'radio-signal'), { cable: 'lead', conductors: ['white'] });
    });

export const jobDataCases = {
  'revision-not-listed': {
    fires: [
      {
        name: 'left at the one before',
        about: listed('A', 'A', 'B'),
        level: 'caution',
        subject: 'demo',
        path: '/revision',
        says: /at revision A, and its list ends with B/,
      },
      {
        name: 'one that stands twice',
        about: listed('B', 'A', 'B', 'B'),
        level: 'caution',
        subject: 'demo',
        path: '/revisions/2',
        says: /B stands twice/,
      },
      {
        name: 'two whose files are one on a disk that does not tell small letters from large',
        about: listed('a', 'A', 'B', 'a'),
        level: 'caution',
        subject: 'demo',
        path: '/revisions/2',
        says: /a stands twice/,
      },
    ],
    quiet: [
      { name: 'the last one', about: listed('B', 'A', 'B') },
      { name: 'no list', about: listed('A') },
    ],
  },
  'pair-of-different-parts': {
    fires: [
      {
        name: 'a tweeter on the left, a woofer on the right',
        about: pair('tweeter', 'woofer'),
        level: 'caution',
        subject: 'mid-left',
        path: '/devices/mid-left/part',
        says: /mid-left is tweeter, and mid-right is woofer/,
      },
    ],
    quiet: [
      { name: 'one part on both sides', about: pair('tweeter', 'tweeter') },
      { name: 'two parts of other names', about: pair('tweeter', 'woofer', ['high-left', 'low-right']) },
    ],
  },
  'control-left-safe': {
    fires: [
      {
        name: 'a switch that stays as it was preset',
        about: ended('REMOTE'),
        level: 'caution',
        subject: 'amp.SENSE',
        path: '/devices/amp/after-commissioning/SENSE',
        says: /stay at "REMOTE".*ends at "AUTO"/,
      },
    ],
    quiet: [
      { name: 'a switch that ends where its part says', about: ended('AUTO') },
      { name: 'one that the job leaves to its part', about: ended(null) },
    ],
  },
  'cable-for-other-use': {
    fires: [
      {
        name: 'a signal in a cable for speakers',
        about: carried('speaker'),
        level: 'caution',
        subject: 'radio-signal',
        path: '/links/radio-signal',
        says: /carries signal, and .* is for speaker/,
      },
    ],
    quiet: [
      { name: 'a signal in a cable for signal', about: carried('speaker', 'signal') },
      { name: 'no cable', about: () => about() },
      {
        name: 'a control line in a lead for signal',
        about: () =>
          aboutPlan((plan) => {
            byId(plan.wires, 'radio-signal').role = 'control';
          }),
      },
    ],
  },
} satisfies RuleCases;
