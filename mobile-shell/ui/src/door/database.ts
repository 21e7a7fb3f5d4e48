// The program behind the door: the core and SQLite as WebAssembly, over the origin private file system.
import init, * as door from '../../../../.build/web/door.js';
import wasm from '../../../../.build/web/door_bg.wasm?url';
import { contentAt } from './content.ts';
import { troubled, type Answer, type Call, type DoorRefusal } from './backend.ts';

/** Folder of the private file system, and the database in it. */
const FOLDER = 'layshaft';
const NAME = 'layshaft.sqlite';

/** Tells one version of the program from another: the built file carries a mark of its content in its name. */
export const VERSION = wasm;

/** Waits before the database is tried again, in milliseconds: the tab that had it may still be letting go. */
const WAITS = [50, 100, 200, 400, 800, 1600];

/** Opens the database, with the texts that lie at `content`; throws a refusal where that cannot be. */
export async function open(content: string | null): Promise<void> {
  if (typeof FileSystemFileHandle === 'undefined' || !('createSyncAccessHandle' in FileSystemFileHandle.prototype)) {
    // eslint-disable-next-line @typescript-eslint/only-throw-error -- it goes to another thread, where no class is kept
    throw troubled({ kind: 'noFiles' });
  }
  const [texts] = await Promise.all([content === null ? undefined : contentAt(content), init({ module_or_path: wasm })]);
  for (const wait of [...WAITS, null]) {
    try {
      await door.open(FOLDER, NAME, freshMark(), texts);
      return;
    } catch (thrown) {
      if (wait === null) throw thrown;
      await new Promise((resolve) => setTimeout(resolve, wait));
    }
  }
}

/** Answers a call. `fault` says that the program stopped at a bug of its own and must be started anew. */
export function answer({ id, kind, json }: Call): { answer: Answer; fault: boolean } {
  try {
    return { answer: { id, ok: true, json: kind === 'act' ? door.act(json) : door.ask(json) }, fault: false };
  } catch (thrown) {
    // A refusal comes as its JSON; anything else is a bug, and the program says where.
    if (typeof thrown === 'string') return { answer: { id, ok: false, json: thrown }, fault: false };
    return { answer: { id, ok: false, json: JSON.stringify(asRefusal(thrown)) }, fault: true };
  }
}

/** Whatever was thrown, as a refusal. */
export function asRefusal(thrown: unknown): DoorRefusal {
  if (typeof thrown === 'string') return JSON.parse(thrown) as DoorRefusal;
  if (thrown instanceof WebAssembly.RuntimeError) {
    return troubled({ kind: 'stopped', place: door.fault() ?? thrown.message });
  }
  if (thrown && typeof thrown === 'object' && 'code' in thrown && typeof thrown.code === 'string') return thrown as DoorRefusal;
  return { code: 'storage', message: thrown instanceof Error ? thrown.message : String(thrown), field: null };
}

function freshMark(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(8)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
