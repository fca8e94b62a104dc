/** What riders and crew are told where a host says nothing: an example, made by us from published practice. */
import json from './riders-briefing.json' with { type: 'json' };

export interface Briefing {
  readonly board: readonly string[];
  readonly dropped: string;
  readonly infants: string;
  readonly aloud: string;
  readonly dress: string;
  readonly source: string;
}

export const exampleBriefing: Briefing = json;
