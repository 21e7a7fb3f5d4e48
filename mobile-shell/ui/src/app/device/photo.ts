// Photos from the camera are made smaller before they are kept: the bike's file is carried from phone to phone.

/** Longest side that is kept, in pixels: enough to read a connector's colours. */
const LONGEST = 1600;
const QUALITY = 0.82;
const MEDIA = 'image/jpeg';

/** The picture no larger than needed. Fails when the file is no picture that the browser can read. */
export async function shrink(file: Blob): Promise<{ media: string; bytes: Uint8Array<ArrayBuffer> }> {
  const picture = await createImageBitmap(file);
  const factor = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * factor));
  canvas.height = Math.max(1, Math.round(picture.height * factor));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const small = await new Promise<Blob>((made, failed) => canvas.toBlob((blob) => (blob ? made(blob) : failed(new Error('no picture'))), MEDIA, QUALITY));
  return { media: MEDIA, bytes: new Uint8Array(await small.arrayBuffer()) };
}
