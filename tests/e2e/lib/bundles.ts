// Bundles that are spoilt on purpose. Offsets after the SQLite file format: the header's `user_version` stands at byte 60.
import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { goTo } from './steps.mjs';

/** Saves the open bike as a bundle, as a person does, and gives its bytes. */
export async function saveBundle(page: Page): Promise<Buffer> {
  await goTo(page, '#/bike/bundle');
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save a bundle' }).click()]);
  return readFile(await download.path());
}

/** Chooses a file on the bundle page. */
export async function receive(page: Page, name: string, buffer: Buffer) {
  await page.getByLabel('Choose the file').first().setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
}

export function cutShort(bundle: Buffer): Buffer {
  return bundle.subarray(0, Math.floor(bundle.length / 2));
}

export function fromTheFuture(bundle: Buffer): Buffer {
  const changed = Buffer.from(bundle);
  changed.writeUInt32BE(9999, 60);
  return changed;
}

/** The same facts under the same stamps with another text in them, as long as the old one: a copied database that went its own way. */
export function withOtherText(bundle: Buffer, here: string, came: string): Buffer {
  if (Buffer.byteLength(here) !== Buffer.byteLength(came)) throw new Error(`“${came}” is not as long as “${here}”`);
  const changed = Buffer.from(bundle.toString('latin1').replaceAll(Buffer.from(here).toString('latin1'), Buffer.from(came).toString('latin1')), 'latin1');
  if (changed.equals(bundle)) throw new Error(`“${here}” is not in the bundle`);
  return changed;
}
