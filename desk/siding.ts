/** Where a train stands clear in the tracks of its line, and which of two trains fits which road. */
import { turnFindings } from '../engine/answer/chainage.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import {
  lookAtTracks,
  type Road,
  type TracksLook,
  trackFindings,
  wholeLine,
} from '../engine/questions/clearance/tracks.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { type Joint, type Line, MAIN, type Track } from '../engine/things/line/types.ts';
import { type RoadWay, waysFor } from './siding-ways.ts';

/** A train that stands, while another passes. */
export interface Standing {
  readonly train: string;
  readonly passes: string;
  readonly length: number;
  readonly look: TracksLook;
}

export interface TrackJoint {
  readonly track: Track;
  /** Of the first or the last points. */
  readonly end: 'start' | 'end';
  readonly joint: Joint;
  /** Name of the track that goes on. */
  readonly on: string;
}

export interface Sidings {
  readonly line: Line;
  /** This train; and the other, if there is one. */
  readonly standing: readonly Standing[];
  readonly joints: readonly TrackJoint[];
  /** Of this train and another of its kind. */
  readonly findings: readonly Finding[];
  /** What clears the roads that this train does not stand clear in, tried. */
  readonly ways: readonly RoadWay[];
}

/** @param other an outing with the train that passes; of its line and host nothing is taken */
export function lookAtTracksOf(outing: Outing, other?: Outing): Sidings {
  const context = openOuting(outing);
  const line = wholeLine(context);
  const beside = other && openOuting({ ...outing, train: other.train, riders: other.riders });
  const { name } = outing.train;
  const own: Standing = {
    train: name,
    passes: beside ? beside.outing.train.name : name,
    length: context.loaded.length,
    look: lookAtTracks(context, beside),
  };
  const second: Standing | undefined = beside && {
    train: beside.outing.train.name,
    passes: name,
    length: beside.loaded.length,
    look: lookAtTracks(beside, context),
  };
  return {
    line,
    standing: second ? [own, second] : [own],
    joints: jointsOf(line),
    findings: turnFindings(outing, trackFindings(context)),
    ways: waysFor(outing, own.look.roads, other),
  };
}

/** The line itself, or one of its tracks. */
export const lineOf = (line: Line, id: string): Line | undefined =>
  id === MAIN ? line : line.tracks?.find((t) => t.id === id)?.line;

export const nameOfTrack = (line: Line, id: string): string =>
  id === MAIN ? line.name : (line.tracks?.find((t) => t.id === id)?.name ?? id);

const jointsOf = (line: Line): TrackJoint[] =>
  (line.tracks ?? []).flatMap((track) =>
    (['start', 'end'] as const).flatMap((end) => {
      const joint = track[end];
      return joint ? [{ track, end, joint, on: nameOfTrack(line, joint.track) }] : [];
    }),
  );

/** Length over which the train stands clear, m. */
export const usableOf = ({ clear }: Road): number => (clear ? clear.to - clear.from : 0);

export type { Road };
