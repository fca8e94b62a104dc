/** Names that the outing itself gives: vehicles and seats for riders, axle groups for brakes, tracks for a route. */
import { type Json, outing, paper } from '../state/session.ts';
import { type Path, valueAt } from './form/path.ts';

export function choicesFor(path: Path): readonly string[] | undefined {
  const key = path[path.length - 1];
  const vehicles = outing.value?.train.vehicles ?? [];
  if (path[0] === 'riders' && key === 'vehicle') return vehicles.map((v) => v.id);
  if (path[0] === 'riders' && key === 'seat') {
    const at = valueAt(paper.value, [...path.slice(0, -1), 'vehicle']);
    const cars = vehicles.filter((v) => at === undefined || v.id === at);
    return [...new Set(cars.flatMap((v) => v.seats.map((s) => s.name)))];
  }
  if (path.includes('brakes') && key === 'on') {
    const groups = valueAt(paper.value, [...path.slice(0, path.indexOf('brakes')), 'axleGroups']);
    return Array.isArray(groups) ? groups.map((g: Json) => String(g['name'])) : undefined;
  }
  if (path[0] === 'route') {
    const line = outing.value?.whole ?? outing.value?.line;
    return line?.tracks && ['main', ...line.tracks.map((t) => t.name)];
  }
  return path.includes('pipeBrokenAfter') ? vehicles.map((v) => v.id) : undefined;
}
