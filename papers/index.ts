/** Files of line, vehicle, train, host rules and outing. */
export { type FileProblem, tellProblem } from './problem.ts';
export {
  bundleOuting,
  type Entry,
  type Load,
  type Read,
  readHost,
  readLine,
  readOuting,
  readTrain,
  readVehicle,
  resolvePath,
} from './read.ts';
export { VERSION } from './schema/index.ts';
export { writeFile } from './write.ts';
