import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { about, aboutContent, aboutPlan, byId, entry, partIn } from '../case.ts';
import { sized } from '../plan.ts';
import type { RuleCases } from '../rule-case.ts';

const fuse = (plan: BuildPlan, id: string) => byId(plan.power.fuses, id);
const conductor = (plan: BuildPlan, id: string) => byId(plan.power.conductors, id);
const wire = (plan: BuildPlan, id: string) => byId(plan.wires, id);
const inch = 0.0254;

/** A second battery of the job on the board, joined to the distribution by `second`. */
const secondBattery = (fused: boolean, plan: (plan: BuildPlan) => void = () => {}) =>
  about({
    content: ({ job }) => {
      job.devices.second = { part: 'agm', in: 'boot' };
      job.links['second-ground'] = { from: 'second.NEG', to: 'body.cargo' };
      if (fused) {
        job.devices['second-fuse'] = { part: 'holder', in: 'boot' };
        job.links.second = { from: 'second.POS', to: 'second-fuse.IN' };
        job.links.link = { from: 'second-fuse.OUT', to: 'block.IN' };
      } else job.links.second = { from: 'second.POS', to: 'block.IN' };
    },
    plan: (made) => {
      for (const id of fused ? ['link'] : []) fuse(made, 'main-fuse').protects.push(id);
      plan(made);
    },
  });

/** The distance of the main fuse from the battery, in inches, with or without loom. */
const mainFuseAt = (distanceIn: number, covering: readonly string[] = []) =>
  aboutPlan((plan) => {
    const feed = wire(plan, 'feed');
    feed.lengthM = distanceIn * inch;
    feed.covering = [...covering];
    fuse(plan, 'main-fuse').distanceM = distanceIn * inch;
  });

export const fuseCases: RuleCases = {
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
  // 33 CFR 183.455: 7 in along the conductor, 40 in if sheathed all the way; 18 in in loom is common practice.
  'fuse-distance': {
    fires: [
      {
        name: '12 in, bare',
        about: () => mainFuseAt(12),
        level: 'caution',
        subject: 'main-fuse',
        says: /12 in \(305 mm\)/,
      },
      { name: '20 in, bare', about: () => mainFuseAt(20), level: 'stop', subject: 'main-fuse' },
      {
        name: '20 in, in tape alone',
        about: () => mainFuseAt(20, ['tape']),
        level: 'stop',
        subject: 'main-fuse',
      },
      {
        name: '30 in, in loom',
        about: () => mainFuseAt(30, ['loom']),
        level: 'caution',
        subject: 'main-fuse',
      },
      { name: '41 in, in loom', about: () => mainFuseAt(41, ['loom']), level: 'stop', subject: 'main-fuse' },
      {
        name: 'a link between two batteries with a fuse at one end alone',
        about: () =>
          secondBattery(false, (plan) => {
            wire(plan, 'main').lengthM = 4;
          }),
        level: 'stop',
        subject: 'main-fuse',
        says: /from second.POS/,
      },
      {
        name: 'a distance that the plan does not know',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'feed').lengthM = 2;
            fuse(plan, 'main-fuse').distanceM = null;
            fuse(plan, 'main-fuse').source = null;
          }),
        level: 'stop',
        subject: 'main-fuse',
      },
    ],
    quiet: [
      { name: '7 in, bare', about: () => mainFuseAt(7) },
      { name: '18 in, in loom', about: () => mainFuseAt(18, ['loom']) },
    ],
  },
  // 33 CFR 183.425, Table 5; 100 % of it by the trade's own rule, where 33 CFR 183.455 would allow 150 %.
  'fuse-over-conductor': {
    fires: [
      {
        name: 'one ampere over',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ratingA = 70;
            conductor(plan, 'amp-feed').ampacityA = 69;
          }),
        level: 'stop',
        subject: 'block.OUT1',
        says: /within the 150 % yardstick/,
      },
      {
        name: 'far past the yardstick, named by the conductor alone',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'dsp-feed').fuses = ['block.OUT2'];
            fuse(plan, 'block.OUT2').protects = [];
            fuse(plan, 'block.OUT2').ratingA = 60;
          }),
        level: 'stop',
        subject: 'block.OUT2',
        says: /past the 150 % yardstick/,
      },
      {
        name: 'a weakest conductor that the plan does not list',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(fuse(plan, 'block.OUT3'), { protects: ['elsewhere'], leastAmpacityA: 7.5 });
          }),
        level: 'stop',
        subject: 'block.OUT3',
      },
    ],
    quiet: [
      {
        name: 'the fuse is just what the conductor carries',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-feed').ampacityA = 60;
            conductor(plan, 'amp-feed').cautionA = 60;
          }),
      },
      {
        name: 'a main fuse above what a branch behind its own fuse carries',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'dsp-feed').fuses = ['block.OUT2', 'main-fuse'];
          }),
      },
    ],
  },
  // 33 CFR 183.425, Table 5.
  'conductor-under-need': {
    fires: [
      {
        name: 'a ground that carries less than the fuse of its feed',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-ground').neededA = 80;
          }),
        level: 'stop',
        subject: 'amp-ground',
      },
    ],
    quiet: [
      {
        name: 'a ground that carries just that',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-ground').neededA = 68;
          }),
      },
    ],
  },
  // Common practice, no source: 85 C in the engine bay, 0.8 under loom; bundles from memory.
  'fuse-over-warm-conductor': {
    fires: [
      {
        name: 'enough by the published figure, too little in the heat',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').cautionA = 79;
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
    ],
    quiet: [
      {
        name: 'enough in the heat too',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').cautionA = 80;
          }),
      },
    ],
  },
  // The limit itself comes with the plan, with its citation.
  'conductor-past-limit': {
    fires: [
      {
        name: 'a drop over its limit',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').limits = [
              { what: 'drop', value: 0.5, limit: 0.414, unit: 'V', level: 'caution', citation: 'the shop' },
            ];
          }),
        level: 'caution',
        subject: 'main',
      },
      {
        name: 'a limit that stops',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').limits = [
              { what: 'drop', value: 0.5, limit: 0.4, unit: 'V', level: 'stop', citation: 'the shop' },
            ];
          }),
        level: 'stop',
        subject: 'main',
      },
    ],
    quiet: [
      {
        name: 'a drop at its limit, an ampacity that fuse rules judge',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').limits = [
              { what: 'drop', value: 0.414, limit: 0.414, unit: 'V', level: 'caution', citation: 'the shop' },
              { what: 'ampacity', value: 80, limit: 70, unit: 'A', level: 'caution', citation: 'Table 5' },
            ];
          }),
      },
    ],
  },
  // Common practice, no source.
  'fuse-without-rating': {
    fires: [
      {
        name: 'no rating',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT2').ratingA = null;
          }),
        level: 'stop',
        subject: 'block.OUT2',
        path: '/devices/block/fuses/OUT2',
      },
      {
        name: 'a rating of nothing, with what would be lawful',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(fuse(plan, 'block.OUT2'), {
              ratingA: 0,
              alternatives: [
                {
                  form: 'mini-blade',
                  ratingA: 5,
                  part: 'x',
                  stockQuantity: 3,
                  parts: ['holder'],
                  areaM2: 0,
                  note: '',
                },
              ],
            });
          }),
        level: 'stop',
        subject: 'block.OUT2',
      },
    ],
    quiet: [{ name: 'every fuse has one', about: () => about() }],
  },
  // The part's own data: the fuse that its maker states is a ceiling.
  'fuse-over-ceiling': {
    fires: [
      {
        name: 'a larger fuse than the maker of the amplifier allows',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ceilingA = 50;
          }),
        level: 'stop',
        subject: 'block.OUT1',
      },
    ],
    quiet: [{ name: 'the fuse is the ceiling', about: () => about() }],
  },
  // ISO 8820-3: standard blades are made for 1 to 40 A, maxi blades for 20 to 80 A.
  'fuse-not-made': {
    fires: [
      {
        name: 'a standard blade of 12 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT3').ratingA = 12;
          }),
        level: 'stop',
        subject: 'block.OUT3',
      },
    ],
    quiet: [
      { name: 'made ratings', about: () => about() },
      {
        name: "a rating that is not in the table, but in the fuse's own part",
        about: () =>
          about({
            content: ({ parts }) => {
              parts['some-fuse'] = { kind: 'fuse', title: 'Fuse', form: 'standard-blade', rating: '6 A' };
            },
            plan: (plan) => {
              fuse(plan, 'block.OUT3').ratingA = 6;
            },
          }),
      },
    ],
  },
  // The part's own data.
  'fuse-over-holder': {
    fires: [
      {
        name: 'a 300 A fuse in a holder for 250 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 300;
          }),
        level: 'stop',
        subject: 'main-fuse',
      },
      {
        name: 'a way of a distribution part with a limit of its own',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').holderA = 50;
          }),
        level: 'stop',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      {
        name: 'a 250 A fuse in a holder for 250 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 250;
          }),
      },
    ],
  },
  // The shop's own stock.
  'fuse-not-in-stock': {
    fires: [
      {
        name: 'three fuses needed, two there',
        about: () =>
          aboutPlan((plan) => {
            for (const { id } of plan.power.fuses) if (id !== 'main-fuse') fuse(plan, id).stockQuantity = 2;
            fuse(plan, 'main-fuse').part = 'other-fuse';
          }),
        level: 'caution',
        subject: 'block.OUT1',
        says: /needs 3/,
      },
      {
        name: 'no part at all',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(fuse(plan, 'main-fuse'), { part: null, stockQuantity: 0 });
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
    ],
    quiet: [
      {
        name: 'four needed, four there',
        about: () =>
          aboutPlan((plan) => {
            for (const { id } of plan.power.fuses) fuse(plan, id).stockQuantity = 4;
          }),
      },
    ],
  },
  // Common practice, no source: a continuous load is at most 75 to 80 % of the fuse.
  'fuse-under-load': {
    fires: [
      {
        name: 'above 80 %, and a larger fuse may be fitted',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratedA = 65;
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
      {
        name: 'above 80 % at the ceiling of the device',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ratedA = 50;
          }),
        level: 'note',
        subject: 'block.OUT1',
      },
      {
        name: 'more than the fuse itself, ceiling or not',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'block.OUT1').ratedA = 61;
          }),
        level: 'caution',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      {
        name: 'just 80 %',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratedA = 64;
          }),
      },
    ],
  },
  // Common practice, no source.
  'fuse-order': {
    fires: [
      {
        name: 'a branch fuse above the main fuse',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 50;
          }),
        level: 'caution',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      {
        name: 'a branch fuse as large as the main fuse',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 60;
          }),
      },
    ],
  },
  // Common practice, no source.
  'fuses-over-feeder': {
    fires: [
      {
        name: '60, 5 and 10 A behind 70 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 70;
          }),
        level: 'note',
        subject: 'main-fuse',
        says: /75 A/,
      },
    ],
    quiet: [{ name: '75 A behind 80 A', about: () => about() }],
  },
  // The part's own data.
  'distribution-over-current': {
    fires: [
      {
        name: 'more current than the part is made for',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'fused', 'distribution').current = '40 A';
          }),
        level: 'stop',
        subject: 'block',
      },
      {
        name: 'a main fuse that lets more through than the part is made for',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'fused', 'distribution').current = '60 A';
          }),
        level: 'caution',
        subject: 'block',
      },
    ],
    quiet: [
      {
        name: 'a part made for what the main fuse lets through',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'fused', 'distribution').current = '80 A';
          }),
      },
    ],
  },
  // ABYC E-11, from memory: 1.5 kA up to 650 A of cold cranking, 3 kA up to 1,100 A, 5 kA above.
  'fuse-interrupting': {
    fires: [
      {
        name: 'a blade fuse of 1 kA at a battery of 600 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').interruptA = 1000;
          }),
        level: 'caution',
        subject: 'main-fuse',
        says: /1500 A/,
      },
      {
        name: 'a rating that is not known',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').interruptA = null;
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
      {
        name: '2 kA at a battery of 1,000 A',
        about: () =>
          about({
            content: (content) => {
              partIn(content, 'agm', 'battery')['cold-cranking'] = '1000 A';
            },
            plan: (plan) => {
              fuse(plan, 'main-fuse').interruptA = 2000;
            },
          }),
        level: 'caution',
        subject: 'main-fuse',
        says: /3000 A/,
      },
    ],
    quiet: [
      {
        name: '1.5 kA at a battery of 600 A, blades of 1 kA behind it',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').interruptA = 1500;
          }),
      },
    ],
  },
  // Common practice, no source: ambient 85 C in the engine bay, unmarked insulation counts as 60 C.
  'insulation-at-ambient': {
    fires: [
      {
        name: '80 C in the engine bay',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').insulationC = 80;
          }),
        level: 'stop',
        subject: 'main',
        says: /85 C/,
      },
      {
        name: '85 C in the engine bay: at the ambient',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'main').insulationC = 85;
          }),
        level: 'stop',
        subject: 'main',
      },
      {
        name: 'a conductor that carries nothing, wherever it runs',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'dsp-ground').ampacityA = 0;
          }),
        level: 'stop',
        subject: 'dsp-ground',
      },
      {
        name: 'an unmarked turn-on lead in the engine bay, at any current',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(wire(plan, 'radio-rem'), {
              part: 'unmarked',
              zones: [{ zone: 'engine-bay', lengthM: 1, edge: false }],
            });
          }),
        level: 'stop',
        subject: 'radio-rem',
      },
    ],
    quiet: [{ name: '105 C in the engine bay', about: () => about() }],
  },
  // Common practice, no source.
  'near-exhaust': {
    fires: [
      {
        name: 'a run past the exhaust',
        about: () =>
          aboutContent(({ vehicle }) => {
            entry(vehicle.routes, 'left-sill').passes.push({ zone: 'near-exhaust', length: '300 mm' });
          }),
        level: 'stop',
        subject: 'main',
      },
    ],
    quiet: [{ name: 'a run through the engine bay', about: () => about() }],
  },
  // The part's own data against an ambient of 85 C (common practice, no source).
  'covering-too-hot': {
    fires: [
      {
        name: 'loom for 80 C in the engine bay',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'loom', 'covering').withstands = '80 C';
          }),
        level: 'caution',
        subject: 'left',
      },
    ],
    quiet: [
      {
        name: 'loom for 85 C in the engine bay',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'loom', 'covering').withstands = '85 C';
          }),
      },
    ],
  },
  // Common practice, no source: unmarked cable counts as 60 C.
  'insulation-unmarked': {
    fires: [
      {
        name: 'a feed from an unmarked reel',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').part = 'unmarked';
          }),
        level: 'note',
        subject: 'unmarked',
        says: /60 C/,
      },
    ],
    quiet: [
      {
        name: 'a feed from a marked reel',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').part = 'clad';
          }),
      },
    ],
  },
  // The part's own data.
  'port-too-small': {
    fires: [
      {
        name: '2 AWG into a port for 4 AWG',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').size = sized('2');
          }),
        level: 'stop',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      {
        name: '4 AWG written by its area into a port for 4 AWG',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').size = { label: '21.15 mm2', awg: null, areaMm2: 21.15 };
            wire(plan, 'amp-ground').size = sized('4');
          }),
      },
      {
        name: '2 AWG with a reducer at both ends',
        about: () =>
          aboutPlan((plan) => {
            for (const id of ['amp-feed', 'amp-ground']) {
              wire(plan, id).size = sized('2');
              for (const end of wire(plan, id).ends) end.part = 'reducer';
            }
          }),
      },
    ],
  },
  // The part's own data.
  'port-too-large': {
    fires: [
      {
        name: '16 AWG into a port for 12 AWG and larger',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').size = sized('16');
          }),
        level: 'caution',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      {
        name: '10 AWG into a port for 10 AWG and larger',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').size = sized('10');
          }),
      },
    ],
  },
  // The part's own data: what its maker allows in a port; twin ferrules end at 2 x 16 mm2 (common practice).
  'port-shared': {
    fires: [
      {
        name: 'two conductors in a port for one',
        about: () =>
          aboutContent(({ job }) => {
            job.links['radio-ground'] = { from: 'radio.GND', to: 'ground.G2' };
          }),
        level: 'stop',
        subject: 'ground.G2',
      },
      {
        name: 'two of 4 AWG in a port that allows two',
        about: () =>
          about({
            content: (content) => {
              content.job.links['radio-ground'] = { from: 'radio.GND', to: 'ground.G1' };
              entry(partIn(content, 'bar', 'distribution').terminals, 'G1').conductors = 2;
            },
            plan: (plan) => {
              wire(plan, 'amp-ground').size = sized('4');
              wire(plan, 'radio-ground').size = sized('4');
            },
          }),
        level: 'caution',
        subject: 'ground.G1',
      },
    ],
    quiet: [
      {
        name: 'two of 8 AWG in a port that allows two',
        about: () =>
          aboutContent((content) => {
            content.job.links['radio-ground'] = { from: 'radio.GND', to: 'ground.G1' };
            entry(partIn(content, 'bar', 'distribution').terminals, 'G1').conductors = 2;
          }),
      },
    ],
  },
  // The part's own data.
  'port-ferrule': {
    fires: [
      {
        name: 'bare strands where the maker asks for a ferrule',
        about: () =>
          about({
            content: (content) => {
              entry(partIn(content, 'two-channel', 'amplifier').terminals, 'B+').ferrule = 'required';
            },
            plan: (plan) => {
              wire(plan, 'amp-feed').ends[1].prep = 'bare';
            },
          }),
        level: 'caution',
        subject: 'amp.B+',
      },
      {
        name: 'a ferrule where the maker refuses one',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'two-channel', 'amplifier').terminals, 'B+').ferrule = 'no';
          }),
        level: 'caution',
        subject: 'amp.B+',
      },
    ],
    quiet: [
      {
        name: 'a ferrule where the maker asks for one',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'two-channel', 'amplifier').terminals, 'B+').ferrule = 'required';
          }),
      },
    ],
  },
  // ABYC E-11, from memory: at most four on a stud.
  'lugs-on-stud': {
    fires: [
      {
        name: 'five grounds on one bolt',
        about: () =>
          aboutContent(({ job }) => {
            for (const n of [1, 2, 3, 4]) {
              job.devices[`bar-${n}`] = { part: 'bar', in: 'boot' };
              job.links[`ground-${n}`] = { from: `bar-${n}.G0`, to: 'body.cargo' };
            }
          }),
        level: 'caution',
        subject: 'body.cargo',
        file: 'vehicle.yaml',
      },
    ],
    quiet: [
      {
        name: 'four grounds on one bolt',
        about: () =>
          aboutContent(({ job }) => {
            for (const n of [1, 2, 3]) {
              job.devices[`bar-${n}`] = { part: 'bar', in: 'boot' };
              job.links[`ground-${n}`] = { from: `bar-${n}.G0`, to: 'body.cargo' };
            }
          }),
      },
    ],
  },
  // The part's own data.
  'lug-off-stud': {
    fires: [
      {
        name: 'an M8 lug on an M6 bolt',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'radio-ground').ends[1].part = 'lug';
          }),
        level: 'caution',
        subject: 'body.dash',
      },
    ],
    quiet: [
      {
        name: 'an M8 lug on an M8 bolt',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'board-ground').ends[1].part = 'lug';
          }),
      },
    ],
  },
  // Common practice, no source: the next size up, never the nearest.
  'end-off-size': {
    fires: [
      {
        name: 'a lug for 6 to 4 AWG on 16 AWG',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'radio-ground').ends[1].part = 'lug';
          }),
        level: 'caution',
        subject: 'body.dash',
      },
    ],
    quiet: [
      {
        name: 'a lug for 6 to 4 AWG on 4 AWG',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'board-ground').ends[1].part = 'lug';
          }),
      },
    ],
  },
  // Common practice, no source: in a set screw only with a ferrule, tightened again.
  'copper-clad-in-set-screw': {
    fires: [
      {
        name: 'bare under a set screw',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-feed').material = 'copper-clad-aluminium';
            wire(plan, 'amp-feed').ends[1].prep = 'bare';
          }),
        level: 'stop',
        subject: 'amp.B+',
      },
      {
        name: 'with a ferrule: to be tightened again',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-feed').material = 'copper-clad-aluminium';
          }),
        level: 'note',
        subject: 'block.OUT1',
        says: /settles/,
      },
    ],
    quiet: [
      {
        name: 'on a stud',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'feed').material = 'copper-clad-aluminium';
          }),
      },
    ],
  },
};
