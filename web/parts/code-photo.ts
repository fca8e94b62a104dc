/** The code of a running card, read out of a photograph of it or a frame of the camera. Loaded when it is asked for. */
import read from 'jsqr';

/** Longest sides at which the photograph is looked at, px: whole cards first, then closer, coarser, and enlarged. */
const SIDES = [1600, 2600, 1000, 3400];

/** A phone's own reader, where it has one, reads what is bent or blurred better than we do. */
interface OwnReader {
  detect(picture: ImageBitmap | HTMLVideoElement): Promise<readonly { readonly rawValue: string }[]>;
}
type Detector = new (of: { readonly formats: readonly string[] }) => OwnReader;

async function byOwnReader(picture: ImageBitmap | HTMLVideoElement): Promise<string | undefined> {
  const Own = (globalThis as { readonly BarcodeDetector?: Detector }).BarcodeDetector;
  if (!Own) return undefined;
  try {
    return (await new Own({ formats: ['qr_code'] }).detect(picture))[0]?.rawValue;
  } catch {
    // There is a name and no reader behind it on some systems.
    return undefined;
  }
}

type Pixels = Pick<ImageData, 'data' | 'width' | 'height'>;

export const codeInPixels = ({ data, width, height }: Pixels): string | undefined =>
  read(data, width, height)?.data || undefined;

function at(picture: CanvasImageSource, width: number, height: number): Pixels | undefined {
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  context?.drawImage(picture, 0, 0, width, height);
  return context?.getImageData(0, 0, width, height);
}

/** Undefined where no code is found; throws where the file is no picture. */
export async function codeIn(photo: Blob): Promise<string | undefined> {
  const picture = await createImageBitmap(photo);
  const own = await byOwnReader(picture);
  if (own) return own;
  const longest = Math.max(picture.width, picture.height);
  const tried = new Set<number>();
  for (const side of SIDES) {
    // A small picture is enlarged no more than twice: there is nothing more in it.
    const scale = Math.min(side / longest, 2);
    if (tried.has(scale)) continue;
    tried.add(scale);
    const pixels = at(picture, Math.round(picture.width * scale), Math.round(picture.height * scale));
    const found = pixels && codeInPixels(pixels);
    if (found) return found;
  }
  return undefined;
}

/** Longest side of a frame that is looked at, px. */
const FRAME = 1280;

/** The code in what the camera sees now. */
export async function codeInFrame(video: HTMLVideoElement): Promise<string | undefined> {
  if (video.videoWidth === 0) return undefined;
  const own = await byOwnReader(video);
  if (own) return own;
  const scale = Math.min(1, FRAME / Math.max(video.videoWidth, video.videoHeight));
  const pixels = at(video, Math.round(video.videoWidth * scale), Math.round(video.videoHeight * scale));
  return pixels && codeInPixels(pixels);
}
