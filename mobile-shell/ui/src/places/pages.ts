// Which page an address leads to. Today is at hand at once; the other places are loaded when the first page stands, or
// when somebody is faster than that.
import type { Component } from 'svelte';
import Nowhere from './start/Nowhere.svelte';
import Today from './today/Today.svelte';

// eslint-disable-next-line @typescript-eslint/no-explicit-any -- each page has its own props; the table below gives them
type PageComponent = Component<any>;
/** The component when it is at hand, else its promise. */
type Load = () => PageComponent | Promise<PageComponent>;

export interface PageAt {
  load: Load;
  props: Record<string, string>;
  /** The place that is lit in the bar. */
  place: string;
  /** The page takes the whole screen. */
  full: boolean;
  /** It works before there is a bike. */
  withoutBike: boolean;
}

/** A place with its pages, loaded once. */
function place<Pages extends object>(load: () => Promise<Pages>) {
  let loaded: Pages | undefined;
  let coming: Promise<Pages> | undefined;
  const fetch = () =>
    (coming ??= load().then(
      (pages) => (loaded = pages),
      (failed) => {
        coming = undefined;
        throw failed;
      },
    ));
  return { fetch, now: () => loaded };
}

const start = place(() => import('./start/index.ts'));
const plan = place(() => import('./plan/index.ts'));
const job = place(() => import('./job/index.ts'));
const numbers = place(() => import('./numbers/index.ts'));
const inspect = place(() => import('./inspect/index.ts'));
const bike = place(() => import('./bike/index.ts'));

/** Loads every place, so that later steps do not wait. */
export async function loadPlaces() {
  for (const each of [plan, job, numbers, inspect, bike, start]) await each.fetch();
}

function from<Pages extends object>(of: { fetch: () => Promise<Pages>; now: () => Pages | undefined }, name: keyof Pages): Load {
  return () => {
    const pages = of.now();
    return pages ? (pages[name] as PageComponent) : of.fetch().then((given) => given[name] as PageComponent);
  };
}

const today: Load = () => Today;

type Entry = [pattern: string, load: Load, mark?: 'full' | 'bare'];

/** A word with a colon is handed to the page as a property. */
const PAGES: Entry[] = [
  ['today', today],
  ['plan', from(plan, 'Plan')],
  ['plan/ready-made', from(plan, 'ReadyMade')],
  ['plan/job/:id', from(job, 'JobPage')],
  ['plan/job/:id/edit', from(job, 'JobForm')],
  ['plan/new', from(job, 'JobForm')],
  ['bench/:id', from(job, 'AtBench'), 'full'],
  ['numbers', from(numbers, 'Numbers')],
  ['numbers/gearing', from(numbers, 'Gearing')],
  ['numbers/sprockets', from(numbers, 'Sprockets')],
  ['numbers/chain', from(numbers, 'ChainWear')],
  ['numbers/thrust', from(numbers, 'Thrust')],
  ['numbers/tyres', from(numbers, 'Tyres')],
  ['numbers/load', from(numbers, 'Load')],
  ['numbers/brakes', from(numbers, 'Brakes')],
  ['numbers/threads', from(numbers, 'Threads')],
  ['numbers/filling', from(numbers, 'Filling')],
  ['numbers/mixing', from(numbers, 'Mixing')],
  ['numbers/lamps', from(numbers, 'Lamps')],
  ['numbers/charging', from(numbers, 'Charging')],
  ['numbers/faults', from(numbers, 'Faults')],
  ['numbers/faults/:id', from(numbers, 'FaultSearch')],
  ['numbers/circuits', from(numbers, 'Circuits')],
  ['numbers/wire', from(numbers, 'Wire')],
  ['numbers/handbook', from(numbers, 'Handbook')],
  ['numbers/cure', from(numbers, 'Cure')],
  ['numbers/cure/:coat', from(numbers, 'CureClock')],
  ['numbers/coats', from(numbers, 'CoatsPlan')],
  ['numbers/coats/:process', from(numbers, 'Coats')],
  ['numbers/coats/of/:job', from(numbers, 'CoatsPlan')],
  ['inspect', from(inspect, 'Inspect')],
  ['inspect/:pack/item/:item', from(inspect, 'InspectItem')],
  ['inspect/:pack/summary', from(inspect, 'Summary')],
  ['inspect/:pack/day-sheet', from(inspect, 'DaySheet')],
  ['bike', from(bike, 'Bike')],
  ['bike/who', from(bike, 'Who')],
  ['bike/spec', from(bike, 'SpecPage')],
  ['bike/spec/:side/:section', from(bike, 'SpecForm')],
  ['bike/slot/:side/:kind', from(bike, 'SlotForm')],
  ['bike/slot/:side/:kind/:id', from(bike, 'SlotForm')],
  ['bike/parts', from(bike, 'Parts')],
  ['bike/parts/:id', from(bike, 'PartForm')],
  ['bike/torques', from(bike, 'Torques')],
  ['bike/torques/:id', from(bike, 'TorqueForm')],
  ['bike/garage', from(bike, 'Garage')],
  ['bike/hours', from(bike, 'Hours')],
  ['bike/shelf', from(bike, 'Shelf'), 'bare'],
  ['bike/away', from(bike, 'PutAway')],
  ['bike/bundle', from(bike, 'Bundle'), 'bare'],
  ['bike/device', from(bike, 'Device'), 'bare'],
  ['bike/home-screen', from(bike, 'HomeScreen'), 'bare'],
  ['bike/history/:kind/:record', from(bike, 'History')],
  ['bike/rivals', from(bike, 'Rivals')],
  ['start', from(start, 'Start'), 'bare'],
  ['start/own', from(start, 'StartForm'), 'bare'],
];

export function pageAt(path: string[]): PageAt {
  const asked = path.length === 0 ? ['today'] : path;
  for (const [pattern, load, mark] of PAGES) {
    const props = match(pattern.split('/'), asked);
    if (!props) continue;
    const lit = asked[0] === 'bench' ? 'plan' : (asked[0] ?? 'today');
    return { load, props, place: lit, full: mark === 'full', withoutBike: mark === 'bare' };
  }
  return { load: () => Nowhere, props: {}, place: '', full: false, withoutBike: true };
}

function match(pattern: string[], path: string[]): Record<string, string> | null {
  if (pattern.length !== path.length) return null;
  const props: Record<string, string> = {};
  for (const [at, word] of pattern.entries()) {
    const given = path[at] ?? '';
    if (word.startsWith(':')) props[word.slice(1)] = given;
    else if (word !== given) return null;
  }
  return props;
}
