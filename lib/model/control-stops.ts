/** Where a knob or a slide stands that is neither on a figure nor at an hour. */
export type ControlStop = 'lowest' | 'middle' | 'highest';

/** The words that a state of a control may be written in; each may have `fully` before it, but for the middle. */
const words: Readonly<Record<ControlStop, readonly string[]>> = {
  lowest: [
    'counter-clockwise',
    'counterclockwise',
    'anti-clockwise',
    'anticlockwise',
    'lowest',
    'minimum',
    'min',
    'off',
    'down',
  ],
  middle: ['centre', 'centred', 'center', 'centered', 'middle', 'half'],
  highest: ['clockwise', 'highest', 'maximum', 'max', 'up'],
};

/** The stop that a state names in one of the words above, written small; null for any other. */
export function controlStopOf(state: string): ControlStop | null {
  if (words.middle.includes(state)) return 'middle';
  const [, word = state] = /^fully (.*)$/.exec(state) ?? [];
  if (words.lowest.includes(word)) return 'lowest';
  return words.highest.includes(word) ? 'highest' : null;
}
