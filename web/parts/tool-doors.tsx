/** The tools side by side above each of them: from one to the next without going back. */
import { rooms } from '../doors.ts';

export const ToolDoors = ({ room }: { readonly room: string }) => (
  <nav class="within" aria-label="Tools">
    {rooms
      .filter((r) => r.door === 'tools' && r.id !== 'tools')
      .map(({ id, title }) => (
        <a key={id} href={`#${id}`} aria-current={id === room ? 'page' : undefined}>
          {title}
        </a>
      ))}
  </nav>
);
