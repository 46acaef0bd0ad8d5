import type { Proposal } from '../../model/content/proposal.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import { isPortPattern, patternNames } from '../../model/ports/port-pattern.ts';
import { flowText } from '../../read/yaml/write-value.ts';
import { deviceSpot, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn, listed } from '../words.ts';

/** The proposals of one doubt. */
function inDoubt({ job }: Case, doubt: Proposal['doubt']): readonly Proposal[] {
  return job.proposals.filter((one) => one.doubt === doubt);
}

const openOnlyByProposal: Rule = {
  id: 'open-only-by-proposal',
  judge(about) {
    const ends = inDoubt(about, 'plays-nothing').map(({ path }) => linkEndOf(path[1] ?? ''));
    const devices = [...new Set(ends.map(({ device }) => device))];
    return devices.map((device): Verdict<'open-only-by-proposal'> => {
      const own = ends.filter((end) => end.device === device);
      const names = own.flatMap(({ terminal }) =>
        isPortPattern(terminal) ? patternNames(terminal) : [terminal],
      );
      return {
        level: 'caution',
        of: [device, ...names.map((name) => `${device}.${name}`)],
        message: `${listed(names)} of ${device} ${names.length === 1 ? 'drives' : 'drive'} nothing, and that ${names.length === 1 ? 'it stays' : 'they stay'} open is only proposed: something may have been forgotten`,
        remedy: `write what it drives, or under left-open: of the job why it stays open, such as "${device}.${names.join('|')}": not used on this job`,
        ...deviceSpot(about.job, device),
      };
    });
  },
};

const faderMovesBass: Rule = {
  id: 'fader-moves-bass',
  judge(about) {
    const links = inDoubt(about, 'fader-moves-bass').map(({ path }) => path[1] ?? '');
    const [first] = links;
    if (first === undefined) return [];
    return [
      {
        level: 'note',
        of: links,
        message: `${listed(links)} ${links.length === 1 ? 'carries' : 'carry'} the bass from the rear pair of the source: its fader moves the bass`,
        remedy: 'leave the fader in the middle, or write signal: front at the subwoofer',
        ...wireSpot(about, first),
      },
    ];
  },
};

const bassPairChosen: Rule = {
  id: 'bass-pair-chosen',
  judge(about) {
    const links = inDoubt(about, 'bass-pair-chosen').map(({ path }) => path[1] ?? '');
    const [first] = links;
    if (first === undefined) return [];
    return [
      {
        level: 'note',
        of: links,
        message: `${listed(links)} ${links.length === 1 ? 'takes' : 'take'} the bass from the front pair of the source, which was chosen here: the source has a rear pair too`,
        remedy: 'write signal: rear at the subwoofer, or signal: front where the front pair is meant',
        ...wireSpot(about, first),
      },
    ];
  },
};

const lengthNotMeasured: Rule = {
  id: 'length-not-measured',
  judge(about) {
    const assumed = inDoubt(about, 'not-measured').flatMap(({ path: [, id = ''], value }) => {
      // A pair is a link of two conductors, each by the name of the link.
      const lengthM = about.job.links.find((link) => linkName(link.id) === id)?.given?.length;
      return lengthM === undefined ? [] : [{ id, lengthM, value }];
    });
    const [first] = assumed;
    if (!first) return [];
    const spot = wireSpot(about, first.id);
    const length = lengthIn(about.job, spot);
    const ids = assumed.map(({ id }) => id);
    const told = assumed.map(({ id, lengthM }) => `${id} ${length(lengthM)}`);
    return [
      {
        level: 'caution',
        of: ids,
        message: `nobody measured how long ${listed(ids)} ${ids.length === 1 ? 'is' : 'are'}; assumed: ${listed(told)}`,
        remedy: `measure, and write what you measured, such as under links: ${first.id}: ${flowText(first.value)}; or write a route of the vehicle that serves both ends`,
        ...spot,
      },
    ];
  },
};

export const proposalRules: readonly Rule[] = [
  openOnlyByProposal,
  faderMovesBass,
  bassPairChosen,
  lengthNotMeasured,
];
