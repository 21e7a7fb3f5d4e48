// Where what a job puts right was found.
import { to } from '../../app/route.svelte.ts';
import type { ChangeKind, FindingCode, JobReason } from '../../door/wire.ts';

/** The page on what a finding is about, by the first word of its code. */
const PAGES: Record<string, string> = {
  chain: 'chain',
  speedometer: 'gearing',
  charging: 'charging',
  battery: 'charging',
  coil: 'load',
  balance: 'load',
  tyre: 'tyres',
  brake: 'brakes',
  'brake-fluid': 'brakes',
  indicator: 'lamps',
  flasher: 'lamps',
  lamp: 'lamps',
  harness: 'circuits',
  fuse: 'circuits',
  wire: 'circuits',
  relay: 'circuits',
};
const CHANGES: Record<ChangeKind, string> = { sprockets: 'sprockets', consumer: 'load', brake: 'brakes', flasher: 'lamps', tyre: 'tyres' };
/** What of the chain is worked out with the sprockets, not measured. */
const BY_SPROCKETS: readonly FindingCode[] = [
  'chain.outside-adjuster',
  'chain.odd-count',
  'chain.cannot-close',
  'chain.front-size',
  'chain.rear-size',
  'chain.cannot-run',
];

const numbers = (page: string, slot: string | null | undefined) =>
  to('numbers', page) + (slot && (page === 'tyres' || page === 'brakes') ? `?end=${encodeURIComponent(slot)}` : '');

export function wayBack(reason: JobReason): string {
  switch (reason.kind) {
    case 'item':
      return to('inspect', reason.pack, 'item', reason.item);
    case 'fault':
      return to('numbers', 'faults', reason.search);
    case 'change':
      return numbers(CHANGES[reason.change], reason.slot);
    case 'finding':
      return numbers(BY_SPROCKETS.includes(reason.code) ? 'gearing' : (PAGES[reason.code.split('.')[0] ?? ''] ?? ''), reason.slot);
  }
}
