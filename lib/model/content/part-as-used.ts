import type { TerminalSpec, TerminalSpecs } from '../kinds/fields/terminal-spec.ts';
import type { Part, PartOf } from '../kinds/index.ts';

/** What a job says of how the inputs of an amplifier are used. */
export interface InputUse {
  /** Inputs that take speaker level, by the lead that their maker supplies. */
  readonly 'speaker-level': readonly string[];
  /** Channels that take their signal inside, from inputs of others. */
  readonly 'summed-inside': readonly string[];
}

/**
 * A part as a job uses it. An input of an amplifier that takes speaker level by its maker's lead is the pair of ends of
 * that lead, under the name of the socket; a channel that takes its signal inside plays the inputs that its part names,
 * added up. Any other part is what it is.
 */
export function partAsUsed(part: Part, used: InputUse | null): Part {
  if (!used || part.kind !== 'amplifier') return part;
  if (used['speaker-level'].length === 0 && used['summed-inside'].length === 0) return part;
  return {
    ...part,
    terminals: terminalsAsUsed(part.terminals, used['speaker-level']),
    channels: channelsAsUsed(part.channels, used['summed-inside']),
    passes: passesAsUsed(part.passes, used['speaker-level']),
  };
}

function terminalsAsUsed(
  terminals: TerminalSpecs,
  names: readonly string[],
): Record<string, TerminalSpecs[string]> {
  return Object.fromEntries(
    Object.entries(terminals).flatMap(([name, terminal]) =>
      names.includes(name) ? terminalWithSpeakerLevel(name, terminal) : [[name, terminal] as const],
    ),
  );
}

type Passes = PartOf<'amplifier'>['passes'];

/** What the part says of a line input holds at line level: of the maker's lead for speaker level nobody says it. */
function passesAsUsed(passes: Passes, speakerLevel: readonly string[]): Passes {
  return Object.fromEntries(
    Object.entries(passes).map(([output, { of, tap }]) => [
      output,
      {
        of: Object.fromEntries(Object.entries(of).filter(([input]) => !speakerLevel.includes(input))),
        tap,
      },
    ]),
  );
}

type Channels = PartOf<'amplifier'>['channels'];

function channelsAsUsed(channels: Channels, inside: readonly string[]): Channels {
  return Object.fromEntries(
    Object.entries(channels).map(([name, channel]) => {
      const [input, ...summed] = channel['also-takes'];
      return [name, inside.includes(name) && input !== undefined ? { ...channel, input, summed } : channel];
    }),
  );
}

/** The two ends of the maker's lead that stand for a line input which takes speaker level; the input as it is where it can't. */
function terminalWithSpeakerLevel(
  name: string,
  terminal: TerminalSpec,
): readonly (readonly [string, TerminalSpec])[] {
  const { 'speaker-level': level, signal: _line, ...socket } = terminal;
  if (!level) return [[name, terminal]];
  const end = { ...socket, joint: 'supplied-lead', 'signal-range': { to: level.to } } as const;
  return [
    [`${name}+`, { ...end, 'speaker-level': level, role: 'speaker-in-positive' }],
    [`${name}-`, { ...end, 'speaker-level': level, role: 'speaker-in-negative' }],
  ];
}
