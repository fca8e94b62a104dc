/** An evidence pack, in words. */

export const packDone = (count: number, file: string, faults: number): string =>
  `Evidence pack of ${count} ${count === 1 ? 'record' : 'records'} written into ${file}; of the store, ${
    faults === 0
      ? 'all as they were written'
      : `${faults} ${faults === 1 ? 'thing is' : 'things are'} amiss: the first page says what`
  }.`;

export const packWords = {
  photos: 'Photos',
  morePhotos: (count: number) =>
    `${count} older ${count === 1 ? 'photo is' : 'photos are'} not printed; ${count === 1 ? 'it is' : 'they are'} in the file inside.`,
  photoAltered: 'the photo was altered, and is not printed',
  photoMissing: 'the photo is not there',
  photoUnread: 'the photo cannot be printed; it is in the file inside',
  about:
    'For an insurer, an inspector or a host: what was recorded of a span, what stands, and the chain of hashes that anybody can check. One PDF, with the records inside it as a file.',
  title: (of: readonly string[] | undefined): string =>
    of === undefined ? 'Evidence pack' : `Evidence pack: ${of[0]}${of.length > 1 ? ' and others' : ''}`,
  span: (from: string | undefined, to: string | undefined): string =>
    from === undefined ? 'Nothing is recorded of this span.' : `From ${from} to ${to}, both days in it.`,
  of: (of: readonly string[]): string => `Of ${of.join(', ')}; what is the club’s; and who worked it.`,
  count: (here: number, all: number): string =>
    `${here} of the ${all} records of this store; all of these are in the file inside this one, ${RECORDS_FILE}.`,
  made: ({ at, program }: { readonly at: string; readonly program: string }): string =>
    `Made on ${at.slice(0, 10)} by Heedway ${program}. It shows what was recorded; whether it is enough is for whoever asked for it.`,
  sheets: 'Vehicles’ sheets',
  measured: 'Measurements and fits',
  noName: 'without a name',
  noTests: 'No measured test is kept in these papers.',
  stands: (day: string): string => `What stands on ${day}`,
  chain: 'The chain of hashes, and how to check it',
} as const;

/** Of the records, inside the PDF. */
export const RECORDS_FILE = 'records.jsonl';

export const verifyWords: readonly string[] = [
  `The file ${RECORDS_FILE} inside this PDF (a reader shows it among the attachments; pdfdetach -saveall takes it out) has a line for each record, after one for its head. The SHA-256 of a record’s body is its name and stands in the table below; each body names the author’s record before it, so that none can be taken out or changed without every later one being another; the author’s key signs it (Ed25519, RFC 8032).`,
  'A record before the span, or of another thing, is named and not in the file. heedway verify tells all of this at once; with sha256sum and openssl (3.0 or newer) alone, for the record on line 2:',
];

/** Run as they stand, in a POSIX shell with GNU coreutils. */
export const verifyLines: readonly string[] = [
  `sed -n 2p ${RECORDS_FILE} > line`,
  'sed -E \'s/^\\{"body":(.*),"hash":"[0-9a-f]{64}".*$/\\1/\' line | tr -d "\\n" > body',
  'sed -E \'s/^.*,"hash":"([0-9a-f]{64})".*$/\\1  body/\' line | sha256sum -c',
  'raw() { tr -d "\\n" | tr a-f A-F | basenc --base16 -d; }',
  'sed -E \'s/^.*,"signature":"([0-9a-f]{128})"\\}$/\\1/\' line | raw > signature',
  '(echo 302a300506032b6570032100; sed -E \'s/^\\{"body":\\{"author":"([0-9a-f]{64})".*$/\\1/\' line) | raw > key',
  'openssl pkeyutl -verify -pubin -keyform DER -inkey key -rawin -in body -sigfile signature',
];
