import { about, aboutContent, aboutPlan, entry, partIn } from '../../case.ts';
import { conductor, fuse, secondBattery } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A charger behind a way of the distribution, its output led to a second battery, past its fuse or through it. */
function chargedFrom(end: 'charger.OUT+' | 'second-fuse.OUT') {
  return aboutContent(({ job }) => {
    Object.assign(job.devices, {
      charger: { part: 'charger', on: 'main' },
      second: { part: 'agm', in: 'boot' },
      'second-fuse': { part: 'holder', in: 'boot' },
    });
    Object.assign(job.links, {
      'amp-feed': { from: 'block.OUT1', to: 'charger.IN+' },
      'second-tail': { from: 'second.POS', to: 'second-fuse.IN' },
      'charger-out': { from: 'charger.OUT+', to: end === 'charger.OUT+' ? 'second.POS' : end },
    });
    job['left-open'] = { 'amp.B+': 'not used' };
  });
}

export const conductorWithoutFuseCases = {
  // Common practice, no source: a fuse at every source; a fuse after the branch protects nothing before it.
  'conductor-without-fuse': {
    fires: [
      {
        name: 'an amplifier straight on the battery',
        about: () =>
          about({
            content: ({ job }) => {
              job.links['amp-feed'] = { from: 'battery.POS', to: 'amp.B+' };
              job['left-open'] = { 'block.OUT1': 'not used' };
            },
          }),
        level: 'stop',
        subject: 'amp-feed',
        path: '/links/amp-feed',
        says: /no fuse/,
        toDo: /^put a fuse at battery\.POS, rated at most at the \d+ A that amp-feed carries, or branch off/,
      },
      {
        name: 'a branch before the main fuse, though the plan names a fuse for it',
        about: () =>
          about({
            content: ({ job }) => {
              job.links['amp-feed'] = { from: 'main-fuse.IN', to: 'amp.B+' };
              job['left-open'] = { 'block.OUT1': 'not used' };
            },
            plan: (plan) => {
              conductor(plan, 'amp-feed').fuses = ['block.OUT1'];
            },
          }),
        level: 'stop',
        subject: 'feed',
      },
      {
        name: 'a conductor behind a fuse that the plan does not hold against it',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'dsp-feed').fuses = [];
            fuse(plan, 'block.OUT2').protects = [];
          }),
        level: 'stop',
        subject: 'dsp-feed',
      },
      {
        name: 'a bank of capacitors straight on an amplifier',
        about: () =>
          aboutContent(({ job }) => {
            job.devices.bank = { part: 'bank', on: 'main' };
            job.links['bank-feed'] = { from: 'bank.POS', to: 'amp.B+' };
          }),
        level: 'stop',
        subject: 'bank-feed',
        toDo: /^put a fuse at bank\.POS, rated at most at .* and the 250 A of the maker of bank$/,
      },
      {
        name: 'a battery straight on the output of a charger',
        // The battery drives its short into the link, the charger no more than it gives; 50 A is the part's own figure.
        about: () => chargedFrom('charger.OUT+'),
        level: 'stop',
        subject: 'charger-out',
        toDo: /^put a fuse at second\.POS, then one at charger\.OUT\+, each rated at most at .* and the 50 A of the maker of charger for its output$/,
      },
      {
        name: 'a turn-on output of 20 A on an 18 AWG lead is no source that limits itself',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'radio', 'source-unit').terminals, 'REM').current = '20 A';
          }),
        level: 'stop',
        subject: 'radio-rem',
      },
    ],
    quiet: [
      {
        name: 'a bank with a fuse at its post',
        about: () =>
          about({
            content: ({ job }) => {
              job.devices.bank = { part: 'bank', on: 'main' };
              job.devices['bank-fuse'] = { part: 'holder', on: 'main' };
              job.links['bank-tail'] = { from: 'bank.POS', to: 'bank-fuse.IN' };
              job.links['bank-feed'] = { from: 'bank-fuse.OUT', to: 'block.IN' };
            },
            plan: (plan) => {
              fuse(plan, 'main-fuse').protects.push('bank-feed');
            },
          }),
      },
      { name: 'a charger with a fuse at each side', about: () => chargedFrom('second-fuse.OUT') },
      { name: 'every feed behind its fuse, turn-on leads on outputs of 0.3 A', about: () => about() },
      {
        name: 'a thin turn-on lead on an output whose limit is not known',
        about: () =>
          aboutContent((content) => {
            delete entry(partIn(content, 'radio', 'source-unit').terminals, 'REM').current;
          }),
      },
      { name: 'a second battery with a fuse at both ends of the link', about: () => secondBattery(true) },
      {
        name: 'what the vehicle came with',
        about: () =>
          aboutContent(({ vehicle }) => {
            vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
            vehicle.links = {
              ...vehicle.links,
              head: { from: 'battery.POS', to: 'head.B+', size: '14 AWG', length: '2 m' },
            };
          }),
      },
    ],
  },
  // Common practice, no source: a tap needs its own fuse.
  'tap-without-fuse': {
    fires: [
      {
        name: 'the processor on the fused supply of a radio that the vehicle came with',
        about: () =>
          aboutContent(({ job, vehicle }) => {
            vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
            job.links['dsp-feed'] = { from: 'head.B+', to: 'dsp.B+' };
            job['left-open'] = { 'block.OUT2': 'not used' };
          }),
        level: 'stop',
        subject: 'dsp-feed',
      },
    ],
    quiet: [
      { name: 'no tap', about: () => about() },
      {
        name: 'a tap with a fuse of its own',
        about: () =>
          aboutContent(({ job, vehicle }) => {
            vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
            job.devices['tap-fuse'] = { part: 'holder', in: 'dash' };
            job.links.tap = { from: 'head.B+', to: 'tap-fuse.IN' };
            job.links['dsp-feed'] = { from: 'tap-fuse.OUT', to: 'dsp.B+' };
            job['left-open'] = { 'block.OUT2': 'not used' };
          }),
      },
    ],
  },
} satisfies RuleCases;
