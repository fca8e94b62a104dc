/** Progress of a long computation: one line on a terminal, nothing where output goes elsewhere. */
export interface Progress {
  readonly say: (text: string) => void;
  readonly end: () => void;
}

export function progressOn(stream: NodeJS.WriteStream): Progress {
  if (!stream.isTTY) return { say: () => {}, end: () => {} };
  return {
    say: (text) => void stream.write(`\r\u001b[K${text} …`),
    end: () => void stream.write('\r\u001b[K'),
  };
}
