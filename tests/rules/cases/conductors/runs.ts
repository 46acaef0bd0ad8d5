import { about, aboutContent, aboutPlan, entry, one, partIn } from '../../case.ts';
import { run } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The wire of the run of 4 m with a length that was written. */
const written = (length: string) =>
  aboutContent(({ job }) => {
    entry(job.links, 'main').length = length;
  });

/** The signal in a run of 3 m, in a lead that is made so long. */
const lead = (made: string) =>
  aboutContent((content) => {
    partIn(content, 'nine-wire', 'cable')['made-length'] = made;
    content.job.cables = { phono: { part: 'nine-wire' } };
    Object.assign(entry(content.job.links, 'radio-signal'), { cable: 'phono', conductors: ['white'] });
  });

/** A wire over the edge of the sill, in a hole of a size or none, for which the catalogue has no grommet. */
const atEdge = (wire: string, holeM: number | null) =>
  about({
    content: ({ vehicle }) => {
      const pass = one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill');
      pass.edge = true;
      if (holeM !== null) pass['through-hole'] = `${holeM * 1000} mm`;
    },
    plan: (plan) => {
      run(plan).wires = [wire];
      run(plan).grommets = [{ zone: 'sill', holeM, part: null }];
    },
  });

/** A hole without a sharp edge. */
const throughSill = (through: string) =>
  aboutContent(({ vehicle }) => {
    one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill')['through-hole'] = through;
  });

/** The same, with a sleeve in the place of the loom. */
const sleevedThrough = (through: string) =>
  aboutContent((content) => {
    partIn(content, 'loom', 'covering').form = 'braided-sleeve';
    one(entry(content.vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill')['through-hole'] =
      through;
  });

/** The same with the hole measured, and a grommet of 32 mm with a bore of 28 mm in the catalogue. */
const atWideHole = (through: string) =>
  about({
    content: ({ vehicle, parts }) => {
      const pass = one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill');
      Object.assign(pass, { edge: true, 'through-hole': through });
      parts.wide = { kind: 'grommet', title: 'Grommet', hole: '32 mm', bore: '28 mm', panel: '1.5 mm' };
    },
    plan: (plan) => {
      run(plan).wires = ['main'];
      run(plan).grommets = [{ zone: 'sill', holeM: 0.02, part: null }];
    },
  });

/** The vehicle's own grommet at the sill, as the plan judges its bore, and a grommet of 32 mm in the catalogue. */
const ownGrommet = (bore: `${number} mm` | null) =>
  about({
    content: ({ vehicle, parts }) => {
      const pass = one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill');
      Object.assign(pass, { edge: true, 'own-grommet': true, ...(bore && { 'through-hole': bore }) });
      parts.wide = { kind: 'grommet', title: 'Grommet', hole: '32 mm', bore: '28 mm', panel: '1.5 mm' };
    },
    plan: (plan) => {
      const holeM = bore === null ? null : Number.parseFloat(bore) / 1000;
      run(plan).wires = ['main'];
      run(plan).grommets = [
        { zone: 'sill', holeM, part: null, ...(holeM !== null && holeM >= 0.027 && { own: true }) },
      ];
    },
  });

/** The left sill with a door behind it, and what the stretch at its hinge tells beside zone and length. */
const intoDoor = (told: Record<string, unknown>, before: Record<string, unknown> = {}) =>
  aboutContent(({ vehicle }) => {
    const { passes } = entry(vehicle.routes, 'left-sill');
    Object.assign(
      one(passes, ({ zone }) => zone === 'sill'),
      before,
    );
    passes.push({ zone: 'door', length: '500 mm', ...told });
  });

/** The left sill up to a door in which its first device stands, and what the last stretch tells beside zone and length. */
const deviceInDoor = (told: Record<string, unknown>) =>
  aboutContent(({ vehicle }) => {
    entry(vehicle.places, 'bay').zone = 'door';
    Object.assign(
      one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill'),
      told,
    );
  });

export const runsCases = {
  // A wire through 1 m of engine bay and 3 m of sill is no shorter than 4 m.
  'length-under-run': {
    fires: [
      {
        name: 'a lead of 17 in for one of 17 ft',
        about: () => lead('17 in'),
        level: 'stop',
        subject: 'radio-signal',
        path: '/links/radio-signal',
        says: /the lead phono of radio-signal is made 17 in/,
      },
      {
        name: '3.99 m in a run of 4 m',
        about: () => written('3.99 m'),
        level: 'stop',
        subject: 'main',
        path: '/links/main/length',
        says: /main is written as 3.99 m \(157 1\/16 in\) long, and its way through the run left alone is 4000 mm \(157 1\/2 in\)/,
      },
    ],
    quiet: [
      { name: 'a lead that is made 4 m long', about: () => lead('4 m') },
      { name: '4 m in a run of 4 m', about: () => written('4 m') },
      { name: 'a length that is measured', about: () => about() },
    ],
  },
  // Common practice, no source.
  'edge-without-grommet': {
    fires: [
      {
        name: 'power through a hole in sheet metal that no grommet fits',
        about: () => atEdge('main', 0.02),
        level: 'stop',
        subject: 'left',
        path: '/routes/left-sill/passes/1/through-hole',
        file: 'vehicle.yaml',
        says: /main would chafe on sheet metal/,
        toDo: /add a grommet for a hole of .*20 mm.* with a bore of .* or more/,
      },
      {
        name: 'the same, and the catalogue has a grommet for a wider hole',
        about: () => atWideHole('20 mm'),
        level: 'stop',
        subject: 'left',
        path: '/routes/left-sill/passes/1/through-hole',
        file: 'vehicle.yaml',
        toDo: /open the hole of 20 mm .* to 32 mm for wide \(0 in stock\), .* write through-hole: 32 mm there/,
      },
      {
        name: "the vehicle's own grommet, whose bore the loom does not go through",
        about: () => ownGrommet('26.9 mm'),
        level: 'stop',
        subject: 'left',
        path: '/routes/left-sill/passes/1/through-hole',
        file: 'vehicle.yaml',
        says: /none of the vehicle and the catalogue fits its bundle of 27 mm/,
        toDo: /take the vehicle's own grommet out, open the hole of 26\.9 mm .* to 32 mm for wide .*write through-hole: 32 mm and own-grommet: false there/,
      },
      {
        name: "the vehicle's own grommet, whose bore nobody measured",
        about: () => ownGrommet(null),
        level: 'caution',
        subject: 'left',
        says: /left goes through the vehicle's own grommet at the sill, whose bore is not measured/,
        toDo: /measure the bore of the vehicle's own grommet/,
      },
      {
        name: 'signal through the same',
        about: () => atEdge('radio-signal', 0.02),
        level: 'caution',
        subject: 'left',
        file: 'vehicle.yaml',
      },
      {
        name: 'power over an edge that is no hole',
        about: () => atEdge('main', null),
        level: 'caution',
        subject: 'left',
        toDo: /edge trim/,
      },
      {
        name: 'an edge that the plan does not tell of',
        about: () =>
          aboutContent(({ vehicle }) => {
            one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill').edge = true;
          }),
        level: 'caution',
        subject: 'left',
      },
    ],
    quiet: [
      // By hand: loom with a bore of 25 mm, and 2 mm for both of its walls.
      {
        name: "the vehicle's own grommet with a bore of 27 mm, for a bundle of 12 mm in loom of 25 mm",
        about: () => ownGrommet('27 mm'),
      },
      {
        name: 'an edge with a grommet',
        about: () =>
          about({
            content: ({ vehicle }) => {
              one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill').edge = true;
            },
            plan: (plan) => {
              run(plan).grommets = [{ zone: 'sill', holeM: 0.02, part: 'grommet-12' }];
            },
          }),
      },
    ],
  },
  // Common practice, no source.
  'door-without-sleeve': {
    fires: [
      {
        name: 'a way into a door of which no sleeve is told',
        about: () => intoDoor({}),
        level: 'caution',
        subject: 'left',
        path: '/routes/left-sill/passes/2',
        file: 'vehicle.yaml',
        says: /through the hinge of a door where left-sill comes to its stretch 3/,
        toDo: /own-grommet: true/,
      },
      {
        name: 'a way that ends before the door in which a device stands',
        about: () => deviceInDoor({}),
        level: 'caution',
        subject: 'left',
        path: '/routes/left-sill/passes/1',
        file: 'vehicle.yaml',
        says: /ends in the door \S+, of which left-sill has no stretch/,
        toDo: /own-grommet: true/,
      },
    ],
    quiet: [
      {
        name: 'a way whose last stretch before the door begins with a hole',
        about: () => deviceInDoor({ edge: true, 'through-hole': '20 mm' }),
      },
      {
        name: 'a door with its own sleeve, 40 mm wide',
        about: () => intoDoor({ 'own-grommet': true, 'through-hole': '40 mm' }),
      },
      {
        name: 'a sleeve that is told at the stretch before the door',
        about: () => intoDoor({}, { 'own-grommet': true, 'through-hole': '40 mm' }),
      },
      { name: 'a way that goes into no door', about: () => about() },
    ],
  },
  // Geometry: a bundle does not go through a hole that is smaller.
  'bundle-over-hole': {
    fires: [
      {
        name: '12 mm in loom with a bore of 25 mm and walls of 2 mm, through 26.9 mm',
        about: () => throughSill('26.9 mm'),
        level: 'caution',
        subject: 'left',
        says: /about 27 mm .* thick with its covering/,
        toDo: /^open the hole of 26\.9 mm .* to 1 1\/8 in or more .* write through-hole: 1 1\/8 in there/,
      },
      {
        name: '12 mm in sleeve that draws tight on it, with walls of 2 mm, through 13.9 mm',
        about: () => sleevedThrough('13.9 mm'),
        level: 'caution',
        subject: 'left',
        says: /about 14 mm .* thick with its covering/,
      },
      {
        name: "the same through the vehicle's own grommet",
        about: () => ownGrommet('26.9 mm'),
        level: 'caution',
        subject: 'left',
        says: /the vehicle's own grommet into sill/,
      },
    ],
    quiet: [
      { name: 'the same through 27 mm', about: () => throughSill('27 mm') },
      { name: '12 mm in sleeve that draws tight on it, through 14 mm', about: () => sleevedThrough('14 mm') },
    ],
  },
  // Geometry: the same for the bore of a covering.
  'bundle-over-covering': {
    fires: [
      {
        name: '26 mm in a bore of 25 mm',
        about: () =>
          aboutPlan((plan) => {
            run(plan).bundleM = 0.026;
          }),
        level: 'caution',
        subject: 'left',
      },
    ],
    quiet: [
      {
        name: '25 mm in a bore of 25 mm',
        about: () =>
          aboutPlan((plan) => {
            run(plan).bundleM = 0.025;
          }),
      },
    ],
  },
} satisfies RuleCases;
