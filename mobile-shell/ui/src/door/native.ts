// The door in a window of its own: the native program holds a SQLite file in the app's data folder.
import { invoke } from '@tauri-apps/api/core';
import type { AskCall, Refusal } from '../../../../bindings/generated/typescript/door.ts';
import type { Backend, Listeners } from './backend.ts';
import { moment } from './moment.ts';

export function native(listeners: Listeners): Backend {
  // The program says its notices in the language of the pages.
  const send = (kind: 'act' | 'ask', json: string) => invoke<string>(kind, { envelope: json, language: document.documentElement.lang });
  // The file was opened before the window; the first question tells whether that went well.
  const first: AskCall = { moment: moment(), query: { kind: 'shelf' } };
  send('ask', JSON.stringify(first)).then(
    () => listeners.state({ kind: 'open' }),
    (thrown) => listeners.state({ kind: 'broken', refusal: readRefusal(thrown) }),
  );
  return { send, close: () => {} };
}

function readRefusal(thrown: unknown): Refusal {
  try {
    return JSON.parse(String(thrown)) as Refusal;
  } catch {
    return { code: 'storage', message: String(thrown), field: null };
  }
}
