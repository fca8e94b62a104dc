/** A photo of what is looked at: made small on this device, without place and time, and shown again where it is told. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { MOST_BYTES, type Photo, photoOf } from '../../../records/photos.ts';
import { FilePick } from '../../parts/file-pick.tsx';
import { keepPhoto, photoBytes, saying } from '../../state/records.ts';

/** Longest sides that are tried, px, and how closely each is drawn: a crack is still seen in the last. */
const SIZES = [
  { side: 1280, quality: 0.8 },
  { side: 1280, quality: 0.6 },
  { side: 960, quality: 0.6 },
  { side: 640, quality: 0.5 },
] as const;

/** Drawn anew it has nothing of what the camera wrote into it. Throws where the file is no picture. */
async function madeSmall(file: Blob): Promise<Photo> {
  const picture = await createImageBitmap(file);
  for (const { side, quality } of SIZES) {
    const scale = Math.min(1, side / Math.max(picture.width, picture.height));
    const canvas = new OffscreenCanvas(
      Math.max(1, Math.round(picture.width * scale)),
      Math.max(1, Math.round(picture.height * scale)),
    );
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const drawn = await canvas.convertToBlob({ type: 'image/jpeg', quality });
    if (drawn.size > MOST_BYTES) continue;
    const made = await photoOf(new Uint8Array(await drawn.arrayBuffer()));
    if (typeof made !== 'string') return made;
  }
  throw new Error('a picture that stays too large');
}

interface Props {
  readonly label: string;
  /** What is looked at. */
  readonly of: string;
  /** Of the one that was taken. */
  readonly hash: string | undefined;
  readonly taken: (hash: string | undefined) => void;
}

/** Kept at once, beside the records: a list that is put away half done has its photos when it is taken up again. */
export function TakePhoto({ label, of, hash, taken }: Props) {
  const shown = useSignal('');
  const fault = useSignal('');
  const take = async ([file]: readonly File[]): Promise<void> => {
    fault.value = '';
    let photo: Photo;
    try {
      photo = await madeSmall(file);
    } catch {
      fault.value = 'That file is no picture that this browser reads.';
      return;
    }
    try {
      await keepPhoto(photo);
    } catch (error) {
      fault.value = saying(error);
      return;
    }
    shown.value = `${Math.ceil(photo.bytes.length / 1024)} kB`;
    taken(photo.hash);
  };
  return (
    <span>
      <FilePick label={label} accept="image/*" take={take} />
      {hash !== undefined && (
        <small>
          {' '}
          {shown.value === '' ? 'Kept with it.' : `Kept with it: ${shown.value}.`}{' '}
          <button
            type="button"
            onClick={() => {
              shown.value = '';
              taken(undefined);
            }}
          >
            Without it
          </button>
        </small>
      )}
      {fault.value !== '' && <small role="alert"> {fault.value}</small>}
      {hash !== undefined && <PhotoHere key={hash} hash={hash} of={of} />}
    </span>
  );
}

/** A photo that a record names, or that it is not here. */
export function PhotoHere({ hash, of }: { readonly hash: string; readonly of: string }) {
  const url = useSignal<string | null>('');
  useEffect(() => {
    let made = '';
    let gone = false;
    void photoBytes(hash).then((bytes) => {
      if (gone) return;
      made = bytes ? URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' })) : '';
      url.value = bytes ? made : null;
    });
    return () => {
      gone = true;
      if (made !== '') URL.revokeObjectURL(made);
    };
  }, [hash]);
  if (url.value === null) return <small>Its photo is not on this device.</small>;
  if (url.value === '') return null;
  return (
    <a href={url.value} target="_blank" rel="noreferrer">
      <img class="photo" src={url.value} alt={`Photo: ${of}`} />
    </a>
  );
}
