/** The strip as a file, as a drawing that stands alone or as a picture. The first screen does without it. */
import type { Told } from '../../../desk/asked.ts';
import { fileName } from '../../../desk/file-name.ts';
import { type Shape, sceneToSvg } from '../../../views/strip/scene.ts';
import { save } from '../../parts/save.ts';

export interface Shown {
  readonly ground: Shape;
  readonly over: Shape;
  readonly width: number;
  readonly height: number;
}

/** As shown, colours and all; a picture at twice its size on the screen. */
export async function saveStrip(
  as: 'svg' | 'png',
  { ground, over, width, height }: Shown,
  { asked }: Told,
): Promise<void> {
  const text = sceneToSvg({ ...ground, children: [...(ground.children ?? []), over] });
  const file =
    as === 'svg' ? new Blob([text], { type: 'image/svg+xml' }) : await picture(text, width * 2, height * 2);
  const { name, date } = asked.outing;
  const what = `${asked.trials.length > 0 ? 'tried-' : ''}strip.${as}`;
  if (file) save(file, fileName(name, date, what));
}

async function picture(text: string, width: number, height: number): Promise<Blob | null> {
  const drawing = new Image(width, height);
  drawing.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  await drawing.decode();
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d')?.drawImage(drawing, 0, 0, canvas.width, canvas.height);
  return new Promise((done) => canvas.toBlob(done, 'image/png'));
}
