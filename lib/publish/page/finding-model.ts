import type { Finding, Level } from '../../model/finding.ts';
import { acceptedText, findingFigures } from '../../model/finding-text.ts';
import { placeText } from '../../model/place.ts';
import { groupsBy } from '../sheets/table.ts';
import type { Visible } from '../site/visible-to.ts';
import { levelMeanings, levelOrder, levelWords, markWords } from '../words/words.ts';

type Following = NonNullable<Finding['follows']>[number];

/** A finding as a page prints it. */
export interface FindingModel {
  readonly level: Level;
  readonly message: string;
  readonly remedy: string;
  /** `value 45 A, limit 40 A`; empty where the finding has no numbers. */
  readonly figures: string;
  readonly source: string;
  readonly rule: string;
  /** By whom and why a caution was accepted, and at which value; null where it stands open. */
  readonly accepted: string | null;
  /** Every place that it was said of. */
  readonly places: readonly string[];
  /** What only follows from it: its level in a word, and what it says. */
  readonly follows: readonly FollowingModel[];
}

/** A finding that only follows from another, as a page prints it under that one. */
export interface FollowingModel {
  readonly level: Level;
  readonly word: string;
  readonly message: string;
  readonly rule: string;
  readonly places: readonly string[];
}

/** The findings of one level. */
export interface FindingGroup {
  readonly level: Level;
  readonly word: string;
  readonly meaning: string;
  readonly findings: readonly FindingModel[];
}

/** The findings by level, the gravest first; a level with none is left out. */
export function findingGroups(findings: readonly Finding[]): FindingGroup[] {
  return levelOrder
    .map((level) => ({
      level,
      word: levelWords[level],
      meaning: levelMeanings[level],
      findings: merged(findings.filter((one) => one.level === level)),
    }))
    .filter((group) => group.findings.length > 0);
}

/** What is said of several places in the same words is said once. */
function merged(findings: readonly Finding[]): FindingModel[] {
  return groupsBy(findings, ({ rule, message, remedy, accepted }) =>
    [rule, message, remedy, accepted ? acceptedText(accepted) : ''].join('|'),
  ).flatMap(({ things }) => {
    const [first] = things;
    return first === undefined
      ? []
      : [
          findingModel(
            first,
            placesOf(things),
            things.flatMap(({ follows = [] }) => follows),
          ),
        ];
  });
}

/** True for a finding of which nothing was held back. */
export function isWhole(finding: Visible<Finding>): finding is Finding {
  return finding.rule !== undefined && finding.level !== undefined && finding.message !== undefined;
}

/** Where findings were said, and where the figures stand that they rest on, each place once. */
function placesOf(findings: readonly Finding[]): readonly string[] {
  const data = findings.flatMap((finding) => finding.data ?? []);
  return [
    ...findings.map(({ where }) => placeText(where)),
    ...new Set(data.map((place) => `figure from ${placeText(place)}`)),
  ];
}

/** What follows in the same words of several places is said once. */
function followingModels(follows: readonly Following[]): FollowingModel[] {
  return groupsBy(follows, ({ rule, message }) => `${rule}|${message}`).flatMap(({ things }) => {
    const [first] = things;
    if (!first) return [];
    const { level, message, rule } = first;
    const places = things.map(({ where }) => placeText(where));
    return [{ level, word: levelWords[level], message: sentence(message), rule, places }];
  });
}

function findingModel(
  finding: Finding,
  places: readonly string[],
  follows: readonly Following[],
): FindingModel {
  const { level, message, remedy, rule, source, mark, accepted } = finding;
  return {
    level,
    message: sentence(message),
    remedy: sentence(remedy),
    figures: Object.entries(findingFigures(finding))
      .map(([name, figure]) => `${name} ${figure}`)
      .join(', '),
    source:
      mark === undefined || source.includes(markWords[mark]) ? source : `${source} (${markWords[mark]})`,
    rule,
    accepted: accepted === undefined ? null : sentence(acceptedText(accepted)),
    places,
    follows: followingModels(follows),
  };
}

/** With a capital at the head and a stop at the end. A name keeps its small letter: it is written as in the file. */
function sentence(text: string): string {
  const isName = /^[a-z0-9]+[-.:]/.test(text);
  const head = isName ? text.charAt(0) : text.charAt(0).toUpperCase();
  return `${head}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
}
