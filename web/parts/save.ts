/** Hand something to the reader as a file. */
export function save(file: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  // Not at once: the browser may read the address after the click.
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** A text of the house's own format. */
export const saveJson = (text: string, name: string): void =>
  save(new Blob([text], { type: 'application/json' }), name);
