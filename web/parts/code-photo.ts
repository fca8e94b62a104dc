/** The code of a running card, read out of a photograph of it. The reader is loaded when it is asked for. */

/** Longest side at which the photograph is looked at, px: whole cards first, then closer and coarser. */
const SIDES = [1600, 2600, 1000];

/** Undefined where no code is found; throws where the file is no picture. */
export async function codeIn(photo: Blob): Promise<string | undefined> {
  const [{ default: read }, picture] = await Promise.all([import('jsqr'), createImageBitmap(photo)]);
  for (const side of SIDES) {
    const scale = Math.min(1, side / Math.max(picture.width, picture.height));
    const width = Math.round(picture.width * scale);
    const height = Math.round(picture.height * scale);
    const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
    context?.drawImage(picture, 0, 0, width, height);
    const pixels = context?.getImageData(0, 0, width, height).data;
    const found = pixels && read(pixels, width, height);
    if (found) return found.data;
  }
  return undefined;
}
