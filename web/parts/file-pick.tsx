/** The way in for files of the reader's. Cleared after each, so that the same file mended can be chosen again. */

interface Props {
  readonly label: string;
  readonly accept: string;
  readonly multiple?: boolean;
  readonly take: (files: readonly File[]) => Promise<unknown>;
}

export function FilePick({ label, accept, multiple = false, take }: Props) {
  return (
    <label class="file">
      {label}{' '}
      <input
        type="file"
        multiple={multiple}
        accept={accept}
        onChange={(e) => {
          const input = e.currentTarget;
          const files = [...(input.files ?? [])];
          if (files.length === 0) return;
          void take(files).finally(() => {
            input.value = '';
          });
        }}
      />
    </label>
  );
}
