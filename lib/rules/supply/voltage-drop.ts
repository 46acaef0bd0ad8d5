import { terminalId } from '../../model/content/resolved-job.ts';
import type { NetworkElement } from '../../model/plan/index.ts';
import { groundLossV } from '../../plan/power/known-drops.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceSpot, wireSpot } from '../look-up.ts';
import { playedPoints, ratedDrops, ratedPoint, voltageAt, voltageOver } from '../operating-point.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { ampsDrawn, percent, volts, voltsLost } from '../words.ts';
import { dropRemedy, partsText } from './drop-remedy.ts';
import { grownForDrop } from './grown-for-drop.ts';

function spotOf(about: Case, { of }: NetworkElement): Spot {
  if (about.plan.wires.some(({ id }) => id === of)) return wireSpot(about, of);
  return deviceSpot(about.job, of);
}

/** What is added to a drop since it is not relied on. */
function liftedText(liftedV: number): string {
  return liftedV >= 0.0005 ? `, with the ${voltsLost(liftedV)} that other currents lift on the way` : '';
}

const feedDrop: Rule = {
  id: 'drop-over-limit',
  judge(about) {
    const { value: limit, from } = houseRule(about.job, 'drop-limit');
    return ratedDrops(about).flatMap((drop): Verdict<'drop-over-limit'>[] => {
      const { item, source, share, feedDropV, groundDropV, liftedV = 0, parts = [] } = drop;
      if (share <= limit + 1e-9) return [];
      // The voltage that the plan took the share of: lower where charging varies.
      const lostV = feedDropV + groundDropV + liftedV;
      const sizingV = lostV / share;
      return [
        {
          level: 'caution',
          of: [item, source],
          message: `at rated power ${voltsLost(feedDropV)} are lost in the feed of ${item} and ${voltsLost(groundDropV)} in its ground${liftedText(liftedV)}, ${percent(share)} of ${volts(sizingV)}; ${percent(limit)} is the limit${partsText(parts)}`,
          value: lostV,
          limit: limit * sizingV,
          unit: 'V',
          ...dropRemedy(about, parts, { item, excessV: lostV - limit * sizingV, getsV: sizingV - lostV }),
          ...from,
          ...deviceSpot(about.job, item),
        },
      ];
    });
  },
};

const groundDrop: Rule = {
  id: 'ground-drop',
  judge(about) {
    const most = houseRule(about.job, 'ground-drop-limit');
    const good = houseRule(about.job, 'ground-drop-good');
    return ratedDrops(about).flatMap((drop): Verdict<'ground-drop'>[] => {
      const { item, groundDropV, groundLiftedV = 0 } = drop;
      const lostV = groundLossV(drop);
      if (lostV <= good.value + 1e-9) return [];
      const over = lostV > most.value + 1e-9;
      const { value: limit, from } = over ? most : good;
      return [
        {
          level: over ? 'caution' : 'note',
          of: [item],
          message: `the ground side of ${item} drops ${voltsLost(groundDropV)} at rated power${liftedText(groundLiftedV)}, where ${volts(limit)} is ${over ? 'the limit' : 'good'}`,
          value: lostV,
          limit,
          unit: 'V',
          remedy:
            'shorten the ground lead, run it larger (size: at its link), or add a ground from the body to the battery',
          ...from,
          ...deviceSpot(about.job, item),
        },
      ];
    });
  },
};

const jointDrop: Rule = {
  id: 'joint-drop',
  judge(about) {
    const { value: limit, from } = houseRule(about.job, 'joint-drop-limit');
    const point = ratedPoint(about);
    if (!point) return [];
    return point.elements.flatMap((joint): Verdict<'joint-drop'>[] => {
      const dropV = Math.abs(voltageOver(point, joint) ?? 0);
      // The body is a path and no joint, though it stands between terminals of one device.
      if (joint.kind !== 'joint' || joint.of === 'body' || dropV <= limit + 1e-9) return [];
      const flows =
        joint.currentA === undefined ? '' : ` with ${ampsDrawn(Math.abs(joint.currentA))} through it`;
      return [
        {
          level: 'caution',
          of: [joint.id, joint.of],
          message: `the joint ${joint.id} drops ${voltsLost(dropV)}${flows}; ${volts(limit)} is the limit`,
          value: dropV,
          limit,
          unit: 'V',
          remedy:
            'use a lug with a larger contact face, bare and bright metal, or share the current between two joints',
          ...from,
          ...spotOf(about, joint),
        },
      ];
    });
  },
};

const chargeLeadDrop: Rule = {
  id: 'charge-lead-drop',
  judge(about) {
    const { job } = about;
    const { value: limit, from } = houseRule(job, 'charge-lead-drop');
    const posts = (kind: 'alternator' | 'battery') =>
      job.devices.flatMap(({ id, spec, facts, origin }) =>
        spec?.kind === kind && origin === 'vehicle'
          ? Object.keys(facts.terminals)
              .filter((terminal) => facts.terminals[terminal]?.role === 'source-positive')
              .map((terminal) => terminalId({ device: id, terminal }))
          : [],
      );
    const [alternator] = posts('alternator');
    const [battery] = posts('battery');
    if (alternator === undefined || battery === undefined) return [];
    const worst = playedPoints(about)
      .flatMap((point) => {
        const [high, low] = [voltageAt(point, alternator), voltageAt(point, battery)];
        return high === null || low === null ? [] : [{ title: point.title, dropV: high - low }];
      })
      .toSorted((a, b) => b.dropV - a.dropV)[0];
    if (!worst || worst.dropV <= limit + 1e-9) return [];
    return [
      {
        level: 'caution',
        of: [alternator, battery],
        message: `${worst.title}: ${voltsLost(worst.dropV)} are lost between ${alternator} and ${battery}; ${volts(limit)} is the limit`,
        value: worst.dropV,
        limit,
        unit: 'V',
        remedy: 'add a fused charge lead beside the one that the vehicle came with',
        ...from,
        path: '/links',
        file: 'vehicle',
      },
    ];
  },
};

export const voltageDropRules: readonly Rule[] = [
  feedDrop,
  grownForDrop,
  groundDrop,
  jointDrop,
  chargeLeadDrop,
];
