// The door for whoever opens the browser's console on a laptop: `await layshaft.ask({ kind: 'gearing', frontTeeth: 16 })`.
// The same two words as everywhere else; it can do nothing that the pages cannot.
import { desk } from './desk.svelte.ts';
import type { Command, Query } from '../../door/wire.ts';

export interface Handle {
  ask(query: Query): Promise<unknown>;
  act(command: Command): Promise<unknown>;
}

declare global {
  interface Window {
    layshaft: Handle;
  }
}

export function offerHandle() {
  window.layshaft = {
    ask: (query) => desk.ask(query),
    act: (command) => desk.act(command),
  };
}
