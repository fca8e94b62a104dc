/** Hand a file to the reader. */
export function saveBlob(blob: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  // The browser reads it after the click has been dealt with.
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

export const saveText = (text: string, name: string, type = 'application/json'): void =>
  saveBlob(new Blob([text], { type }), name);
