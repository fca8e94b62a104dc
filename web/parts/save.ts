/** Hand something to the reader as a file. */
export function save(file: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  // Not at once: the browser may read the address after the click.
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

export const saveText = (text: string, name: string, type = 'application/json'): void =>
  save(new Blob([text], { type }), name);
