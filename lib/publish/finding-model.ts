import type { Finding, Level } from '../model/finding.ts';
import { placeText } from '../model/place.ts';
import type { Visible } from './visible-to.ts';
import { levelMeanings, levelOrder, levelWords, markWords } from './words.ts';
import { plainNumber } from './written.ts';

/** A finding as a page prints it. */
export interface FindingModel {
  readonly level: Level;
  readonly message: string;
  readonly remedy: string;
  /** `value 45 A, limit 40 A`; empty where the finding has no numbers. */
  readonly figures: string;
  readonly source: string;
  readonly rule: string;
  readonly place: string;
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
      findings: findings.filter((one) => one.level === level).map(findingModel),
    }))
    .filter((group) => group.findings.length > 0);
}

/** True for a finding of which nothing was held back. */
export function isWhole(finding: Visible<Finding>): finding is Finding {
  return finding.rule !== undefined && finding.level !== undefined && finding.message !== undefined;
}

function findingModel(finding: Finding): FindingModel {
  const { level, message, remedy, rule, source, mark, where } = finding;
  return {
    level,
    message,
    remedy,
    figures: [figure('value', finding.value, finding.unit), figure('limit', finding.limit, finding.unit)]
      .filter((text) => text !== '')
      .join(', '),
    source:
      mark === undefined || source.includes(markWords[mark]) ? source : `${source} (${markWords[mark]})`,
    rule,
    place: placeText(where),
  };
}

function figure(name: string, value: number | string | undefined, unit = ''): string {
  if (value === undefined) return '';
  return `${name} ${typeof value === 'number' ? plainNumber(value) : value} ${unit}`.trimEnd();
}
