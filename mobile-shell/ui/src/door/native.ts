// The door in a window of its own: the native program holds a SQLite file in the app's data folder.
import { invoke } from '@tauri-apps/api/core';
import type { AskCall, Refusal } from '../../../../bindings/generated/typescript/door.ts';
import type { Backend, Listeners } from './backend.ts';
import { contentAt } from './content.ts';
import { moment } from './moment.ts';

export function native(listeners: Listeners, content: string | null): Backend {
  const texts = content === null ? Promise.resolve() : useLanguage(content);
  // The program says its notices in the language of the pages.
  const send = async (kind: 'act' | 'ask', json: string) => {
    await texts;
    return invoke<string>(kind, { envelope: json, language: document.documentElement.lang });
  };
  // The file was opened before the window; the first question tells whether that went well.
  const first: AskCall = { moment: moment(), query: { kind: 'shelf' } };
  send('ask', JSON.stringify(first)).then(
    () => listeners.state({ kind: 'open' }),
    (thrown) => listeners.state({ kind: 'broken', refusal: readRefusal(thrown) }),
  );
  return { send, close: () => {} };
}

/** Hands the program its texts before the first call. It takes them once: after a reload it has them already, and in another language it wants to be started anew. */
async function useLanguage(content: string): Promise<void> {
  const texts = await contentAt(content);
  if (texts !== undefined) await invoke('use_language', { content: texts }).catch(() => {});
}

function readRefusal(thrown: unknown): Refusal {
  try {
    return JSON.parse(String(thrown)) as Refusal;
  } catch {
    return { code: 'storage', message: String(thrown), field: null };
  }
}
