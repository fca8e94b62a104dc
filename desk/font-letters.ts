/**
 * Which letters a font file has, from its `cmap` table (OpenType, formats 4 and 12), so that what a face lacks is
 * said in words instead of being printed as empty boxes.
 */
export type Letters = (codePoint: number) => boolean;

export function lettersOf(font: Uint8Array): Letters {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const tables = view.getUint16(4);
  for (let i = 0; i < tables; i++) {
    const entry = 12 + 16 * i;
    // "cmap"
    if (view.getUint32(entry) === 0x636d6170) return fromCmap(view, view.getUint32(entry + 8));
  }
  throw new RangeError('a font without a table of its letters');
}

function fromCmap(view: DataView, cmap: number): Letters {
  const found: Letters[] = [];
  for (let i = 0; i < view.getUint16(cmap + 2); i++) {
    const record = cmap + 4 + 8 * i;
    const [platform, encoding] = [view.getUint16(record), view.getUint16(record + 2)];
    // Unicode, or Windows in Unicode: symbols and old code pages number their letters otherwise.
    if (platform !== 0 && !(platform === 3 && (encoding === 1 || encoding === 10))) continue;
    const table = cmap + view.getUint32(record + 4);
    const format = view.getUint16(table);
    if (format === 4) found.push(segments(view, table));
    if (format === 12) found.push(groups(view, table));
  }
  return (codePoint) => found.some((has) => has(codePoint));
}

/** Format 4: segments of the basic plane, each with a shift or a list of its glyphs. Glyph 0 is the empty box. */
function segments(view: DataView, table: number): Letters {
  const twice = view.getUint16(table + 6);
  const ends = table + 14;
  const starts = ends + twice + 2;
  const shifts = starts + twice;
  const offsets = shifts + twice;
  return (c) => {
    if (c > 0xffff) return false;
    for (let i = 0; i < twice; i += 2) {
      if (c > view.getUint16(ends + i)) continue;
      const start = view.getUint16(starts + i);
      if (c < start) return false;
      const offset = view.getUint16(offsets + i);
      const glyph = offset === 0 ? c : view.getUint16(offsets + i + offset + 2 * (c - start));
      return glyph !== 0 && ((glyph + view.getUint16(shifts + i)) & 0xffff) !== 0;
    }
    return false;
  };
}

/** Format 12: runs of letters of all planes. */
function groups(view: DataView, table: number): Letters {
  const count = view.getUint32(table + 12);
  return (c) => {
    for (let i = 0; i < count; i++) {
      const group = table + 16 + 12 * i;
      const start = view.getUint32(group);
      if (c >= start && c <= view.getUint32(group + 4)) return view.getUint32(group + 8) + (c - start) !== 0;
    }
    return false;
  };
}
