/** The route that an outing names, made into the line that it runs over. */
import { wayOver } from '../../engine/things/line/route.ts';
import type { Line } from '../../engine/things/line/types.ts';
import type { OutingFile } from '../schema/index.ts';
import { type Notes, trouble } from './notes.ts';
import { trackId } from './tracks.ts';

/** The line itself where no route is named, or none that can be run. */
export function routeOver({ route }: OutingFile, line: Line, notes: Notes): Line {
  if (!route) return line;
  const way = wayOver(line, route.map(trackId));
  if (!('lacks' in way)) return { ...way, name: `${line.name} by ${route.join(', ')}` };
  const name = route[way.at];
  const words = {
    track: [
      'which is no track of this line',
      `"main" or one of: ${(line.tracks ?? []).map((t) => t.name).join(', ') || 'none is written'}`,
    ],
    way: [
      `which no points lead to from ${route[way.at - 1]}, as it is run`,
      'tracks in the order in which points ahead lead from one to the next',
    ],
    turnout: ['whose points are not measured', 'frog and lead of the points that lead there'],
    heights: ['whose heights are not measured', '"profile" of that track'],
  } as const;
  const [found, expected] = words[way.lacks];
  trouble(notes, ['route', way.at], `"${name}", ${found}`, expected);
  return line;
}
