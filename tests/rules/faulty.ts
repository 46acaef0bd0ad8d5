import type { JoinedRemark, PlacedRemark } from '../../lib/model/remark.ts';
import { about } from './case.ts';
import { channel, conductor, fuse, wire } from './changes.ts';

/** Something that a computation noticed, at a place. */
export const remark = (change: Partial<JoinedRemark>, path = '/devices/amp'): PlacedRemark => ({
  remark: {
    rule: 'air-gap-short',
    level: 'caution',
    of: ['amp', 'dsp'],
    message: 'too near',
    source: 'common practice, no source',
    mark: 'cp',
    remedy: 'move it',
    ...change,
  },
  path,
});

/** A job in which many things are wrong at once. */
export const faulty = () =>
  about({
    content: ({ job, vehicle }) => {
      delete job.links['signal-2'];
      vehicle['negative-sensor'] = true;
      job.links['board-ground'] = { from: 'ground.G0', to: 'battery.NEG' };
    },
    plan: (plan) => {
      fuse(plan, 'block.OUT2').ratingA = null;
      conductor(plan, 'main').cautionA = 50;
      conductor(plan, 'main').insulationC = 60;
      wire(plan, 'feed').lengthM = 2;
      channel(plan, 'amp.1').filters = [];
      channel(plan, 'amp.2').loadOhm = null;
    },
  });
