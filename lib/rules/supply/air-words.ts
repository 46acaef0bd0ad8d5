const perHour = 3600;

/** Air that must be moved (m3/s), rounded up: less would leave a space warmer than was counted on. */
export function m3hNeeded(airM3S: number): string {
  return `${Math.ceil(airM3S * perHour - 1e-6)} m3/h`;
}

/** Air that is counted on (m3/s), never told as more. */
export function m3hMoved(airM3S: number): string {
  return `${Math.floor(airM3S * perHour + 1e-6)} m3/h`;
}
