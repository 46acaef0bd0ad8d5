import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { handOverOf } from '../packet/hand-over.ts';
import { type Packet, packetBody } from '../packet/packet-body.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Page, SiteContext } from '../page/page.ts';
import type { Fact } from '../sheets/table.ts';
import { addresses } from '../site/addresses.ts';
import { customerFacts } from '../site/customer-facts.ts';
import type { PublishedJob } from '../site/shop-site.ts';

/** What the owner of a vehicle takes home; or why it is not made yet. */
export interface PacketPageBody {
  readonly job: string;
  readonly vehicle: string;
  readonly issuedOn: string;
  readonly shop: { readonly name: string; readonly address: readonly string[] };
  /** Whose vehicle it is; empty on the site of the bench, and while there is no packet. */
  readonly owner: readonly Fact[];
  /** Why there is no packet, in sentences; empty where there is one. */
  readonly refused: readonly string[];
  readonly packet: Packet | null;
}

/** What of the customer stands in a packet, which lies in the vehicle: no price, no number to call. */
const ofOwner = ['name', 'plate'] as const;

/**
 * The packet of a job as one file, which asks for nothing outside it. On the site of the bench it holds no private value: no
 * name, plate or serial number.
 */
export function packetPage(context: SiteContext, published: PublishedJob): Page {
  const { plan, customer, handOver: written, serials } = published;
  const { site, audience } = context;
  const { job, shop, vehicle } = plan;
  const address = addresses.packet(job.id);
  const mark = sheetMark(plan)?.word ?? null;
  return {
    address,
    template: 'packet.njk',
    plan,
    isOneFile: true,
    photos: site.photos ?? [],
    model: () => {
      const handOver = handOverOf(plan, audience === 'bench' ? {} : serials);
      const isMade = handOver.refused.length === 0;
      const told = Object.fromEntries(ofOwner.map((field) => [field, customer[field]]));
      const body: PacketPageBody = {
        job: `${job.id}, revision ${job.revision}`,
        vehicle: vehicle.title,
        issuedOn: job.issuedOn,
        shop: { name: shop.name, address: shop.address },
        owner: isMade ? customerFacts(told, audience) : [],
        refused: handOver.refused,
        packet: isMade
          ? packetBody({
              plan,
              handOver,
              shop: site.shop['hand-over'],
              job: written,
              photos: published.photos ?? [],
            })
          : null,
      };
      const face = {
        address,
        title: 'Your sound system',
        above: [
          ['Jobs', addresses.jobs],
          [job.title, addresses.job(job.id)],
        ] as const,
        mark,
        foot: `${job.id}, revision ${job.revision}`,
      };
      return { ...chromeOf(context, face), body };
    },
  };
}
