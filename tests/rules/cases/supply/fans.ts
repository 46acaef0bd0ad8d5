import { about, aboutContent, entry } from '../../case.ts';
import { space } from '../../changes.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

const counted = (there?: boolean) => (content: Written) => {
  space(content).fan = { air: '40 m3/h', ...(there !== undefined && { there }) };
};

/** A fan of 60 m3/h by its maker among the parts. */
const inCatalogue = ({ parts }: Written): void => {
  parts['fan-80'] = {
    kind: 'fan',
    title: 'Fan',
    size: { width: '82 mm', depth: '32 mm', height: '86 mm' },
    mass: '120 g',
    airflow: '90 m3/h',
    draw: '150 mA',
    terminals: {
      '+': { role: 'turn-on-in', panel: 'left', at: '10 mm', joint: 'blade-tab' },
      '-': { role: 'supply-negative', panel: 'left', at: '20 mm', joint: 'blade-tab' },
    },
  };
};

/** A fan in the boot, its ends linked. */
const fitted =
  (cools?: string) =>
  (content: Written): void => {
    inCatalogue(content);
    content.job.devices.fan = { part: 'fan-80', in: 'boot', ...(cools !== undefined && { cools }) };
    content.job.links['fan-rem'] = { from: 'dsp.REM-OUT', to: 'fan.+' };
    content.job.links['fan-ground'] = { from: 'fan.-', to: 'body.cargo' };
  };

/** A second space of the vehicle, without a board. */
const otherSpace = (content: Written): void => {
  content.vehicle.spaces.other = structuredClone(entry(content.vehicle.spaces, 'well'));
};

export const fanCases = {
  'fan-not-fitted': {
    fires: [
      {
        name: 'a fan that nothing says to be there, no part of the catalogue is one',
        about: () => aboutContent(counted()),
        level: 'stop',
        subject: 'well',
        file: 'vehicle.yaml',
        says: /the air of well is counted with a fan of 40 m3\/h/,
        toDo: /of the kind fan with an airflow: of 80 m3\/h or more.*write there: true/,
      },
      {
        name: 'the same with a fan in the catalogue: the line to write',
        about: () =>
          aboutContent((content) => {
            counted(false)(content);
            inCatalogue(content);
          }),
        level: 'stop',
        subject: 'well',
        file: 'vehicle.yaml',
        says: /its supply, its fuse and its steps are not planned/,
        toDo: /write fan: \{ part: fan-80, on: main \} under devices:/,
      },
    ],
    quiet: [
      { name: 'one that the vehicle has', about: () => aboutContent(counted(true)) },
      {
        name: 'one that the job fits',
        about: () =>
          aboutContent((content) => {
            counted()(content);
            fitted()(content);
          }),
      },
      {
        name: 'none that moves anything',
        about: () =>
          aboutContent((content) => {
            space(content).fan = { air: '0 m3/h' };
          }),
      },
    ],
  },
  'fan-cools-nothing': {
    fires: [
      {
        name: 'a space without a board',
        about: () =>
          about({
            content: (content) => {
              otherSpace(content);
              fitted('other')(content);
            },
          }),
        level: 'caution',
        subject: 'fan',
        says: /moves the air of other, where the job has no board/,
        toDo: /cools: with the space of a board: well/,
      },
    ],
    quiet: [
      { name: 'the only space with a board', about: () => aboutContent(fitted()) },
      { name: 'the one that it names', about: () => aboutContent(fitted('well')) },
    ],
  },
} satisfies RuleCases;
