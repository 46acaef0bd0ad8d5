import { about, aboutContent, entry } from '../../case.ts';
import { fanInCatalogue, fittedFan, space } from '../../changes.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

const counted = (there?: boolean) => (content: Written) => {
  space(content).fan = { air: '40 m3/h', ...(there !== undefined && { there }) };
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
            fanInCatalogue(content);
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
            fittedFan()(content);
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
              fittedFan('other')(content);
            },
          }),
        level: 'caution',
        subject: 'fan',
        says: /moves the air of other, where the job has no board/,
        toDo: /cools: with the space of a board: well/,
      },
    ],
    quiet: [
      { name: 'the only space with a board', about: () => aboutContent(fittedFan()) },
      { name: 'the one that it names', about: () => aboutContent(fittedFan('well')) },
    ],
  },
} satisfies RuleCases;
