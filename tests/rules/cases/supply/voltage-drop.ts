import type { LossSide } from '../../../../lib/model/vocabulary.ts';
import { about, aboutPlan, byId } from '../../case.ts';
import { drop, point, setNode } from '../../changes.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A drop of 4 % of 13.8 V, lost in a conductor, a fuse and joints (V). */
const lost = (conductorV: number, fuseV: number, content: (content: Written) => void = () => {}) =>
  about({
    content,
    plan: (plan) => {
      Object.assign(drop(plan), {
        share: 0.04,
        feedDropV: 0.472,
        parts: [
          { kind: 'conductor', of: 'amp-feed', dropV: conductorV },
          { kind: 'fuse', of: 'main-fuse', dropV: fuseV },
          { kind: 'joint', of: 'main', dropV: 0.552 - conductorV - fuseV },
        ],
      });
    },
  });

/** The reel of 4 AWG, 21.2 mm2 for the 8.4 of the feed, as long as told on the shelf. */
const onShelf =
  (reel: string) =>
  ({ shop }: Written): void => {
    shop.stock = { ...shop.stock, unmarked: { reels: [reel] } };
  };

function withoutReels({ parts }: Written): void {
  for (const id of ['unmarked', 'clad']) delete parts[id];
}

/** Conductors that grew from 10 AWG for the drop of the amplifier (V). */
const grown = (lostV: number, side: LossSide, ids: readonly string[]) =>
  aboutPlan((plan) => {
    const from = { label: '10 AWG', awg: '10', areaMm2: 5.261 };
    for (const id of ids) {
      const conductor = byId(plan.power.conductors, id);
      conductor.grown = { from, with: from, item: 'amp', side, lostV, allowedV: 0.414 };
    }
  });

export const voltageDropCases = {
  // Common practice, no source: feed plus return at most 3 % at rated power.
  'drop-over-limit': {
    fires: [
      {
        name: '4 %',
        about: () => aboutPlan((plan) => Object.assign(drop(plan), { share: 0.04, feedDropV: 0.472 })),
        level: 'caution',
        subject: 'amp',
        says: /4 % of 13.8 V/,
      },
      {
        name: '3.1 %, of which other currents lift a part',
        about: () =>
          aboutPlan((plan) =>
            Object.assign(drop(plan), { share: 0.031, feedDropV: 0.3, groundDropV: 0.1, liftedV: 0.0278 }),
          ),
        level: 'caution',
        subject: 'amp',
        says: /with the 0.028 V that other currents lift on the way, 3.1 % of 13.8 V/,
      },
      {
        name: 'with what it is lost in, and that no reel is thicker: 0.14 V too much, which are 0.138 m of its 0.3 m',
        about: () => lost(0.3, 0.2, withoutReels),
        level: 'caution',
        subject: 'amp',
        says: /lost in conductors 0.3 V, fuses 0.2 V and joints 0.052 V/,
        toDo: /^larger conductors alone do not mend it: the catalogue has none that goes into their ports; make amp-feed shorter by 5 7\/16 in \(138 mm\), .*; or accept it: at rated power amp still gets 13\.2\d? V, and cuts out at 10\.?\d* V$/,
      },
      {
        // Of 0.3 V 0.138 are too much: 8.4 mm2 x 0.3 / 0.162 is 15.5 mm2; and of its 0.3 m 0.138 m.
        name: 'with the size that takes it back to the limit',
        about: () => lost(0.3, 0.2, onShelf('30 ft')),
        level: 'caution',
        subject: 'amp',
        toDo: /^run amp-feed, which loses 0.3 V, in 4 AWG \(size: 4 AWG at its link\); or make it shorter by 5 7\/16 in \(138 mm\), by another way or another place of the board; or put/,
      },
      {
        // Of 1.5 V 0.138 are too much, less than a tenth: of its 0.3 m 28 mm.
        name: 'with the length off the tape first, where little is too much',
        about: () => lost(1.5, -1, onShelf('30 ft')),
        level: 'caution',
        subject: 'amp',
        toDo: /^measure amp-feed, which loses 1.5 V, along its way, and write what the tape reads as length: at its link where that is less; or make it shorter by 1 1\/8 in \(27.6 mm\)/,
      },
      {
        name: 'with the size that is to be bought for it',
        about: () => lost(0.3, 0.2, onShelf('1 in')),
        level: 'caution',
        subject: 'amp',
        toDo: /in 4 AWG \(size: 4 AWG at its link\), which is to be bought; or make it shorter/,
      },
      {
        name: 'where more copper does not mend it',
        about: () => lost(0.27, 0.23, withoutReels),
        level: 'caution',
        subject: 'amp',
        toDo: /larger conductors alone do not mend it.*fuse main-fuse \(0.23 V\)/,
      },
      {
        // In 4 AWG of 21.2 mm2 for 8.4 the feed loses 0.08 V less of 0.13, and the ground as much: 0.138 V are too much.
        name: 'with the sizes that take it back together, where none does by itself',
        about: () =>
          about({
            content: (written) => {
              onShelf('30 ft')(written);
              const { parts, shop } = written;
              parts.earth = { kind: 'wire', title: 'Earth', size: '4 AWG', colour: 'BK', for: ['ground'] };
              shop.stock = { ...shop.stock, earth: { reels: ['30 ft'] } };
            },
            plan: (plan) => {
              Object.assign(drop(plan), {
                share: 0.04,
                feedDropV: 0.472,
                parts: [
                  { kind: 'conductor', of: 'amp-feed', dropV: 0.13 },
                  { kind: 'conductor', of: 'amp-ground', dropV: 0.12 },
                  { kind: 'fuse', of: 'main-fuse', dropV: 0.302 },
                ],
              });
            },
          }),
        level: 'caution',
        subject: 'amp',
        toDo: /^run amp-feed in 4 AWG \(size: 4 AWG at its link\) and amp-ground in 4 AWG \(size: 4 AWG at its link\); or put a battery nearer$/,
      },
    ],
    quiet: [
      { name: '3 %', about: () => aboutPlan((plan) => Object.assign(drop(plan), { share: 0.03 })) },
      {
        name: '4 %, but the shop allows 5 %',
        about: () =>
          about({
            content: ({ shop }) => {
              shop.rules = { 'drop-limit': '5 %' };
            },
            plan: (plan) => Object.assign(drop(plan), { share: 0.04 }),
          }),
      },
    ],
  },
  // Common practice, no source: what is thicker than its fuse asks is told, so that the fabricator decides.
  'grown-for-drop': {
    fires: [
      {
        name: 'two conductors of one way',
        about: () => grown(0.475, 'both', ['amp-feed', 'amp-ground']),
        level: 'note',
        subject: 'amp-feed',
        says: /^amp-feed is .* where 10 AWG carries its fuse and amp-ground is .* for the drop alone: with 10 AWG amp would lose 0.475 V on feed and ground at rated power, where 0.414 V are allowed$/,
        toDo: /write size: 10 AWG at amp-feed, and the drop stays as a caution/,
      },
      {
        name: 'one that could not be fed otherwise',
        about: () => grown(0, 'both', ['amp-feed']),
        level: 'note',
        subject: 'amp-feed',
        says: /with 10 AWG amp could not be fed$/,
      },
      {
        name: 'a ground',
        about: () => grown(0.25, 'ground', ['amp-ground']),
        level: 'note',
        subject: 'amp-ground',
        says: /would lose 0.25 V on the ground side/,
      },
    ],
    quiet: [{ name: 'none has grown for a drop', about: () => about() }],
  },
  // Common practice, no source: 0.1 V good, 0.2 V limit.
  'ground-drop': {
    fires: [
      {
        name: '0.15 V',
        about: () => aboutPlan((plan) => Object.assign(drop(plan), { groundDropV: 0.15 })),
        level: 'note',
        subject: 'amp',
      },
      {
        name: '0.25 V',
        about: () => aboutPlan((plan) => Object.assign(drop(plan), { groundDropV: 0.25 })),
        level: 'caution',
        subject: 'amp',
      },
      {
        name: '0.19 V that read so only since other currents lift 0.057 V',
        about: () =>
          aboutPlan((plan) => Object.assign(drop(plan), { groundDropV: 0.19, groundLiftedV: 0.057 })),
        level: 'caution',
        subject: 'amp',
        says: /drops 0.19 V at rated power, with the 0.057 V that other currents lift on the way, where 0.2 V is the limit/,
      },
    ],
    quiet: [
      { name: '0.1 V', about: () => aboutPlan((plan) => Object.assign(drop(plan), { groundDropV: 0.1 })) },
      {
        name: '0.1 V with what is lifted',
        about: () =>
          aboutPlan((plan) => Object.assign(drop(plan), { groundDropV: 0.06, groundLiftedV: 0.04 })),
      },
    ],
  },
  // Common practice, no source: any one joint 50 mV.
  'joint-drop': {
    fires: [
      {
        name: '60 mV, whichever way the current runs',
        about: () =>
          aboutPlan((plan) => {
            byId(point(plan, 'rated-power').elements, 'main-lug').dropV = -0.06;
          }),
        level: 'caution',
        subject: 'main-lug',
      },
    ],
    quiet: [
      {
        name: '50 mV, and more over the body, which is a path',
        about: () =>
          aboutPlan((plan) => {
            const joint = byId(point(plan, 'rated-power').elements, 'main-lug');
            joint.dropV = 0.05;
            point(plan, 'rated-power').elements.push({ ...joint, id: 'body.cargo', of: 'body', dropV: 0.08 });
          }),
      },
    ],
  },
  // Common practice, no source: alternator to battery 0.2 V.
  'charge-lead-drop': {
    fires: [
      {
        name: '0.3 V',
        about: () => aboutPlan((plan) => setNode(plan, 'rated-power', 'alternator.B+', 14.7)),
        level: 'caution',
        subject: 'alternator.B+',
        file: 'vehicle.yaml',
      },
    ],
    quiet: [
      {
        name: '0.2 V',
        about: () => aboutPlan((plan) => setNode(plan, 'rated-power', 'alternator.B+', 14.6)),
      },
    ],
  },
} satisfies RuleCases;
