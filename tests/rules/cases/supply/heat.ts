import type { BuildPlan, PlanHeat } from '../../../../lib/model/plan/index.ts';
import { about, aboutPlan, entry, partIn } from '../../case.ts';
import { space } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A space whose air gets to a temperature. */
const warm = (airC: number): PlanHeat => ({
  ...{ space: 'well', spaceTitle: 'Side well', zone: 'cargo', outsideC: 50 },
  items: [{ item: 'amp', inputW: 90, outputW: 30, lossW: 60 }],
  ...{ lossW: 60, surfaceM2: 1, passesWM2K: 3.5, fanM3S: 0, openings: [] },
  ...{ wallsW: 60, fanW: 0, openingsW: 0, riseK: airC - 50, airC },
});
const setHeat = (airC: number) => (plan: BuildPlan) => {
  plan.heat = [warm(airC)];
};

export const heatCases = {
  'air-too-warm': {
    fires: [
      {
        name: 'past what the maker of the amplifier allows',
        about: () =>
          about({
            plan: setHeat(55.01),
            content: (content) => {
              partIn(content, 'two-channel', 'amplifier')['most-ambient'] = '55 C';
            },
          }),
        level: 'stop',
        subject: 'amp',
        says: /the air of well gets to 56 C.*60 W.*amp bears 55 C/,
        toDo: /m3\/h/,
      },
      {
        name: 'past the house rule, both makers silent: one finding for both devices',
        about: () => aboutPlan(setHeat(60.01)),
        level: 'caution',
        subject: 'amp',
        says: /amp and dsp bear 60 C by the house rule: their makers are silent/,
      },
      {
        name: 'a space that lies between walls under a lid: no upright openings, and what its walls count for',
        about: () =>
          about({
            plan: setHeat(60.01),
            content: (content) => {
              const sides = { left: 'wall', right: 'wall', top: 'wall', bottom: 'wall' };
              Object.assign(space(content), {
                right: 'right',
                upward: 'front',
                bounds: { ...sides, front: 'lid' },
              });
            },
          }),
        level: 'caution',
        subject: 'amp',
        toDo: /^move \d+ m3\/h through well with a fan: .* \(round vents in its lid are its way in and out: lying level they draw nothing without it\); or measure its walls, of which the one above gives off seven tenths of its area, each side half and the floor nothing, and write surface:/,
      },
      {
        name: 'a space that lies between walls at two sides alone: one opening at each other end',
        about: () =>
          about({
            plan: setHeat(60.01),
            content: (content) => {
              Object.assign(space(content), {
                right: 'right',
                upward: 'front',
                bounds: { left: 'wall', right: 'wall' },
              });
            },
          }),
        level: 'caution',
        subject: 'amp',
        toDo: /upright openings, one at each end/,
      },
      {
        name: 'a device on no board, in a zone that is warmer than the house allows',
        about: () =>
          about({
            content: ({ vehicle }) => {
              entry(vehicle.places, 'dash').zone = 'dash-top';
            },
          }),
        level: 'caution',
        subject: 'radio',
        says: /round radio gets to 85 C/,
        toDo: /cooler zone/,
      },
    ],
    quiet: [
      { name: 'at the limit of the house', about: () => aboutPlan(setHeat(60)) },
      {
        name: 'at the limit of the maker, which goes before that of the house',
        about: () =>
          about({
            plan: setHeat(70),
            content: (content) => {
              partIn(content, 'two-channel', 'amplifier')['most-ambient'] = '70 C';
              partIn(content, 'dsp', 'processor')['most-ambient'] = '75 C';
            },
          }),
      },
    ],
  },
  'sheet-too-warm': {
    fires: [
      {
        name: 'a sheet that the zone alone is too warm for',
        about: () =>
          about({
            content: (content) => {
              space(content).zone = 'roof';
              partIn(content, 'plywood', 'board-sheet').withstands = '69 C';
            },
          }),
        level: 'stop',
        subject: 'main',
        says: /plywood stands 69 C; well gets to 70 C/,
      },
      {
        name: 'a sheet that the heat of the equipment is too warm for',
        about: () =>
          about({
            plan: setHeat(60.01),
            content: (content) => {
              partIn(content, 'plywood', 'board-sheet').withstands = '60 C';
            },
          }),
        level: 'caution',
        subject: 'main',
        says: /the air of well gets to 61 C/,
      },
    ],
    quiet: [
      {
        name: 'at its limit',
        about: () =>
          about({
            plan: setHeat(60),
            content: (content) => {
              partIn(content, 'plywood', 'board-sheet').withstands = '60 C';
            },
          }),
      },
      { name: 'a sheet that stands every zone', about: () => aboutPlan(setHeat(80)) },
    ],
  },
} satisfies RuleCases;
