/** From what cannot be read to the field in which it stands. */
import { arrive } from '../doors.ts';

/** The room in which a paper of the outing is written. @param path of the field, such as `line.curves[2].radius` */
export const paperOf = (path: string): string => {
  const [part] = path.split(/[.[]/);
  return part === 'riders'
    ? '#train/people'
    : part === 'crew'
      ? '#crew'
      : part === 'train'
        ? '#train'
        : part === 'line' || part === 'host'
          ? `#line/${part}`
          : '#line/day';
};

/** While the room is fetched and drawn, ms. */
const PATIENCE = 3000;
const STEP = 50;

export function toField(path: string): void {
  location.hash = paperOf(path);
  // Whoever is there already is brought to it again.
  arrive();
  seek(PATIENCE / STEP);
}

function seek(tries: number): void {
  setTimeout(() => {
    const field = document.querySelector<HTMLElement>('main [aria-invalid="true"]');
    if (!field) {
      if (tries > 0) seek(tries - 1);
      return;
    }
    for (let fold = field.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
      fold.open = true;
    field.focus();
    field.scrollIntoView({ block: 'center' });
  }, STEP);
}
