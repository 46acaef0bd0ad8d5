import { aboutContent, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

export const batteryPlacementCases = {
  // Common practice, no source.
  'battery-in-wrong-zone': {
    fires: [
      {
        name: 'a flooded battery in the boot',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'agm', 'battery').chemistry = 'flooded';
            content.job.devices.second = { part: 'agm', in: 'boot' };
          }),
        level: 'stop',
        subject: 'second',
      },
      {
        name: 'a lithium battery in the engine bay',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'agm', 'battery').chemistry = 'lithium';
            content.job.devices.second = { part: 'agm', in: 'bay' };
          }),
        level: 'stop',
        subject: 'second',
      },
    ],
    quiet: [
      {
        name: 'absorbed glass mat in the boot',
        about: () =>
          aboutContent(({ job }) => {
            job.devices.second = { part: 'agm', in: 'boot' };
          }),
      },
      {
        name: 'a flooded battery in the engine bay, where the vehicle has it',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'agm', 'battery').chemistry = 'flooded';
          }),
      },
    ],
  },
  // Common practice, no source.
  'battery-chemistries-mixed': {
    fires: [
      {
        name: 'lithium behind a fuse on an absorbed glass mat battery',
        about: () =>
          aboutContent((content) => {
            content.parts.lithium = { ...partIn(content, 'agm', 'battery'), chemistry: 'lithium' };
            content.job.devices.second = { part: 'lithium', in: 'boot' };
            content.job.links['second-tail'] = { from: 'second.POS', to: 'block.IN' };
          }),
        level: 'stop',
        subject: 'second',
      },
    ],
    quiet: [
      {
        name: 'two of one chemistry',
        about: () =>
          aboutContent(({ job }) => {
            job.devices.second = { part: 'agm', in: 'boot' };
            job.links['second-tail'] = { from: 'second.POS', to: 'block.IN' };
          }),
      },
      {
        name: 'lithium that is not joined to the other one',
        about: () =>
          aboutContent((content) => {
            content.parts.lithium = { ...partIn(content, 'agm', 'battery'), chemistry: 'lithium' };
            content.job.devices.second = { part: 'lithium', in: 'boot' };
          }),
      },
    ],
  },
} satisfies RuleCases;
