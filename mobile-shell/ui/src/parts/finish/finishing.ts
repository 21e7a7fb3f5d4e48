// What is said when a job is done: what the sheet begins with, and the one command that it sends.
import type { Command, Job, PartCard, Product } from '../../door/wire.ts';
import { instantOf } from '../../show/date.ts';

/** Name of the draft of a finishing. */
export const finishDraft = (job: string) => `finish.${job}`;

export interface Finishing {
  /** Whether a clock is started. */
  clock: boolean;
  /** Name of the product that is on. */
  product: string;
  /** When it went on, as it stands in the field; empty: just now. */
  wentOn: string;
  inHouse: boolean;
  fitted: string[];
  minutes: number | null;
  note: string;
}

/** What the sheet begins with. A coat that is on cures whether somebody looks or not, so its clock is offered as started. */
export const freshFinishing = (job: Job, products: Product[]): Finishing => ({
  clock: products.length > 0,
  product: products[0]?.name ?? '',
  wentOn: '',
  inHouse: false,
  fitted: [],
  minutes: job.minutesTaken ?? null,
  note: job.note ?? '',
});

/** Parts of the job that are not on the bike yet; its tools are none of them. */
export const partsToFit = (job: Job, parts: PartCard[]): PartCard[] =>
  parts.filter(({ id, part }) => job.parts.includes(id) && !part.tool && part.state !== 'fitted');

export function finishCommand(id: string, said: Finishing, products: Product[], parts: PartCard[]): Command {
  const product = products.find(({ name }) => name === said.product);
  const started = said.clock && product;
  return {
    kind: 'finishJob',
    id,
    startClock: started ? { product, startedMs: instantOf(said.wentOn), place: said.inHouse ? 'house' : null } : null,
    partsFitted: parts.map((part) => part.id).filter((part) => said.fitted.includes(part)),
    minutesTaken: said.minutes,
    note: said.note.trim() || null,
  };
}
