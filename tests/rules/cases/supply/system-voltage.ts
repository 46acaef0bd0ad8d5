import type { Case } from '../../../../lib/rules/rule.ts';
import { about, aboutContent, entry, partIn } from '../../case.ts';
import { fuse } from '../../changes.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A truck: every part of the vehicle for 24 V, and every device of the job too. */
function truck(content: Written): void {
  content.vehicle['system-voltage'] = '24 V';
  partIn(content, 'agm', 'battery').voltage = '24 V';
  const range = { from: '18 V', to: '32 V' };
  partIn(content, 'two-channel', 'amplifier').supply.range = { ...range };
  partIn(content, 'dsp', 'processor').supply.range = { ...range };
  partIn(content, 'radio', 'source-unit').supply.range = { ...range };
}

/** A truck with its amplifier and processor fed through a charger from 24 V to 12 V; the radio is its own. */
function withConverter(content: Written): void {
  truck(content);
  const { job, parts } = content;
  delete partIn(content, 'two-channel', 'amplifier').supply.range;
  delete partIn(content, 'dsp', 'processor').supply.range;
  const charger = partIn(content, 'charger', 'charger');
  charger.input.range = { from: '20 V', to: '32 V' };
  charger.output.voltage = '13.8 V';
  parts.small = { ...partIn(content, 'fused', 'distribution') };
  Object.assign(job.devices, {
    charger: { part: 'charger', on: 'main' },
    small: { part: 'small', on: 'main' },
  });
  Object.assign(job.links, {
    'charger-feed': { from: 'block.OUT1', to: 'charger.IN+' },
    'charger-ground': { from: 'charger.GND', to: 'body.cargo' },
    'small-feed': { from: 'charger.OUT+', to: 'small.IN' },
    'amp-feed': { from: 'small.OUT1', to: 'amp.B+' },
    'dsp-feed': { from: 'small.OUT2', to: 'dsp.B+' },
  });
}

const inTruck = (change: (content: Written) => void): Case =>
  aboutContent((content) => {
    truck(content);
    change(content);
  });
const range = (from: string, to: string) =>
  aboutContent((content) => {
    partIn(content, 'dsp', 'processor').supply.range = { from, to };
  });
/** Two batteries of 12 V that make the 24 V of a truck. */
const twoInSeries = (content: Written) => {
  content.vehicle['system-voltage'] = '24 V';
  truck(content);
  delete partIn(content, 'agm', 'battery').voltage;
  content.vehicle.fitted.rear = { part: 'agm', zone: 'engine-bay' };
  Object.assign(content.vehicle.links ?? {}, {
    strap: { from: 'rear.NEG', to: 'body.engine', size: '4 AWG', length: '300 mm' },
    middle: { from: 'battery.NEG', to: 'rear.POS', size: '4 AWG', length: '300 mm' },
  });
};
const bank = (rated: string) =>
  aboutContent((content) => {
    partIn(content, 'bank', 'capacitor-bank')['rated-voltage'] = rated;
    content.job.devices.bank = { part: 'bank', on: 'main' };
    content.job.links['bank-feed'] = { from: 'bank.POS', to: 'block.IN' };
  });

export const systemVoltageCases = {
  // The parts' data. Charged at 14.4 V where no alternator says (common practice, no source); 12.2 V with the engine off.
  'part-not-for-system': {
    fires: [
      {
        name: 'an amplifier without a word of it in a truck',
        about: () =>
          inTruck((content) => {
            delete partIn(content, 'two-channel', 'amplifier').supply.range;
          }),
        level: 'stop',
        subject: 'amp',
        path: '/devices/amp',
        says: /24 V system, which gives 24\.4 V to 28\.8 V, and does not say what it stands.*12 V, up to 16 V/,
        toDo: /through a charger or converter/,
      },
      {
        name: 'the same beside an alternator that is set for a car',
        about: () =>
          inTruck((content) => {
            delete partIn(content, 'two-channel', 'amplifier').supply.range;
            partIn(content, 'generator', 'alternator')['set-point'] = '14.4 V';
          }),
        level: 'stop',
        subject: 'amp',
      },
      {
        name: 'a device for at most 14.3 V',
        about: () => range('9 V', '14.3 V'),
        level: 'stop',
        subject: 'dsp',
        says: /made for 9 V to 14\.3 V/,
      },
      { name: 'a device from 12.3 V', about: () => range('12.3 V', '16 V'), level: 'stop', subject: 'dsp' },
      {
        name: 'a device for 24 V in a car',
        about: () => range('18 V', '32 V'),
        level: 'stop',
        subject: 'dsp',
      },
      {
        name: 'a bank for 14.3 V',
        about: () => bank('14.3 V'),
        level: 'stop',
        subject: 'bank',
      },
      {
        name: 'a battery of 12 V in a truck',
        about: () =>
          inTruck((content) => {
            delete partIn(content, 'agm', 'battery').voltage;
          }),
        level: 'stop',
        subject: 'battery',
        path: '/fitted/battery',
        file: 'vehicle.yaml',
        says: /made for 12 V, and wagon is a 24 V system/,
      },
      {
        name: 'an alternator set to 14.4 V in a truck',
        about: () =>
          inTruck((content) => {
            partIn(content, 'generator', 'alternator')['set-point'] = '14.4 V';
          }),
        level: 'stop',
        subject: 'alternator',
        file: 'vehicle.yaml',
      },
      {
        name: 'a second battery of 12 V straight on a truck',
        about: () =>
          inTruck((content) => {
            const { voltage: _, ...small } = partIn(content, 'agm', 'battery');
            content.parts.small = small;
            content.job.devices.second = { part: 'small', in: 'boot' };
            content.job.links['second-tail'] = { from: 'second.POS', to: 'block.IN' };
          }),
        level: 'stop',
        subject: 'second',
        toDo: /through a charger or converter alone/,
      },
      {
        name: 'a relay whose coil is for 12 V in a truck',
        about: () =>
          inTruck((content) => {
            content.job.devices.relay = { part: 'relay', on: 'main' };
            content.job.links['coil-rem'] = { from: 'block.OUT2', to: 'relay.86' };
          }),
        level: 'stop',
        subject: 'relay',
      },
      {
        name: 'a charger for 12 V in a truck',
        about: () =>
          aboutContent((content) => {
            withConverter(content);
            delete partIn(content, 'charger', 'charger').input.range;
          }),
        level: 'stop',
        subject: 'charger',
      },
    ],
    quiet: [
      { name: 'parts without a word of it in a car', about: () => about() },
      { name: 'a device for exactly what the supply gives', about: () => range('12.2 V', '14.4 V') },
      { name: 'a bank for 14.4 V', about: () => bank('14.4 V') },
      { name: 'a truck with parts for 24 V', about: () => inTruck(() => {}) },
      { name: 'parts for 12 V behind a converter', about: () => aboutContent(withConverter) },
    ],
  },
  // ISO 8820-3 and -5, from memory: 32 V.
  'fuse-under-system-voltage': {
    fires: [
      {
        name: 'an alternator set above what a fuse is made for',
        about: () =>
          inTruck((content) => {
            partIn(content, 'generator', 'alternator')['set-point'] = '32.1 V';
          }),
        level: 'stop',
        subject: 'main-fuse',
        says: /made for 32 V/,
      },
      {
        name: 'a fuse for 28 V in a truck',
        about: () =>
          about({
            content: (content) => {
              truck(content);
              partIn(content, 'large-fuse', 'fuse').voltage = '28 V';
            },
            plan: (plan) => {
              fuse(plan, 'main-fuse').part = 'large-fuse';
            },
          }),
        level: 'stop',
        subject: 'main-fuse',
      },
    ],
    quiet: [
      {
        name: 'an alternator set to what a fuse is made for',
        about: () =>
          inTruck((content) => {
            partIn(content, 'generator', 'alternator')['set-point'] = '32 V';
          }),
      },
      { name: 'a car', about: () => about() },
    ],
  },
  'batteries-in-series': {
    fires: [
      {
        name: 'two of 12 V in a truck',
        about: () => aboutContent(twoInSeries),
        level: 'stop',
        subject: 'vehicle.middle',
        file: 'vehicle.yaml',
        toDo: /one battery: a part with voltage: 24 V/,
      },
    ],
    quiet: [
      { name: 'one battery for both', about: () => inTruck(() => {}) },
      {
        name: 'two side by side',
        about: () =>
          aboutContent(({ job, vehicle }) => {
            vehicle.fitted.rear = { part: 'agm', zone: 'engine-bay' };
            entry(job.links, 'feed');
          }),
      },
    ],
  },
} satisfies RuleCases;
