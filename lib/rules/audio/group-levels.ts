import { type Job, linkEndOf } from '../../model/content/resolved-job.ts';
import { type ChannelLevel, type DrivenChannel, groupLevels } from '../../plan/audio/path/group-levels.ts';
import { devicesById } from '../../plan/wiring/conductor-role.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { levelDb, listed } from '../words.ts';

const notMade: Rule = {
  id: 'level-not-made',
  judge({ job, plan }) {
    const { channels } = plan.audio;
    const devices = devicesById(job);
    const levels = groupLevels(job, devices, channels);
    return job.devices.flatMap((speaker): Verdict<'level-not-made'>[] => {
      const asked = speaker.given?.level ?? 0;
      if (asked >= 0) return [];
      const channel = channels.find(({ speakers }) => speakers.includes(speaker.id));
      const found = channel && levels.get(channel.id);
      const beyond = found && beyondReach(job, found);
      if (found && found.by.length > 0 && !beyond) return [];
      const told = beyond ?? (channel && found ? whyNot(job, channel, found) : notDriven);
      return [
        {
          level: 'stop',
          of: [speaker.id, ...(channel ? [channel.id] : [])],
          message: `${speaker.id} is to play at ${levelDb(asked)}, and ${told.why}`,
          remedy: `${told.remedy}; or take level: out of it`,
          ...deviceSpot(job, speaker.id, 'level'),
        },
      ];
    });
  },
};

interface Told {
  readonly why: string;
  readonly remedy: string;
}

const notDriven: Told = {
  why: 'no channel of an amplifier drives it',
  remedy: 'drive it by a channel that has a gain of its own',
};

/** The level of an output that does not go so far down; null where it does, or where its part does not tell how far. */
function beyondReach(job: Job, { atGain, by, levelDb: asked }: ChannelLevel): Told | null {
  if (atGain) return null;
  for (const id of by) {
    const { device, terminal: name } = linkEndOf(id);
    const range = deviceOf(job, device)?.facts.controls[name]?.level?.range;
    if (range && asked < range.from - 1e-9)
      return {
        why: `${name} of ${device} goes down to ${levelDb(range.from)}`,
        remedy: `write at most that far down, level: ${levelDb(range.from)}`,
      };
  }
  return null;
}

function whyNot(job: Job, channel: DrivenChannel, { others }: ChannelLevel): Told {
  const beside = others.filter((id) => channel.speakers.includes(id));
  if (beside.length > 0)
    return {
      why: `${listed(beside)} on the same channel, ${channel.id}, at another level`,
      remedy: `write the same level: at all speakers of ${channel.id}, or drive them by a channel each`,
    };
  const own = deviceOf(job, channel.amplifier)?.part ?? 'its amplifier';
  const output =
    'feed it by an output whose part has a level of its own, under controls: LEVEL: { what: level, panel: face, channels: [OUT3, OUT4] } with the names of its outputs';
  return others.length > 0
    ? {
        why: `what sets its level moves ${listed(others)} as well`,
        remedy: `drive it by channels whose gain moves nothing else, or ${output}`,
      }
    : {
        why: `neither a gain of ${channel.amplifier} nor the level of an output before it is told`,
        remedy: `write its gain under controls: of ${own}, such as GAIN: { what: gain, panel: face }, or ${output}`,
      };
}

export const groupLevelRules: readonly Rule[] = [notMade];
