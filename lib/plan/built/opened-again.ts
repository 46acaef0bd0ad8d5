import type { Device, Link } from '../../model/content/resolved-job.ts';

/** A device whose place is open again. */
export function unplaced(device: Device): Device {
  if (!device.given) return device;
  const { at: _at, turn: _turn, raised: _raised, ...given } = device.given;
  return { ...device, given };
}

/** A link whose length is open again. */
export function uncut(link: Link): Link {
  if (!link.given) return link;
  const { length: _, ...given } = link.given;
  return { ...link, given };
}

/** A link whose reel is open again. */
export function unsized(link: Link): Link {
  if (!link.given) return link;
  const { wire: _, ...given } = link.given;
  return { ...link, given };
}
