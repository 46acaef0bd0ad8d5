import type { SourceFile } from '../../lib/model/content/source-file.ts';
import { instead } from './links-of.ts';
import { shop } from './short-shop.ts';

/** The line inputs of the five-channel amplifier as its part has them, and taking speaker level by its maker's lead. */
export const inputs = 'role: signal-in, panel: left, at: 1/2 in, pitch: 1/2 in, joint: phono';
export const takesSpeakers = `${inputs}, speaker-level: { to: 12 V, senses: true }`;

/** The shop with a source that has speaker outputs alone in its hatchback, and pieces of its amplifiers written otherwise. */
export function speakerShop(
  ...changes: readonly (readonly [from: string, to: string])[]
): readonly SourceFile[] {
  return shop.map((file) => {
    if (file.path.endsWith('hatchback.yaml')) {
      const source = instead(file.text, 'part: source-six-line', 'part: source-four-speaker');
      const named = instead(source, 'OUT1..4:', 'SP1..4:').replace(
        'clean-voltage: 3.8 V',
        'clean-voltage: 8 V',
      );
      return { ...file, text: named.replace(/ {6}OUT5\.\.6: \{[^}]*\}\n/, '') };
    }
    if (!file.path.endsWith('amplifiers.yaml')) return file;
    return { ...file, text: changes.reduce((text, [from, to]) => instead(text, from, to), file.text) };
  });
}

/** The same whose bass channel has an input of its own, for speaker level too, and takes nothing of the others inside. */
export function speakerLevelShop(): readonly SourceFile[] {
  return speakerShop(
    [inputs, takesSpeakers],
    ["'5': { output: CH5, input: IN5, summed: [IN6], minimum", "'5': { output: CH5, input: IN5, minimum"],
  );
}
