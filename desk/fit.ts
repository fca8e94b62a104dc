/** Does it fit: every wheelset against the track of one outing, every gap over its crests and sags, every vehicle against a sheet. */
import { turnFindings, turnOf } from '../engine/answer/chainage.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import { ranked } from '../engine/answer/verdict.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { HostRules, Outing } from '../engine/outing/types.ts';
import type { CrestGap } from '../engine/questions/crests/look.ts';
import { crests } from '../engine/questions/crests/question.ts';
import type { Finding } from '../engine/questions/finding.ts';
import type { HumpFit } from '../engine/questions/humps/look.ts';
import { type Need, needsOf, sharpestOf } from '../engine/questions/humps/needs.ts';
import { humps } from '../engine/questions/humps/question.ts';
import type { PitchEnd } from '../engine/questions/pitch/look.ts';
import { pitch } from '../engine/questions/pitch/question.ts';
import { practice } from '../engine/questions/practice/question.ts';
import { type Compared, lookAtStandards } from '../engine/questions/standards/look.ts';
import { lookAtSections, outsideProfile, type SectionFit } from '../engine/questions/standards/profile.ts';
import { standards } from '../engine/questions/standards/question.ts';
import { swing } from '../engine/questions/swing/question.ts';
import type { WheelsetFit } from '../engine/questions/wheels/look.ts';
import { wheels } from '../engine/questions/wheels/question.ts';
import { lookAtWear, type Worn } from '../engine/questions/wheels/worn.ts';
import type { VerticalCurve } from '../engine/things/line/vertical.ts';

export interface Fit {
  readonly wheelsets: readonly WheelsetFit[];
  readonly gaps: readonly CrestGap[];
  /** Both ends of every bar and link. */
  readonly pitches: readonly PitchEnd[];
  readonly wear: readonly Worn[];
  readonly humps: readonly HumpFit[];
  /** How sharp a crest or sag its low parts and long wheelbases take. */
  readonly needs: readonly Need[];
  /** The line's sharpest crests and sags, by an edge as long as the longest frame, m. */
  readonly vertical: { readonly chord: number; readonly curves: readonly VerticalCurve[] };
  /** Against the host's profile; none where it has none. */
  readonly sections: readonly SectionFit[];
  /** Of the host's sheet; none where it has no limits. */
  readonly standards: readonly Compared[];
  readonly findings: readonly Finding[];
  /** Chainages of wheelsets and gaps are in the running direction; this turns them into the line's own. */
  readonly at: (s: number) => number;
}

/** What the trade asks of couplers that meet: of one kind, and of one height. */
const ofCouplers: ReadonlySet<Finding['code']> = new Set([
  'coupler-kinds-differ',
  'coupler-heights-differ',
  'coupler-height-unknown',
]);

export function lookAtFit(outing: Outing): Fit {
  const inquiry = inquire(outing);
  const [track, line, sheet] = [inquiry.of(wheels), inquiry.of(crests), inquiry.of(standards)];
  const over = inquiry.of(humps);
  const bars = inquiry.of(pitch);
  const context = openOuting(outing);
  const { vehicles } = outing.train;
  const room = outing.assumed.practice['clear-below'].value * outing.line.gauge;
  return {
    wheelsets: track.data.wheelsets,
    gaps: line.data.gaps,
    pitches: bars.data.ends,
    wear: lookAtWear(context),
    humps: over.data,
    needs: needsOf(vehicles, over.data, room),
    vertical: sharpestOf(context.line, vehicles),
    sections: lookAtSections(context),
    standards: sheet.data,
    findings: ranked(
      turnFindings(outing, [
        ...track.findings,
        ...line.findings,
        ...bars.findings.filter((f) => f.severity !== 'assumed'),
        ...over.findings,
        ...sheet.findings,
        ...inquiry.of(swing).findings.filter((f) => f.severity !== 'assumed'),
        ...inquiry.of(practice).findings.filter(({ code }) => ofCouplers.has(code)),
      ]),
    ),
    at: turnOf(outing),
  };
}

/** A sheet beside the host's own: a neighbour's, or that of a line somebody means to visit. */
export interface SheetWord {
  readonly host: string;
  readonly compared: readonly Compared[];
  readonly word: 'accepted' | 'slow' | 'refused' | 'cannot tell' | 'no limits';
  /** m/s: no faster than this there, where it runs slowly. */
  readonly speed?: number;
}

/** The train against the sheet of another host, its wheels and sizes as they are. */
export function lookAtSheet(outing: Outing, host: HostRules): SheetWord {
  const context = openOuting({ ...outing, host });
  const compared = lookAtStandards(context);
  const sections = outsideProfile(context);
  const words = new Set(compared.flatMap(({ judged }) => judged.map((j) => j.word)));
  const missing =
    compared.some(({ without }) => without.length > 0) || sections.some((f) => f.severity === 'unknown');
  if (sections.some((f) => f.severity === 'forbids')) words.add('refused');
  const speeds = compared.flatMap(({ judged, standard: { slowSpeed } }) =>
    judged.some((j) => j.word === 'slow') && slowSpeed !== undefined ? [slowSpeed] : [],
  );
  const word =
    compared.length === 0 && (host.profiles ?? []).length === 0
      ? 'no limits'
      : words.has('refused')
        ? 'refused'
        : missing
          ? 'cannot tell'
          : words.has('slow')
            ? 'slow'
            : 'accepted';
  return {
    host: host.name,
    compared,
    word,
    ...(word === 'slow' && speeds.length > 0 ? { speed: Math.min(...speeds) } : {}),
  };
}
