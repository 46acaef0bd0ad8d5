/** The name that two terminals share: `CH1` for `CH1+` and `CH1-`; none where they are no pair. */
export function pairName(positive: string, negative: string): string | null {
  const stem = positive.replace(/\+$/, '');
  return positive.endsWith('+') && negative === `${stem}-` ? stem : null;
}

/** A terminal without the sign of its pair: `CH1` for `CH1+` and `CH1-`, `REM` for `REM`. */
export function stemName(terminal: string): string {
  return terminal.replace(/[+-]$/, '');
}
