// Files out of the app: by the share sheet of a phone or as a download in the browser, the system's own dialog in the app's window.

export function toBase64(bytes: Uint8Array): string {
  const CHUNK = 0x8000;
  let text = '';
  for (let at = 0; at < bytes.length; at += CHUNK) text += String.fromCharCode(...bytes.subarray(at, at + CHUNK));
  return btoa(text);
}

export function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}

export type FileKind = 'application/vnd.sqlite3' | 'text/calendar' | 'application/octet-stream';

/** Hands a file to the person. Gives the name that it got, or nothing when the dialog was left. */
export async function save(name: string, bytes: Uint8Array<ArrayBuffer>, kind: FileKind): Promise<string | null> {
  if ('__TAURI_INTERNALS__' in window) return saveInWindow(name, bytes);
  const shared = await share(new File([bytes], name, { type: kind }));
  if (shared !== undefined) return shared;
  const address = URL.createObjectURL(new Blob([bytes], { type: kind }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download has taken the file over by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return name;
}

/** By the share sheet of a phone, where that takes such a file: its name, or nothing when the sheet was left. Undefined where there is none. */
async function share(file: File): Promise<string | null | undefined> {
  // A laptop has the sheet too, but there a download is what one looks for.
  if (!matchMedia('(pointer: coarse)').matches || !navigator.canShare?.({ files: [file] })) return undefined;
  try {
    await navigator.share({ files: [file], title: file.name });
    return file.name;
  } catch (thrown) {
    return thrown instanceof DOMException && thrown.name === 'AbortError' ? null : undefined;
  }
}

async function saveInWindow(name: string, bytes: Uint8Array): Promise<string | null> {
  const [dialog, files] = await Promise.all([import('@tauri-apps/plugin-dialog'), import('@tauri-apps/plugin-fs')]);
  const path = await dialog.save({ defaultPath: name });
  if (path === null) return null;
  await files.writeFile(path, bytes);
  return path.split(/[/\\]/).at(-1) ?? name;
}
