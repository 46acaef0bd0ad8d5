/** A terminal without the sign of its pair: `CH1` for `CH1+` and `CH1-`, `REM` for `REM`. */
export function stemName(terminal: string): string {
  return terminal.replace(/[+-]$/, '');
}
