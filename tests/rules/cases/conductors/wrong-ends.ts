import { about, aboutContent, entry } from '../../case.ts';
import { secondBattery } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** Kirchhoff's laws and the parts' data: where a link can't end. */
export const wrongEndCases = {
  'battery-reversed': {
    fires: [
      {
        name: 'the leads of the vehicle on the wrong posts',
        about: () =>
          aboutContent(({ vehicle }) => {
            entry(vehicle.links, 'charge').to = 'battery.NEG';
            entry(vehicle.links, 'strap').from = 'battery.POS';
          }),
        level: 'stop',
        subject: 'battery',
        says: /battery\.POS goes to body\.engine, which is ground, and battery\.NEG to alternator\.B\+/,
        file: 'vehicle.yaml',
      },
      {
        name: 'a second battery of the job the wrong way round',
        about: () =>
          aboutContent(({ job }) => {
            job.devices.second = { part: 'agm', in: 'boot' };
            job.links['second-ground'] = { from: 'second.POS', to: 'body.cargo' };
            job.links['second-tail'] = { from: 'second.NEG', to: 'block.IN' };
          }),
        level: 'stop',
        subject: 'second',
        path: '/devices/second',
      },
    ],
    quiet: [
      { name: 'both batteries as they belong', about: () => secondBattery(true) },
      {
        name: 'two batteries in series: the strap is no feed on a reversed one',
        about: () =>
          aboutContent(({ job }) => {
            job.devices.second = { part: 'agm', in: 'boot' };
            job.links.strap = { from: 'second.NEG', to: 'battery.POS' };
          }),
      },
    ],
  },
  'fuse-bypassed': {
    fires: [
      {
        name: 'the feed on the wrong stud of the holder',
        about: () =>
          aboutContent(({ job }) => {
            entry(job.links, 'main').to = 'main-fuse.IN';
          }),
        level: 'stop',
        subject: 'main-fuse',
        says: /main leads round the fuse main-fuse/,
        path: '/links/main',
      },
      {
        name: 'a jumper over a way of the block',
        about: () =>
          aboutContent(({ job }) => {
            job.links.jumper = { from: 'block.IN', to: 'block.OUT1' };
          }),
        level: 'stop',
        subject: 'block.OUT1',
        path: '/links/jumper',
      },
      {
        name: 'the link between batteries from before its fuse, whose way out is open',
        about: () =>
          about({
            content: ({ job }) => {
              job.devices.second = { part: 'agm', in: 'boot' };
              job.devices['second-fuse'] = { part: 'holder', in: 'boot' };
              job.links['second-ground'] = { from: 'second.NEG', to: 'body.cargo' };
              job.links['second-tail'] = { from: 'second.POS', to: 'second-fuse.IN' };
              job.links.link = { from: 'second-fuse.IN', to: 'block.IN' };
            },
          }),
        level: 'stop',
        subject: 'second-fuse',
        says: /link leaves from second-fuse.IN, before the fuse second-fuse, and second-fuse.OUT behind it is open/,
        toDo: /take link to second-fuse.OUT/,
        path: '/links/link',
      },
    ],
    quiet: [
      {
        name: 'a fuse whose way out was forgotten, beside another that feeds all',
        about: () =>
          aboutContent(({ job }) => {
            job.devices.spare = { part: 'holder', in: 'bay' };
            job.links['spare-tail'] = { from: 'battery.POS', to: 'spare.IN', length: '6 in' };
          }),
      },
      { name: 'every fuse alone between its ends', about: () => about() },
      { name: 'a fuse at either end of a link between batteries', about: () => secondBattery(true) },
    ],
  },
  'outputs-joined': {
    fires: [
      {
        name: 'the output of the source on a speaker output',
        about: () =>
          aboutContent(({ job }) => {
            job.links.wrong = { from: 'dsp.OUT2', to: 'amp.CH2+' };
          }),
        level: 'stop',
        subject: 'wrong',
        says: /joins the output dsp\.OUT2 to the output amp\.CH2\+/,
        toDo: /at an input of amp/,
      },
      {
        name: 'two sources on each other',
        about: () =>
          aboutContent(({ job }) => {
            job.links.wrong = { from: 'radio.OUT', to: 'dsp.OUT1' };
          }),
        level: 'stop',
        subject: 'wrong',
      },
    ],
    quiet: [
      { name: 'outputs on inputs', about: () => about() },
      {
        name: 'two outputs of one amplifier',
        about: () =>
          aboutContent(({ job }) => {
            job.links.bridge = { from: 'amp.CH1-', to: 'amp.CH2+' };
          }),
      },
    ],
  },
} satisfies RuleCases;
