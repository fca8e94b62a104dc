/** Bytes that are a JPEG by its segments (ITU-T T.81, annex B), with or without what a camera writes into it. Made up. */
export const PLACE = 'Exif\0\0 51.5 N 0.1 W';

const segment = (marker: number, content: Uint8Array): Uint8Array => {
  const length = content.length + 2;
  return Uint8Array.from([0xff, marker, length >> 8, length & 0xff, ...content]);
};
const text = (of: string): Uint8Array => new TextEncoder().encode(of);

interface Of {
  readonly place?: boolean;
  readonly letter?: number;
  /** Of the picture itself, bytes. */
  readonly length?: number;
}

export function jpeg({ place = false, letter = 1, length = 60 }: Of): Uint8Array<ArrayBuffer> {
  const told = place ? [segment(0xe1, text(PLACE)), segment(0xfe, text('a remark'))] : [];
  return Uint8Array.from(
    [
      Uint8Array.from([0xff, 0xd8]),
      segment(0xe0, text('JFIF\0')),
      ...told,
      segment(0xdb, new Uint8Array(20)),
      segment(0xda, new Uint8Array(6)),
      new Uint8Array(length).fill(letter),
      Uint8Array.from([0xff, 0xd9]),
    ].flatMap((part) => Array.from(part)),
  );
}

/** A picture that can be printed: 8 by 8 points, drawn here and written by a browser. */
export const picture = (): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(
    atob(
      '/9j/4AAQSkZJRgABAQAAAQABAAD/4gHYSUNDX1BST0ZJTEUAAQEAAAHIAAAAAAQwAABtbnRyUkdCIFhZWiAH4AABAAEAAAAAAABh' +
        'Y3NwAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAQAA9tYAAQAAAADTLQAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA' +
        'AAAAAAAAAAAAAAAAAAAAAAAAAAlkZXNjAAAA8AAAACRyWFlaAAABFAAAABRnWFlaAAABKAAAABRiWFlaAAABPAAAABR3dHB0AAAB' +
        'UAAAABRyVFJDAAABZAAAAChnVFJDAAABZAAAAChiVFJDAAABZAAAAChjcHJ0AAABjAAAADxtbHVjAAAAAAAAAAEAAAAMZW5VUwAA' +
        'AAgAAAAcAHMAUgBHAEJYWVogAAAAAAAAb6IAADj1AAADkFhZWiAAAAAAAABimQAAt4UAABjaWFlaIAAAAAAAACSgAAAPhAAAts9Y' +
        'WVogAAAAAAAA9tYAAQAAAADTLXBhcmEAAAAAAAQAAAACZmYAAPKnAAANWQAAE9AAAApbAAAAAAAAAABtbHVjAAAAAAAAAAEAAAAM' +
        'ZW5VUwAAACAAAAAcAEcAbwBvAGcAbABlACAASQBuAGMALgAgADIAMAAxADb/2wBDAFA3PEY8MlBGQUZaVVBfeMiCeG5uePWvuZHI' +
        '////////////////////////////////////////////////////2wBDAVVaWnhpeOuCguv/////////////////////////////' +
        '////////////////////////////////////////////wAARCAAIAAgDASIAAhEBAxEB/8QAFAABAAAAAAAAAAAAAAAAAAAAAP/E' +
        'ABkQAAIDAQAAAAAAAAAAAAAAAAABAgMRIf/EABQBAQAAAAAAAAAAAAAAAAAAAAD/xAAUEQEAAAAAAAAAAAAAAAAAAAAA/9oADAMB' +
        'AAIRAxEAPwBXB6uMAAf/2Q==',
    ),
    (letter) => letter.charCodeAt(0),
  );
